using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a grower changes at the timer.</summary>
internal static class ClockIdeas
{
    private static readonly double[] s_minutes = [2, 3, 5, 10, 15, 20, 30, 45, 60, 90, 120];

    /// <summary>Longer waterings.</summary>
    public static IEnumerable<Cure> Longer(Asked asked) =>
        s_minutes.Where(m => 60 * m > asked.Rig.Timer.On + 1).Select(m => Cure.Of([Set.Minutes("timer.on", 60 * m)]));

    /// <summary>Less time between waterings.</summary>
    public static IEnumerable<Cure> Oftener(Asked asked) =>
        s_minutes
            .Reverse()
            .Where(m => 60 * m < asked.Rig.Timer.Off - 1)
            .Select(m => Cure.Of([Set.Minutes("timer.off", 60 * m)]));

    /// <summary>Waterings of more hours of the day, longer, and less far apart: what the pots want is worked out from their flow.</summary>
    public static IEnumerable<Cure> Enough(Asked asked)
    {
        var timer = asked.Rig.Timer;
        var dose = asked.Plan.Dose;
        double[] hours = [timer.HoursPerDay, 12 * 3600, 16 * 3600, 24 * 3600];
        double[] off = [timer.Off, 3600, 1800, 900, 300];
        foreach (var day in hours.Where(h => h >= timer.HoursPerDay).Distinct())
        {
            foreach (var pause in off.Where(o => o <= timer.Off).Distinct())
            {
                var then = timer with { HoursPerDay = day, Off = pause };
                if (WateringTime.Minutes(then, dose) is { } on && on >= timer.On)
                {
                    yield return Cure.Of([
                        .. timer.Mode == TimerMode.Cycle ? (FieldChange[])[] : [Set.To("timer.mode", "cycle")],
                        WateringTime.On(on),
                        .. pause == timer.Off ? (FieldChange[])[] : [Set.Minutes("timer.off", pause)],
                        .. day == timer.HoursPerDay ? (FieldChange[])[] : [WateringTime.HoursPerDay(day)],
                    ]);
                }
            }
        }
    }

    /// <summary>No pause at all.</summary>
    public static IEnumerable<Cure> Always(Asked asked) =>
        asked.Rig.Timer.Mode == TimerMode.Continuous ? [] : [Cure.Of([Set.To("timer.mode", "continuous")])];

    /// <summary>Shorter waterings by the clock: what is left over is not pumped round.</summary>
    public static IEnumerable<Cure> Shorter(Asked asked)
    {
        FieldChange[] clock = asked.Rig.Timer.Mode == TimerMode.Cycle ? [] : [Set.To("timer.mode", "cycle")];
        foreach (var minutes in s_minutes.Reverse().Where(m => 60 * m < asked.Rig.Timer.On - 1))
        {
            yield return Cure.Of([.. clock, Set.Minutes("timer.on", 60 * minutes)]);
        }
    }

    /// <summary>Fewer, longer waterings: the lines are filled less often.</summary>
    public static IEnumerable<Cure> FewerLonger(Asked asked)
    {
        foreach (var by in new[] { 2, 3, 4, 6 })
        {
            var (on, off) = (by * asked.Rig.Timer.On, by * asked.Rig.Timer.Off);
            if (on <= 7200 && off <= 6 * 3600)
            {
                yield return Cure.Of([Set.Minutes("timer.on", on), Set.Minutes("timer.off", off)]);
            }
        }
    }
}
