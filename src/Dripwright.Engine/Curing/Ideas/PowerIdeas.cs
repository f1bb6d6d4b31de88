using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What is changed at the outlet and the circuit; work on them is an electrician's.</summary>
internal static class PowerIdeas
{
    /// <summary>Other loads moved to another circuit.</summary>
    public static IEnumerable<Cure> MoveLoads(Asked asked)
    {
        var site = asked.Rig.Site;
        var left = (site.Breaker * RuleBook.Limit("circuit-load") * site.Voltage) - (asked.Parts.Pump?.Power ?? 0);
        foreach (var step in new[] { 100.0, 50, 10, 1 })
        {
            var most = Math.Floor(left / step) * step;
            if (most >= 0 && most < site.OtherLoads)
            {
                return Set.Cure(Set.Amount(asked.Rig, "site.otherLoads", Dimension.Power, most));
            }
        }

        return [];
    }

    /// <summary>An outlet nearer to the reservoir.</summary>
    public static IEnumerable<Cure> NearerOutlet(Asked asked)
    {
        if (asked.Parts.Pump is not { } pump)
        {
            return [];
        }

        var site = asked.Rig.Site;
        var missing = Layout.PumpCord.Needed(asked.Rig, asked.Layout, pump) - pump.Cord;
        return new[] { 1, 1.5, 2.5, 4 }
            .Select(by => site.OutletDistance - (by * missing))
            .Where(d => d >= 0)
            .SelectMany(d => Set.Cure(RigCure.LengthDown(asked.Rig, "site.outletDistance", d)));
    }

    /// <summary>An outlet just over the rim, so that little cord goes up.</summary>
    public static IEnumerable<Cure> OutletOverRim(Asked asked) =>
        Set.Cure(RigCure.LengthUp(asked.Rig, "site.outletHeight", asked.Layout.Tank.Rim + 0.05));

    /// <summary>A nearer outlet just over the rim.</summary>
    public static IEnumerable<Cure> NearOverRim(Asked asked) =>
        OutletOverRim(asked)
            .SelectMany(h =>
                new[] { 1.5, 1, 0.5, 0.25 }
                    .Where(d => d < asked.Rig.Site.OutletDistance)
                    .SelectMany(d => Set.Cure(RigCure.LengthDown(asked.Rig, "site.outletDistance", d)))
                    .Select(d => Cure.Of([.. h.Changes, .. d.Changes]))
            );

    /// <summary>A pump with a longer cord.</summary>
    public static IEnumerable<Cure> LongerCord(Asked asked) =>
        asked.Parts.Pump is not { } pump
            ? []
            : asked
                .Sold(asked.Catalogue.Pumps)
                .Where(p => p.Cord > pump.Cord)
                .OrderBy(p => Math.Abs(p.Power - pump.Power))
                .ThenBy(p => p.Key, StringComparer.Ordinal)
                .Select(p => FeedIdeas.Pump(asked.Rig, p.Key));
}
