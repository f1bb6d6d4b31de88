using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Water;
using Dripwright.Engine.Wires;

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
    /// <exception cref="OperationCanceledException">A stop was asked for: between stages, and within those that take long.</exception>
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
        Tell("placing pots and pipes", 0);
        RigLayout layout = RigLayout.Of(rig, RigParts.Of(rig, catalogue));
        Tell("solving the feed", 0.1);
        FeedPlan feed = Drawn(new FeedPlanner(rig, layout).Plan(), layout, options);
        Tell("following the drains", 0.6);
        DrainPlan drain = new DrainPlanner(rig, layout, feed).Plan();
        ReservoirPlan reservoir = new ReservoirPlanner(rig, layout, feed, drain).Plan();
        OverheadPlan overhead = new OverheadPlanner(rig, layout).Plan();
        NutrientPlan? nutrients = NutrientPlanner.Plan(rig, layout, feed, reservoir, catalogue);
        Tell("loading the stands", 0.7);
        StandPlan? stand = Loaded(null, rig, layout, options);
        Tell("counting and cutting parts", 0.8);
        PrintedParts printed = PrintedParts.Of(rig, layout, stand);
        PartsPlan parts = PartsPlanner.Plan(rig, layout, overhead, printed);
        Tell("judging", 0.95);
        return Judged(
            new Plan
            {
                Rig = rig,
                Assumed = assumed,
                Layout = layout,
                Feed = feed,
                Drain = drain,
                Reservoir = reservoir,
                Overhead = overhead,
                Nutrients = nutrients,
                Stand = stand,
                Printed = printed,
                Parts = parts,
                Findings = [],
            }
        );

        void Tell(string stage, double share)
        {
            options.Stop.ThrowIfCancellationRequested();
            progress?.Report(new PlanProgress(stage, share));
        }
    }

    /// <summary>A plan with what it was made without: the strength of its stands, the draws of its feed.</summary>
    /// <remarks>What it has stays; the outcome is the plan that <see cref="Of"/> gives with the same options.</remarks>
    /// <param name="plan">The plan.</param>
    /// <param name="options">What it shall have.</param>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    public static Plan Completed(Plan plan, PlanOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        StandPlan? stand = Loaded(plan.Stand, plan.Rig, plan.Layout, options);
        if (!ReferenceEquals(stand, plan.Printed.MadeFor))
        {
            // Joints are made for what the frame asks of them, and counted as they are made.
            PrintedParts printed = PrintedParts.Of(plan.Rig, plan.Layout, stand);
            plan = plan with
            {
                Printed = printed,
                Parts = PartsPlanner.Plan(
                    plan.Rig,
                    plan.Layout,
                    plan.Overhead,
                    printed,
                    plan.Parts.Cutting ?? new CutList(plan.Rig, plan.Layout)
                ),
            };
        }

        return Judged(plan with { Stand = stand, Feed = Drawn(plan.Feed, plan.Layout, options) });
    }

    private static FeedPlan Drawn(FeedPlan feed, RigLayout layout, PlanOptions options) =>
        feed.Scatter is null && options.Draws > 0
            ? feed with
            {
                Scatter = FeedPlanner.Draws(
                    feed,
                    layout,
                    new ScatterModel
                    {
                        Emitters = [],
                        Draws = options.Draws,
                        Seed = options.Seed,
                        Clogging = options.Clogging,
                    },
                    options.Stop
                ),
            }
            : feed;

    private static StandPlan? Loaded(StandPlan? known, Rig rig, RigLayout layout, PlanOptions options) =>
        known is null && options.Strength
            ? StandPlanner.Of(layout, StandOptions.Of(rig) with { TryCures = options.Cures, Stop = options.Stop })
            : known;

    private static Plan Judged(Plan plan)
    {
        Rig rig = plan.Rig;
        RigLayout layout = plan.Layout;
        var judge = new Judgement(rig.Units);
        new LayoutRules(rig, layout, judge).Judge();
        new FeedRules(rig, layout, plan.Feed, judge).Judge();
        new DrainRules(rig, layout, plan.Feed, plan.Drain, judge).Judge();
        new ReservoirRules(rig, layout, plan.Reservoir, judge).Judge();
        new OverheadRules(rig, layout, plan.Overhead, judge).Judge();
        if (plan.Stand is not null)
        {
            new StandRules(rig, layout, plan.Stand, judge).Judge();
        }

        new PartsRules(layout, plan.Parts, judge).Judge();
        judge.Add(plan.Nutrients?.Findings ?? []);
        return plan with { Findings = judge.Findings };
    }
}
