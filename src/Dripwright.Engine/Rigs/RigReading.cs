using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>What came of reading a rig file.</summary>
/// <param name="Resolved">What the rig means, with all that it names looked up; null when there is any fault.</param>
/// <param name="Faults">All faults, in the order of the file.</param>
/// <param name="Assumed">Every field the file does not give, in the order of the format.</param>
/// <param name="Upgraded">What was done to a file of an older format, one sentence for each step.</param>
public sealed record RigReading(
    ResolvedRig? Resolved,
    IReadOnlyList<Fault> Faults,
    IReadOnlyList<Assumed> Assumed,
    IReadOnlyList<Phrase> Upgraded
)
{
    /// <summary>The rig as it is written; null when there is any fault.</summary>
    public Rig? Rig => Resolved?.Rig;
}
