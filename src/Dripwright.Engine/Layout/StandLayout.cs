using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Layout;

/// <summary>What a stand tube does.</summary>
public enum MemberRole
{
    /// <summary>Lengthwise, under the pots.</summary>
    Rail,

    /// <summary>Upright.</summary>
    Leg,

    /// <summary>Across, between the rails of a frame.</summary>
    Cross,

    /// <summary>Low, between two legs.</summary>
    Tie,

    /// <summary>Slanting, from over a foot to under the top of another leg.</summary>
    Brace,
}

/// <summary>One tube of the stand.</summary>
/// <param name="Label">As in the drawings, such as <c>S1-rail</c>: tubes that are cut alike share a label.</param>
/// <param name="Role">What it does.</param>
/// <param name="Row">Row, from 1.</param>
/// <param name="From">Joint centre at one end.</param>
/// <param name="To">Joint centre at the other end.</param>
/// <param name="Length">[m] Cut length.</param>
public sealed record StandMember(string Label, MemberRole Role, int Row, Vector3 From, Vector3 To, double Length);

/// <summary>One printed joint of the stand.</summary>
/// <param name="Part">Catalogue key of the joint.</param>
/// <param name="Row">Row, from 1.</param>
/// <param name="At">Its centre.</param>
public sealed record StandJoint(string Part, int Row, Vector3 At);

/// <summary>The stands of all rows.</summary>
/// <param name="Tube">Their tube.</param>
/// <param name="Members">Every tube.</param>
/// <param name="Joints">Every printed joint and clip.</param>
public sealed record StandLayout(TubeSize Tube, IReadOnlyList<StandMember> Members, IReadOnlyList<StandJoint> Joints)
{
    /// <summary>Catalogue key of what holds a brace to a leg; it is bought, not printed.</summary>
    public const string Clamp = "brace-clamp";

    /// <summary>Its number in drawings and lists. No printed part has a Q.</summary>
    public const string ClampNumber = "Q1";

    /// <summary>Catalogue key of a printed hanger of the drain.</summary>
    public const string Hanger = "drain-hanger";

    /// <summary>[m] Floor of a printed foot, on which its leg stands: the leg is cut shorter by as much.</summary>
    public const double FootFloor = 0.005;

    /// <summary>Where the stands hold the drains; those that are printed are also among the joints.</summary>
    public IReadOnlyList<DrainHanger> Hangers { get; init; } = [];

    /// <summary>[m] From a foot or the centre of a joint to where a brace is clamped to its leg: clear of the printed part.</summary>
    public double BraceInset { get; init; } = 0.1;

    /// <summary>Whether in a row a brace's clamp and a hanger of the drain want the same place of a leg: it is too low for both.</summary>
    /// <param name="row">Row, from 1.</param>
    public bool HasClampAtHanger(int row) =>
        Hangers
            .Where(hanger => hanger.Row == row && hanger.Mount == HangerMount.Leg)
            .Any(hanger =>
                Joints.Any(clamp =>
                    clamp.Part == Clamp
                    && clamp.Row == row
                    && Math.Abs(clamp.At.X - hanger.At.X) < 1e-6
                    && Math.Abs(clamp.At.Y - hanger.At.Y) < 1e-6
                    && Math.Abs(clamp.At.Z - hanger.At.Z) < StandBraces.ClearOfHanger(Tube.Outside) - 1e-5
                )
            );
}
