using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>The loop of a rig over twelve weeks.</summary>
/// <remarks>
/// Uptake: the supply solution of closed systems for the crop, the best stand-in that is published, taken at the rig's use per
/// plant; of sodium and chloride plants are taken to leave all behind, which errs on the safe side. The pots
/// hold the water of their medium.
/// </remarks>
internal static class NutrientOutlooks
{
    private const int Days = 84;

    public static NutrientOutlook? Of(
        ResolvedNutrients asked,
        RigLayout layout,
        FeedPlan feed,
        ReservoirPlan reservoir,
        NutrientPlan plan
    )
    {
        var pots = layout.Rows.Sum(row =>
            row.Pots.Count(pot => pot.Planted) * row.Pot.Volume * layout.MediumOf(row).Water
        );
        var dripped = feed.TotalFlow * layout.Resolved.Clock.SecondsPerDay;
        var use = reservoir.Use * 86_400;
        // Where plants drink all that drips nothing runs back, and this is no loop.
        if (
            use <= 0
            || pots <= 0
            || dripped < 1.02 * use
            || plan.FilledEc >= plan.Wanted
            || plan.Recipe.Lines.Count == 0
        )
        {
            return null;
        }

        var limit = plan.SodiumLimit;
        var limits = new Dictionary<Constituent, double> { [Constituent.Sodium] = limit.Classic };
        var fresh = plan.Recipe.Composition;
        var kilograms = plan.Recipe.Lines.Sum(line => line.Concentration);
        var priced = plan.Recipe.Unpriced.Count == 0 && plan.Recipe.Cost > 0;
        var forecast = new LoopForecast(
            new LoopSystem(reservoir.FullVolume, pots, dripped),
            new LoopState(fresh, fresh),
            plan.Filled.Composition,
            [new LoopUptake(Days, use, asked.LoopTarget.Complete, Composition.Nothing)]
        )
        {
            PH = plan.WantedPH,
            Limits = limits,
            Cost = new RecipeCost(
                kilograms,
                priced ? plan.Recipe.Cost / (decimal)(kilograms * plan.Recipe.Job.Volume) : 0
            ),
        };
        var ways = forecast.Compare(TopUpStrategy.Usual(plan.Added, plan.Wanted));
        var dumping = ways[^1].PastLimit.ContainsKey(Constituent.Sodium)
            ? (forecast with { Bleed = new BleedRule(0, limits) }).Run(ways[^1].Strategy)
            : null;
        var hidden = ways[^1].Evenings is [.., var last]
            ? HiddenIons.Of(last.State.Reservoir, plan.Filled.Composition, plan.Added, plan.WantedPH).Value ?? []
            : [];
        return new NutrientOutlook(Days, limit, ways, dumping, hidden);
    }
}
