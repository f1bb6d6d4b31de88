namespace Dripwright.Engine.Printed;

/// <summary>A kind of small part that a rig has printed or could have: what it is for and where it goes here.</summary>
/// <param name="Kind">Kind of part.</param>
/// <param name="Field">Field of the rig file that asks for it.</param>
/// <param name="Wanted">True where the rig asks for it.</param>
/// <param name="Parts">The parts; empty where this rig has no use for it.</param>
/// <param name="Refused">Why there is none, or why one cannot be made.</param>
public sealed record SmallPart(
    PrintedKind Kind,
    string Field,
    bool Wanted,
    IReadOnlyList<PrintedPart> Parts,
    IReadOnlyList<RefusedPart> Refused
);
