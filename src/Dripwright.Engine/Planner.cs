using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Water;

namespace Dripwright.Engine;

/// <summary>From a rig to its plan: the one place that knows the order of the stages.</summary>
public static class Planner
{
    /// <summary>Computes everything from a rig for which no reading is at hand.</summary>
    /// <param name="rig">A rig that was read without a fault.</param>
    /// <param name="assumed">What its file did not say, as the reader listed it.</param>
    /// <param name="catalogue">The catalogue it was read with.</param>
    /// <param name="options">What to compute beyond the plan proper; the defaults where null.</param>
    /// <param name="progress">Told at each stage.</param>
    /// <exception cref="ArgumentException">The rig cannot be resolved with this catalogue: it was not read with it.</exception>
    /// <exception cref="OperationCanceledException">A stop was asked for: between stages, and within those that take long.</exception>
    public static Plan Of(
        Rig rig,
        IReadOnlyList<Assumed> assumed,
        PartsCatalogue catalogue,
        PlanOptions? options = null,
        IProgress<PlanProgress>? progress = null
    ) => Of(ResolvedRig.Of(rig, catalogue), assumed, options, progress);

    /// <summary>Computes everything from a rig.</summary>
    /// <remarks>The same rig and options give the same plan on every machine and in every culture.</remarks>
    /// <param name="rig">The rig, as the reader resolved it.</param>
    /// <param name="assumed">What its file did not say, as the reader listed it.</param>
    /// <param name="options">What to compute beyond the plan proper; the defaults where null.</param>
    /// <param name="progress">Told at each stage.</param>
    /// <exception cref="OperationCanceledException">A stop was asked for: between stages, and within those that take long.</exception>
    public static Plan Of(
        ResolvedRig rig,
        IReadOnlyList<Assumed> assumed,
        PlanOptions? options = null,
        IProgress<PlanProgress>? progress = null
    )
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(assumed);
        options ??= new PlanOptions();
        // Each stage is computed when it is asked for, and told before.
        var staged = new StagedPlan(rig, assumed, layout => Loaded(null, rig.Rig, layout, options));
        Tell("progress.layout", 0);
        _ = staged.Layout;
        Tell("progress.feed", 0.1);
        // Draws bear on nothing that comes after them.
        var feed = Drawn(staged.Feed, staged.Layout, options);
        Tell("progress.drain", 0.6);
        _ = (staged.Reservoir, staged.CropWire, staged.Nutrients);
        Tell("progress.stand", 0.7);
        _ = staged.Stand;
        Tell("progress.parts", 0.8);
        var plan = staged.Unjudged() with { Feed = feed };
        Tell("progress.findings", 0.95);
        return Judged(plan);

        void Tell(string stage, double share)
        {
            options.Stop.ThrowIfCancellationRequested();
            progress?.Report(new PlanProgress(Phrase.Of(stage), share));
        }
    }

    /// <summary>A plan with what it was made without: the strength of its stands, the draws of its feed.</summary>
    /// <remarks>What it has stays; the outcome is the plan that <see cref="Of(ResolvedRig, IReadOnlyList{Assumed}, PlanOptions?, IProgress{PlanProgress}?)"/> gives with the same options.</remarks>
    /// <param name="plan">The plan.</param>
    /// <param name="options">What it shall have.</param>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    public static Plan Completed(Plan plan, PlanOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var stand = Loaded(plan.Stand, plan.Rig, plan.Layout, options);
        if (!ReferenceEquals(stand, plan.Printed.MadeFor))
        {
            // Joints are made for what the frame asks of them, and counted as they are made.
            var printed = PrintedParts.Of(plan.Rig, plan.Layout, stand);
            plan = plan with
            {
                Printed = printed,
                Parts = PartsPlanner.Plan(
                    plan.Rig,
                    plan.Layout,
                    plan.CropWire,
                    printed,
                    plan.Nutrients,
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
                        Clogging = PlanOptions.CloggingOf(layout.Resolved.Rig.Feed),
                    },
                    options.Stop
                ),
            }
            : feed;

    private static StandPlan? Loaded(StandPlan? known, Rig rig, RigLayout layout, PlanOptions options)
    {
        if (known is not null || !options.Strength)
        {
            return known;
        }

        var stands = StandPlanner.Of(layout, StandOptions.Of(rig) with { Stop = options.Stop });
        return options.Cures ? StandTrials.Of(rig, layout, stands, options.Stop) : stands;
    }

    private static Plan Judged(Plan plan)
    {
        var staged = new StagedPlan(plan);
        var judge = new Judgement();
        foreach (var stage in Enum.GetValues<JudgedStage>())
        {
            staged.Judge(stage, judge);
        }

        return plan with
        {
            Findings = judge.Findings,
        };
    }
}
