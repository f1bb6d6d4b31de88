namespace Dripwright.Engine.Layout;

/// <summary>What a drain hanger is tied to.</summary>
public enum HangerMount
{
    /// <summary>Beside a leg: the pipe passes it, at any height.</summary>
    Leg,

    /// <summary>Under a cross-member, which the pipe crosses.</summary>
    Cross,

    /// <summary>Under a rail that runs along the pipe.</summary>
    Rail,

    /// <summary>No hanger: the pipe lies so near under its tube that it is tied straight to it.</summary>
    Tie,
}

/// <summary>One place at which the stand holds the drain.</summary>
/// <param name="Row">Row, from 1.</param>
/// <param name="Mount">What it is tied to.</param>
/// <param name="Station">[m] Of the pipe, from the row's left end.</param>
/// <param name="At">On the axis of the tube, at the middle of the hanger's foot.</param>
/// <param name="Pipe">On the pipe's axis.</param>
/// <param name="Reach">[m] From the tube's axis to the pipe's.</param>
/// <param name="Low">[m] How far the middle of the foot lies below the pipe's axis, on a leg; 0 elsewhere.</param>
public sealed record DrainHanger(
    int Row,
    HangerMount Mount,
    double Station,
    Vector3 At,
    Vector3 Pipe,
    double Reach,
    double Low
);
