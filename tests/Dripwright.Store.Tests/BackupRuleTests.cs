using CsCheck;
using Dripwright.Store.Keeping;

namespace Dripwright.Store.Tests;

public sealed class BackupRuleTests
{
    private static readonly DateTime s_start = new(2026, 1, 1, 3, 0, 0, DateTimeKind.Utc);

    [Fact]
    public void Of_a_year_of_daily_backups_seven_days_four_weeks_and_twelve_months_are_kept()
    {
        // Ends on Friday 2027-01-01: the first day of a month, and the fifth of its week.
        var daily = Enumerable.Range(0, 366).Select(day => s_start.AddDays(day)).ToList();
        var kept = BackupRule.Kept(daily).Select(at => at.ToString("yyyy-MM-dd", null)).Order(StringComparer.Ordinal);
        Assert.Equal(
            [
                // The last of each month; its first day is all that January 2027 has.
                "2026-02-28",
                "2026-03-31",
                "2026-04-30",
                "2026-05-31",
                "2026-06-30",
                "2026-07-31",
                "2026-08-31",
                "2026-09-30",
                "2026-10-31",
                "2026-11-30",
                // Sundays of the weeks before.
                "2026-12-13",
                "2026-12-20",
                // The last seven days, with the Sunday of the week before.
                "2026-12-26",
                "2026-12-27",
                "2026-12-28",
                "2026-12-29",
                "2026-12-30",
                "2026-12-31",
                "2027-01-01",
            ],
            kept
        );
    }

    [Fact]
    public void Of_many_in_one_day_the_newest_is_kept()
    {
        var hours = Enumerable.Range(0, 20).Select(hour => s_start.AddHours(hour)).ToList();
        Assert.Equal([hours[^1]], BackupRule.Kept(hours));
    }

    [Fact]
    public void A_machine_that_was_off_for_long_loses_nothing_by_that()
    {
        DateTime[] rare = [s_start, s_start.AddMonths(5), s_start.AddMonths(9)];
        Assert.Equal(rare, BackupRule.Kept(rare).Order());
        Assert.Empty(BackupRule.Kept([]));
    }

    [Fact]
    public void Forgetting_day_by_day_keeps_what_forgetting_at_the_end_keeps_and_never_more_than_the_rule()
    {
        // Hours between one backup and the next.
        Gen.Int[1, 900]
            .Array[1, 150]
            .Holds(
                gaps =>
                {
                    var at = s_start;
                    List<DateTime> all = [];
                    HashSet<DateTime> there = [];
                    foreach (var gap in gaps)
                    {
                        at = at.AddHours(gap);
                        all.Add(at);
                        there.Add(at);
                        there = [.. BackupRule.Kept(there)];
                        Assert.InRange(there.Count, 1, BackupRule.Days + BackupRule.Weeks + BackupRule.Months);
                    }

                    Assert.Equal(BackupRule.Kept(all).Order(), there.Order());
                },
                iter: 200
            );
    }
}
