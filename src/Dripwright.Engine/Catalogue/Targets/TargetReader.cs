using Dripwright.Engine.Catalogue.Rows;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue.Targets;

/// <summary>What came of reading a target file: a catalogue, or all that is wrong with the file.</summary>
/// <param name="Catalogue">The basis with the file laid over it; null when there is any fault.</param>
/// <param name="Faults">All faults, in the order of the file.</param>
public sealed record TargetReading(TargetCatalogue? Catalogue, IReadOnlyList<Fault> Faults);

/// <summary>Reads a file of targets, and of the stages that use them, and lays it over a catalogue.</summary>
public static class TargetReader
{
    private const double MostMilligrams = 5000;

    // Names in the file: the element, nitrogen in three ways.
    private static readonly (string Name, Constituent Constituent)[] s_names =
    [
        ("n", Constituent.NitrateNitrogen),
        ("no3", Constituent.NitrateNitrogen),
        ("nh4", Constituent.AmmoniumNitrogen),
        ("p", Constituent.Phosphorus),
        ("k", Constituent.Potassium),
        ("ca", Constituent.Calcium),
        ("mg", Constituent.Magnesium),
        ("s", Constituent.Sulfur),
        ("na", Constituent.Sodium),
        ("cl", Constituent.Chloride),
        ("si", Constituent.Silicon),
        ("fe", Constituent.Iron),
        ("mn", Constituent.Manganese),
        ("zn", Constituent.Zinc),
        ("cu", Constituent.Copper),
        ("b", Constituent.Boron),
        ("mo", Constituent.Molybdenum),
    ];

    /// <summary>Names of elements in the file.</summary>
    internal static IReadOnlyCollection<string> Fields { get; } = [.. s_names.Select(row => row.Name)];

    /// <summary>Reads a target file.</summary>
    /// <param name="bytes">The file, JSON in UTF-8.</param>
    /// <param name="fileName">Its name, for the faults.</param>
    /// <param name="basis">The catalogue to lay it over, as a rule <see cref="TargetCatalogue.Default"/>.</param>
    /// <returns>The two together, or the faults. Never throws for what stands in the file.</returns>
    public static TargetReading Read(byte[] bytes, string fileName, TargetCatalogue basis)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(basis);
        var faults = new FaultList(fileName);
        var targets = new Dictionary<string, NutrientTarget>(basis.Targets, StringComparer.Ordinal);
        var stages = new List<CropStage>(basis.Stages);
        var named = new List<(string Target, RowReader Row)>();
        var given = new HashSet<string>(StringComparer.Ordinal);
        RowFile.Read(
            bytes,
            faults,
            (
                "targets",
                row =>
                {
                    if (Target(row, given) is { } target)
                    {
                        targets[target.Key] = target;
                    }
                }
            ),
            (
                "stages",
                row =>
                {
                    if (Stage(row) is { } stage)
                    {
                        stages.Add(stage);
                        named.Add((stage.Target, row));
                    }
                }
            )
        );
        foreach (var (target, row) in named.Where(name => !targets.ContainsKey(name.Target)))
        {
            row.Fault("target", row.Row["target"]!.Value, "the key of a target", NearestName.Of(target, targets.Keys));
        }
        return faults.Any
            ? new TargetReading(null, faults.InOrder())
            : new TargetReading(new TargetCatalogue { Targets = targets, Stages = stages }, []);
    }

    internal static NutrientTarget? Target(RowReader row, HashSet<string> given)
    {
        var key = RowFile.Key(row, given);
        var name = row.Text("name", 80, needed: true);
        var source = row.Text("source", 600, needed: true);
        var sure = row.Choice<Sureness>("sure") ?? Sureness.Published;
        var strength = row.Number("decisiemensPerMetre", 0.1, 20);
        var mass = row.Numbers("milligramsPerLitre", Fields, MostMilligrams);
        var moles = row.Numbers("millimolesPerLitre", Fields, 200);
        row.Finish();
        var wanted = new Dictionary<Constituent, double>();
        foreach (var (field, value) in mass)
        {
            Add(field, value / 1000 / Forms.MassPerMole(Of(field)));
        }
        foreach (var (field, value) in moles)
        {
            Add(field, value);
        }
        if (wanted.Count == 0)
        {
            row.Fault("\"milligramsPerLitre\" or \"millimolesPerLitre\" with at least one element");
        }
        var sum = mass.Concat(moles).Any(line => line.Name == "n");
        if (sum && wanted.ContainsKey(Constituent.AmmoniumNitrogen))
        {
            row.Fault("nitrogen as \"n\", or apart as \"no3\" and \"nh4\"");
        }
        return row.Good && key is not null && name is not null && source is not null
            ? new NutrientTarget
            {
                Key = key,
                Name = name,
                Wanted = wanted,
                NitrogenIsSum = sum,
                Conductivity = strength / 10,
                Source = source,
                Sure = sure,
            }
            : null;

        void Add(string field, double amount)
        {
            if (!wanted.TryAdd(Of(field), amount))
            {
                row.Fault($"\"{field}\" once");
            }
        }
    }

    internal static CropStage? Stage(RowReader row)
    {
        var crop = row.Text("crop", 60, needed: true);
        var stage = row.Choice<GrowthStage>("stage", needed: true);
        var target = row.Text("target", 60, needed: true);
        var strength = row.Number("decisiemensPerMetre", 0.1, 20, needed: true);
        var source = row.Text("source", 600, needed: true);
        var sure = row.Choice<Sureness>("sure") ?? Sureness.Published;
        row.Finish();
        return row.Good ? new CropStage(crop!, stage!.Value, target!, strength!.Value / 10, source!, sure) : null;
    }

    private static Constituent Of(string field) => Array.Find(s_names, row => row.Name == field).Constituent;
}
