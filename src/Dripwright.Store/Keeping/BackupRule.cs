using System.Globalization;

namespace Dripwright.Store.Keeping;

/// <summary>Which backups are kept: the newest of each of the last 7 days, of the last 4 weeks and of the last 12 months that have one.</summary>
/// <remarks>Days, weeks (ISO 8601: from Monday) and months are those of UTC. Source: common practice of backups.</remarks>
public static class BackupRule
{
    /// <summary>Days of which one is kept.</summary>
    public const int Days = 7;

    /// <summary>Weeks of which one is kept.</summary>
    public const int Weeks = 4;

    /// <summary>Months of which one is kept.</summary>
    public const int Months = 12;

    /// <summary>The times, of those at which backups were made, whose backups are kept.</summary>
    /// <param name="made">When each was made, UTC, in any order.</param>
    public static IReadOnlySet<DateTime> Kept(IEnumerable<DateTime> made)
    {
        ArgumentNullException.ThrowIfNull(made);
        var newest = made.OrderDescending().ToList();
        return Newest(newest, at => at.Date.Ticks, Days)
            .Concat(Newest(newest, at => (ISOWeek.GetYear(at) * 100) + ISOWeek.GetWeekOfYear(at), Weeks))
            .Concat(Newest(newest, at => (at.Year * 100) + at.Month, Months))
            .ToHashSet();
    }

    // Counted in days that have a backup: a machine that was off for a month must not lose all it has.
    private static IEnumerable<DateTime> Newest(List<DateTime> newest, Func<DateTime, long> span, int count) =>
        newest.GroupBy(span).Take(count).Select(group => group.First());
}
