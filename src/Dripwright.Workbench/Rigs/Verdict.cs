using Dripwright.Engine.Findings;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Rigs;

/// <summary>Whether a rig is well, in one line.</summary>
/// <param name="Class">How it is marked: stop, mend, good, or nothing.</param>
/// <param name="Sign">Its sign.</param>
/// <param name="Text">What it says.</param>
internal sealed record Verdict(string Class, string Sign, string Text)
{
    /// <summary>Judges what a page has of a rig.</summary>
    /// <param name="faults">How many faults stand in its file.</param>
    /// <param name="findings">What its plan has to say; null where there is no plan.</param>
    /// <param name="isStandOpen">Whether its stand is still being worked out.</param>
    public static Verdict Of(int faults, IReadOnlyList<ToldFinding>? findings, bool isStandOpen)
    {
        if (faults > 0)
        {
            return new("stop", "■", Words.Count("verdict.faults", faults));
        }

        if (findings is null)
        {
            return new("", "", Words.Of("drawing.soon"));
        }

        var stops = findings.Count(finding => finding.Level is FindingLevel.Stop);
        var mends = findings.Count(finding => finding.Level is FindingLevel.Mend);
        return stops > 0 ? new("stop", "■", Words.Count("verdict.stop", stops))
            : isStandOpen ? new("", "", Words.Of("verdict.stand"))
            : mends > 0 ? new("mend", "▲", Words.Count("verdict.mend", mends))
            : new("good", "✓", Words.Of("verdict.good"));
    }

    /// <summary>Judges a rig on a page.</summary>
    /// <param name="desk">The rig.</param>
    /// <param name="summary">Its plan in words; null where there is none.</param>
    public static Verdict Of(RigDesk desk, PlanSummary? summary) =>
        Of(desk.Reading?.Faults.Count ?? 0, summary?.Findings, desk.IsStandOpen);
}
