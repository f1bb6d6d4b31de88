using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Curing;

/// <summary>Changes of a rig, and what the plan of the changed rig says beside the first one, as far as that was asked.</summary>
/// <param name="changes">The changes.</param>
/// <param name="staged">The plan of the changed rig.</param>
/// <param name="before">What the first plan says.</param>
internal sealed class TriedChange(IReadOnlyList<FieldChange> changes, StagedPlan staged, IReadOnlyList<Finding> before)
{
    /// <summary>The stages in the order of what they cost to know; the stands cost more than all else.</summary>
    public static JudgedStage[] CheapFirst { get; } =
    [
        JudgedStage.Layout,
        JudgedStage.CropWire,
        JudgedStage.Feed,
        JudgedStage.Dose,
        JudgedStage.Drain,
        JudgedStage.Reservoir,
        JudgedStage.Nutrients,
        JudgedStage.Stand,
        JudgedStage.Parts,
    ];

    private IReadOnlyList<Finding>? _newStops;

    /// <summary>The changes.</summary>
    public IReadOnlyList<FieldChange> Changes => changes;

    /// <summary>The plan of the changed rig.</summary>
    public StagedPlan Staged => staged;

    /// <summary>Stops that the first plan did not have, of the first stage that has one.</summary>
    public IReadOnlyList<Finding> NewStops => _newStops ??= FirstNewStops();

    /// <summary>True where the stage says no more of what a finding says, at none of its places.</summary>
    public bool Cures(Finding finding, JudgedStage stage) => !staged.Said(stage).Any(finding.IsSaidBy);

    /// <summary>Every finding of the changed rig, in the order of what costs least to know.</summary>
    public IEnumerable<Finding> Said() => CheapFirst.SelectMany(staged.Said);

    private Finding[] FirstNewStops()
    {
        foreach (var stage in CheapFirst)
        {
            Finding[] stops =
            [
                .. staged
                    .Said(stage)
                    .Where(f =>
                        f.Level == FindingLevel.Stop && !before.Any(b => b.Level == FindingLevel.Stop && f.IsSaidBy(b))
                    ),
            ];
            if (stops.Length > 0)
            {
                return stops;
            }
        }

        return [];
    }

    /// <summary>Changes and others after them; a field that is changed twice takes the later text.</summary>
    public static IReadOnlyList<FieldChange> Merged(
        IReadOnlyList<FieldChange> first,
        IReadOnlyList<FieldChange> then
    ) => [.. first.Where(f => !then.Any(t => IsWithin(f.Field, t.Field))), .. then];

    // A list that is written anew takes what stood in it along.
    private static bool IsWithin(string path, string outer) =>
        path == outer
        || (
            path.StartsWith(outer, StringComparison.Ordinal)
            && path.Length > outer.Length
            && path[outer.Length] is '[' or '.'
        );
}
