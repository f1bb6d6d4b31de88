using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Fittings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrition.Planning;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Strength;
using Dripwright.Engine.Strength.Checks;
using Dripwright.Engine.Strength.Wire;
using Dripwright.Engine.Water;

namespace Dripwright.Engine;

/// <summary>From a rig to its plan: the one place that knows the order of the stages.</summary>
public static class Planner
{
    /// <summary>Computes everything from a rig.</summary>
    /// <remarks>The same rig, catalogue and options give the same plan on every machine and in every culture.</remarks>
    /// <param name="rig">A rig that was read without a fault.</param>
    /// <param name="assumed">What its file did not say, as the reader listed it.</param>
    /// <param name="catalogue">The catalogue it was read with.</param>
    /// <param name="options">What to compute beyond the plan proper; the defaults where null.</param>
    /// <param name="progress">Told at each stage.</param>
    /// <exception cref="KeyNotFoundException">The rig names a part that the catalogue lacks.</exception>
    public static Plan Of(
        Rig rig,
        IReadOnlyList<Assumed> assumed,
        PartsCatalogue catalogue,
        PlanOptions? options = null,
        IProgress<PlanProgress>? progress = null
    )
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(assumed);
        ArgumentNullException.ThrowIfNull(catalogue);
        options ??= new PlanOptions();
        progress?.Report(new PlanProgress("placing pots and pipes", 0));
        RigLayout layout = RigLayout.Of(rig, RigParts.Of(rig, catalogue));
        progress?.Report(new PlanProgress("solving the feed", 0.1));
        FeedPlan feed = new FeedPlanner(rig, layout, options).Plan();
        progress?.Report(new PlanProgress("following the drains", 0.6));
        DrainPlan drain = new DrainPlanner(rig, layout, feed).Plan();
        ReservoirPlan reservoir = new ReservoirPlanner(rig, layout, feed, drain).Plan();
        OverheadPlan overhead = new OverheadPlanner(rig, layout).Plan();
        NutritionPlan? nutrition = NutritionPlanner.Plan(rig, layout, feed, reservoir, catalogue);
        progress?.Report(new PlanProgress("loading the stands", 0.7));
        StandPlan? stand = options.Strength
            ? StandPlanner.Of(layout, StandOptions.Of(rig) with { TryCures = options.Cures })
            : null;
        progress?.Report(new PlanProgress("counting and cutting parts", 0.8));
        PrintedParts printed = PrintedParts.Of(rig, layout, stand);
        PartsPlan parts = PartsPlanner.Plan(rig, layout, overhead, printed);
        progress?.Report(new PlanProgress("judging", 0.95));
        var judge = new Judgement(rig.Units);
        new LayoutRules(rig, layout, judge).Judge();
        new FeedRules(rig, layout, feed, judge).Judge();
        new DrainRules(rig, layout, feed, drain, judge).Judge();
        new ReservoirRules(rig, layout, reservoir, judge).Judge();
        new OverheadRules(rig, layout, overhead, judge).Judge();
        if (stand is not null)
        {
            new StandRules(rig, layout, stand, judge).Judge();
        }

        new PartsRules(layout, parts, judge).Judge();
        judge.Add(nutrition?.Findings ?? []);
        return new Plan
        {
            Rig = rig,
            Assumed = assumed,
            Layout = layout,
            Feed = feed,
            Drain = drain,
            Reservoir = reservoir,
            Overhead = overhead,
            Nutrition = nutrition,
            Stand = stand,
            Printed = printed,
            Parts = parts,
            Findings = judge.Findings,
        };
    }
}
