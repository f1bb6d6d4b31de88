using Dripwright.Language;
using Dripwright.Language.Report;

namespace Dripwright.Workbench.Editing;

/// <summary>A room of the job, with the parts of the rig file that are decided there.</summary>
/// <param name="Key">Its word in addresses.</param>
/// <param name="Fields">Names of the fields at the root of the rig file; none for a room without drawing and inputs.</param>
/// <param name="Figures">Key figures that it shows.</param>
public sealed record Stage(string Key, IReadOnlyList<string> Fields, IReadOnlyList<FigureSubject> Figures)
{
    /// <summary>Key of the room of the crop wire, which has a view of its own.</summary>
    public const string CropWire = "crop-wire";

    /// <summary>Key of the room of the stand.</summary>
    public const string Stand = "stand";

    private static readonly FigureSubject[] s_all = Enum.GetValues<FigureSubject>();

    private static readonly FigureSubject[] s_water =
    [
        FigureSubject.Pots,
        FigureSubject.Pump,
        FigureSubject.Drain,
        FigureSubject.Reservoir,
    ];

    /// <summary>The rooms in the order of the job. A new room is one line here and one in the table of its piece of the page.</summary>
    public static IReadOnlyList<Stage> All { get; } =
    [
        new("site", ["name", "units", "notes", "site"], s_all),
        new("row", ["rows"], s_all),
        new(Stand, ["stand", "printing"], [FigureSubject.Stand]),
        new("water", ["feed", "drain", "reservoir", "pump", "timer"], s_water),
        new("nutrients", ["nutrients"], []),
        new("adjust", [], []),
        new(CropWire, ["cropWire"], [FigureSubject.CropWire]),
        new("parts", ["onHand", "spares"], [FigureSubject.Parts]),
        new("printed", [], []),
        new("pack", [], []),
        new("revisions", [], []),
        new("file", [], []),
    ];

    /// <summary>What to call it.</summary>
    public string Name => Words.Of($"stage.{Key}");

    /// <summary>Whether drawing, findings and inputs stand in it.</summary>
    public bool IsDrawn => Fields.Count > 0;

    /// <summary>The inputs of this room.</summary>
    public IEnumerable<FormField> Inputs => FormField.Root.Where(input => Fields.Contains(input.Path));

    /// <summary>The room of that word, or the first.</summary>
    /// <param name="key">The word.</param>
    public static Stage Of(string? key) => All.FirstOrDefault(stage => stage.Key == key) ?? All[0];

    /// <summary>The room in which a field is decided.</summary>
    /// <param name="path">Path of the field.</param>
    public static Stage Deciding(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var root = path.Split('.', '[')[0];
        return All.FirstOrDefault(stage => stage.Fields.Contains(root)) ?? All[^1];
    }
}
