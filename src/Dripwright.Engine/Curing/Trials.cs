using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Checks;

namespace Dripwright.Engine.Curing;

/// <summary>Tries changes of one rig, each read as its file would be and planned anew as far as is asked.</summary>
/// <remarks>
/// What no change bears on is taken from the first plan: the stands where only the pump or the clock changes, say. What
/// counts as bearing on it is checked over random rigs.
/// </remarks>
internal sealed class Trials
{
    private static readonly string[] s_apartFromStand =
    [
        "timer.",
        "pump.",
        "nutrients.",
        "site.otherLoads",
        "site.outlet",
        "feed.throttle",
        "feed.bypass",
        "feed.emitter=",
        "feed.checkValve",
        "feed.siphonBreak",
        "feed.strainer",
        "feed.valveOpen",
        "reservoir.fill",
        "reservoir.lowestLevel",
        "reservoir.lid",
        "reservoir.daysWanted",
    ];

    private static readonly string[] s_apartFromNutrients =
    [
        "stand.",
        "cropWire.",
        "site.otherLoads",
        "site.outlet",
        "drain.slope",
        "drain.pipe",
        "drain.outlet",
        "drain.belowPots",
        "drain.vent",
    ];

    private readonly Plan _plan;
    private readonly Lazy<RigEdit> _edit;
    private readonly CancellationToken _stop;
    private readonly Dictionary<string, TriedChange?> _known = new(StringComparer.Ordinal);
    private readonly Dictionary<string, JudgedStage> _stages = new(StringComparer.Ordinal);

    /// <param name="plan">The plan of the rig as it is.</param>
    /// <param name="stop">Asks to stop; heard before each trial and within those that take long.</param>
    public Trials(Plan plan, CancellationToken stop)
    {
        (_plan, _stop) = (plan, stop);
        _edit = new(() => new RigEdit(plan.Rig, plan.Layout.Parts.Catalogue));
        Before = new StagedPlan(plan);
        foreach (var stage in Enum.GetValues<JudgedStage>())
        {
            foreach (var finding in Before.Said(stage))
            {
                _stages.TryAdd(finding.Rule, stage);
            }
        }
    }

    /// <summary>The plan of the rig as it is.</summary>
    public StagedPlan Before { get; }

    /// <summary>What the plan of the rig as it is says.</summary>
    public IReadOnlyList<Finding> Findings => _plan.Findings;

    /// <summary>How many changes were tried.</summary>
    public int Count { get; private set; }

    /// <summary>The stage that says a finding of the first plan.</summary>
    public JudgedStage StageOf(Finding finding) => _stages[finding.Rule];

    /// <summary>The same for the same changes, in whatever order.</summary>
    /// <param name="changes">The changes.</param>
    public static string KeyOf(IReadOnlyList<FieldChange> changes) =>
        string.Join('\n', changes.Select(c => $"{c.Field}={c.Text}").Order(StringComparer.Ordinal));

    /// <summary>Tries changes; null where they make no rig.</summary>
    /// <param name="changes">The changes.</param>
    public TriedChange? Of(IReadOnlyList<FieldChange> changes)
    {
        var key = KeyOf(changes);
        if (!_known.TryGetValue(key, out var tried))
        {
            _stop.ThrowIfCancellationRequested();
            Count++;
            _known[key] = tried = _edit.Value.Applied(changes) is { } rig
                ? new TriedChange(changes, Staged(rig, changes), _plan.Findings)
                : null;
        }

        return tried;
    }

    private StagedPlan Staged(ResolvedRig rig, IReadOnlyList<FieldChange> changes) =>
        new(
            rig,
            _plan.Assumed,
            _plan.Stand is null ? _ => null
                : changes.All(c => IsApart(c.Field, s_apartFromStand)) ? _ => _plan.Stand
                : layout => Loaded(rig.Rig, layout),
            _plan.Nutrients is null && changes.All(c => !c.Field.StartsWith("nutrients", StringComparison.Ordinal))
                    ? () => null
                : changes.All(c => IsApart(c.Field, s_apartFromNutrients)) ? () => _plan.Nutrients
                : null
        );

    private StandPlan? Loaded(Rig rig, RigLayout layout) =>
        StandPlanner.Of(layout, StandOptions.Of(rig) with { Stop = _stop });

    private static bool IsApart(string field, string[] apart) =>
        apart.Any(one => (field + "=").StartsWith(one, StringComparison.Ordinal));
}
