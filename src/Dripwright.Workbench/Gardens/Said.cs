using System.Globalization;
using Dripwright.Language;
using Dripwright.Store;

namespace Dripwright.Workbench.Gardens;

/// <summary>What came of saving, in the words of the page.</summary>
internal static class Said
{
    /// <summary>Class of the notice, and its text.</summary>
    public static (string Class, string Text) Of(RevisionOutcome outcome) =>
        outcome switch
        {
            RevisionOutcome.Saved saved => ("good", Words.Of("garden.inforce", saved.Revision.Number)),
            RevisionOutcome.Unchanged same => ("care", Words.Of("revisions.same", same.Newest.Number)),
            RevisionOutcome.Faulty faulty => ("stop", Words.Count("garden.faulty", faulty.Faults.Count)),
            RevisionOutcome.Overtaken => ("stop", Words.Of("garden.overtaken")),
            RevisionOutcome.Refused refused => ("stop", refused.Why),
            _ => ("stop", Words.Of("garden.gone")),
        };

    /// <summary>A moment, UTC.</summary>
    public static string When(DateTime at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>How long ago, as finely as it matters.</summary>
    public static string Age(TimeSpan age) =>
        age < TimeSpan.FromHours(1) ? Words.Of("garden.age.min", Math.Max(0, (int)age.TotalMinutes))
        : age < TimeSpan.FromDays(2) ? Words.Of("garden.age.h", (int)age.TotalHours)
        : Words.Of("garden.age.days", (int)age.TotalDays);

    /// <summary>A size on the disk, in powers of ten as disks are sold.</summary>
    public static string Size(long bytes) =>
        bytes < 1_000_000
            ? Words.Of("garden.size.kb", Math.Ceiling(bytes / 1e3).ToString("0", CultureInfo.InvariantCulture))
        : bytes < 1_000_000_000
            ? Words.Of("garden.size.mb", (bytes / 1e6).ToString("0.0", CultureInfo.InvariantCulture))
        : Words.Of("garden.size.gb", (bytes / 1e9).ToString("0.0", CultureInfo.InvariantCulture));
}
