using Dripwright.Language;

namespace Dripwright.Workbench.Editing;

/// <summary>A room of the job, with the parts of the rig file that are decided there.</summary>
/// <param name="Key">Its word in addresses.</param>
/// <param name="Fields">Names of the fields at the root of the rig file; none for a room without inputs.</param>
public sealed record Stage(string Key, IReadOnlyList<string> Fields)
{
    /// <summary>The rooms in the order of the job. A new room is one line here and one case in the rig's page.</summary>
    public static IReadOnlyList<Stage> All { get; } =
    [
        new("site", ["name", "units", "notes", "site"]),
        new("row", ["rows"]),
        new("stand", ["stand", "printing"]),
        new("water", ["feed", "drain", "reservoir", "pump", "timer"]),
        new("feed", ["nutrients"]),
        new("tank", []),
        new("overhead", ["overhead"]),
        new("parts", ["onHand", "spares"]),
        new("printed", []),
        new("pack", []),
        new("revisions", []),
        new("file", []),
    ];

    /// <summary>What to call it.</summary>
    public string Name => Words.Of($"stage.{Key}");

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
