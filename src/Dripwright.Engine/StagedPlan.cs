using Dripwright.Engine.Files;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Water;
using Dripwright.Engine.Wires;

namespace Dripwright.Engine;

/// <summary>What is judged together, in the order in which the plan tells it.</summary>
internal enum JudgedStage
{
    Layout,
    Feed,
    Dose,
    Drain,
    Reservoir,
    CropWire,
    Stand,
    Parts,
    Nutrients,
}

/// <summary>A plan of which each stage is computed when it is asked for: a trial that fails early has cost no more.</summary>
/// <remarks>Every stage gives what the whole plan gives; <see cref="Planner"/> judges by the same rules.</remarks>
internal sealed class StagedPlan
{
    private readonly Dictionary<JudgedStage, IReadOnlyList<Finding>> _said = [];
    private readonly Lazy<RigLayout> _layout;
    private readonly Lazy<FeedPlan> _feed;
    private readonly Lazy<DosePlan> _dose;
    private readonly Lazy<DrainPlan> _drain;
    private readonly Lazy<ReservoirPlan> _reservoir;
    private readonly Lazy<CropWirePlan> _cropWire;
    private readonly Lazy<NutrientPlan?> _nutrients;
    private readonly Lazy<StandPlan?> _stand;
    private readonly Lazy<PrintedParts> _printed;
    private readonly Lazy<PartsPlan> _parts;
    private readonly IReadOnlyList<Assumed> _assumed;
    private readonly bool _proposes;

    /// <summary>A plan that is computed stage by stage.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="assumed">What its file did not say.</param>
    /// <param name="stand">Gives the strength of the stands; null where it is not asked.</param>
    /// <param name="nutrients">What is known of the nutrients; null to work them out.</param>
    public StagedPlan(
        ResolvedRig rig,
        IReadOnlyList<Assumed> assumed,
        Func<RigLayout, StandPlan?> stand,
        Func<NutrientPlan?>? nutrients = null
    )
    {
        _assumed = assumed;
        _layout = new(() => RigLayout.Of(rig));
        _feed = new(() => new FeedPlanner(rig.Rig, Layout).Plan());
        _dose = new(() => new DosePlanner(Layout, _feed.Value).Plan());
        _drain = new(() => new DrainPlanner(rig.Rig, Layout, _feed.Value).Plan());
        _reservoir = new(() => new ReservoirPlanner(rig.Rig, Layout, _feed.Value, _dose.Value, _drain.Value).Plan());
        _cropWire = new(() => new CropWirePlanner(rig.Rig, Layout).Plan());
        _nutrients = new(nutrients ?? (() => NutrientPlanner.Plan(Layout, _feed.Value, _reservoir.Value)));
        _stand = new(() => stand(Layout));
        _printed = new(() => PrintedParts.Of(rig.Rig, Layout, _stand.Value));
        _parts = new(() => PartsPlanner.Plan(rig.Rig, Layout, _cropWire.Value, _printed.Value, _nutrients.Value));
    }

    /// <summary>A plan that is there, to be judged.</summary>
    public StagedPlan(Plan plan)
    {
        _assumed = plan.Assumed;
        _proposes = true;
        _layout = new(plan.Layout);
        _feed = new(plan.Feed);
        _dose = new(plan.Dose);
        _drain = new(plan.Drain);
        _reservoir = new(plan.Reservoir);
        _cropWire = new(plan.CropWire);
        _nutrients = new(plan.Nutrients);
        _stand = new(plan.Stand);
        _printed = new(plan.Printed);
        _parts = new(plan.Parts);
    }

    /// <summary>Everything in its place.</summary>
    public RigLayout Layout => _layout.Value;

    /// <summary>The feed, without draws.</summary>
    public FeedPlan Feed => _feed.Value;

    /// <summary>What each planted pot is given in a day.</summary>
    public DosePlan Dose => _dose.Value;

    /// <summary>The reservoir.</summary>
    public ReservoirPlan Reservoir => _reservoir.Value;

    /// <summary>What hangs over the rows.</summary>
    public CropWirePlan CropWire => _cropWire.Value;

    /// <summary>What the reservoir is filled with; null where no feed is asked for.</summary>
    public NutrientPlan? Nutrients => _nutrients.Value;

    /// <summary>Whether the stands hold; null where it is not asked.</summary>
    public StandPlan? Stand => _stand.Value;

    /// <summary>What a stage has to say.</summary>
    public IReadOnlyList<Finding> Said(JudgedStage stage)
    {
        if (!_said.TryGetValue(stage, out var said))
        {
            var judge = new Judgement { Proposes = _proposes };
            Judge(stage, judge);
            _said[stage] = said = judge.Findings;
        }

        return said;
    }

    /// <summary>Lets the rules of a stage speak.</summary>
    public void Judge(JudgedStage stage, Judgement judge)
    {
        var rig = Layout.Resolved.Rig;
        switch (stage)
        {
            case JudgedStage.Layout:
                new LayoutRules(rig, Layout, judge).Judge();
                break;
            case JudgedStage.Feed:
                new FeedRules(rig, Layout, Feed, judge).Judge();
                break;
            case JudgedStage.Dose:
                new DoseRules(rig, Layout, Feed, Dose, judge).Judge();
                new WearRules(rig, Layout, Feed, Dose, judge).Judge();
                break;
            case JudgedStage.Drain:
                new DrainRules(rig, Layout, Feed, _drain.Value, judge).Judge();
                new MediumRules(rig, Layout, Dose, _drain.Value, judge).Judge();
                break;
            case JudgedStage.Reservoir:
                new ReservoirRules(rig, Layout, Reservoir, Dose, judge).Judge();
                break;
            case JudgedStage.CropWire:
                new CropWireRules(rig, Layout, CropWire, judge).Judge();
                break;
            case JudgedStage.Stand when Stand is { } stand:
                new StandRules(rig, Layout, stand, judge).Judge();
                break;
            case JudgedStage.Parts:
                new PartsRules(Layout, _parts.Value, judge).Judge();
                break;
            case JudgedStage.Nutrients:
                judge.Add(Nutrients?.Findings ?? []);
                break;
        }
    }

    /// <summary>The whole, with all that it has to say.</summary>
    public Plan Whole()
    {
        var judge = new Judgement();
        foreach (var stage in Enum.GetValues<JudgedStage>())
        {
            judge.Add(Said(stage));
        }

        return Unjudged() with
        {
            Findings = judge.Findings,
        };
    }

    /// <summary>The whole, not judged.</summary>
    public Plan Unjudged() =>
        new()
        {
            Assumed = _assumed,
            Layout = Layout,
            Feed = Feed,
            Dose = Dose,
            Drain = _drain.Value,
            Reservoir = Reservoir,
            CropWire = CropWire,
            Nutrients = Nutrients,
            Stand = Stand,
            Printed = _printed.Value,
            Parts = _parts.Value,
            Findings = [],
        };
}
