namespace Dripwright.Engine.Stands.Frame;

/// <summary>How a frame is solved.</summary>
public sealed record FrameOptions
{
    /// <summary>True to let axial forces act on the displaced shape (P-delta).</summary>
    public bool SecondOrder { get; init; }

    /// <summary>
    /// [-] Axial forces act on the displaced shape this many times as strongly; 1.6 for allowable-strength design after
    /// AISC 360 C2.1, 1 for what will be seen.
    /// </summary>
    public double AxialFactor { get; init; } = 1;

    /// <summary>True to let feet that only stand lift off.</summary>
    public bool FeetLift { get; init; } = true;
}
