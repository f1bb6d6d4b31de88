using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue.Rows;

/// <summary>The shelves of a catalogue file that a feed is made of: salts, targets, and the stages that use them.</summary>
internal sealed class OwnNutrients(SaltCatalogue salts, TargetCatalogue targets, FaultList faults)
{
    private readonly Dictionary<string, Salt> _salts = new(salts.Salts, StringComparer.Ordinal);
    private readonly Dictionary<string, NutrientTarget> _targets = new(targets.Targets, StringComparer.Ordinal);
    private readonly List<CropStage> _stages = [.. targets.Stages];
    private readonly List<(CropStage Stage, RowReader Row)> _named = [];
    private readonly HashSet<string> _givenSalts = new(StringComparer.Ordinal);
    private readonly HashSet<string> _givenTargets = new(StringComparer.Ordinal);

    /// <summary>Their names in the file.</summary>
    public static IReadOnlyList<string> Names { get; } = ["salts", "targets", "stages"];

    /// <summary>Reads a shelf of one of the <see cref="Names"/>.</summary>
    public void Group(FileField member) =>
        RowFile.Rows(
            member,
            member.Name switch
            {
                "salts" => Salt,
                "targets" => Target,
                _ => Stage,
            },
            faults
        );

    /// <summary>All salts, once the file is read.</summary>
    public SaltCatalogue Salts => new() { Salts = _salts };

    /// <summary>All targets, once the file is read.</summary>
    public TargetCatalogue Targets => new() { Targets = _targets, Stages = _stages };

    /// <summary>Notes stages that name no crop or no target, once the file is read.</summary>
    /// <param name="crops">Keys of all crops, the file's own with them.</param>
    public void Finish(IReadOnlyCollection<string> crops)
    {
        foreach (var (stage, row) in _named)
        {
            if (!_targets.ContainsKey(stage.Target))
            {
                row.Fault(
                    "target",
                    row.Row["target"]!.Value,
                    "the key of a target",
                    NearestName.Of(stage.Target, _targets.Keys)
                );
            }
            if (!crops.Contains(stage.Crop))
            {
                row.Fault("crop", row.Row["crop"]!.Value, "the key of a crop", NearestName.Of(stage.Crop, crops));
            }
        }
    }

    private void Salt(RowReader row)
    {
        if (SaltReader.Row(row, _givenSalts, _salts) is { } salt)
        {
            _salts[salt.Key] = salt;
        }
    }

    private void Target(RowReader row)
    {
        if (TargetReader.Target(row, _givenTargets) is { } target)
        {
            _targets[target.Key] = target;
        }
    }

    private void Stage(RowReader row)
    {
        if (TargetReader.Stage(row) is { } stage)
        {
            _stages.Add(stage);
            _named.Add((stage, row));
        }
    }
}
