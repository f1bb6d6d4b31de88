using System.Globalization;

namespace Dripwright.Workbench.Editing;

/// <summary>A path such as <c>rows[0].planting[2].crop</c>, as faults and findings name fields.</summary>
public static class FieldPath
{
    /// <summary>Its steps: names, and indices as numbers.</summary>
    /// <param name="path">The path.</param>
    /// <exception cref="FormatException">It is no such path.</exception>
    public static IReadOnlyList<(string Name, int Index)> Steps(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var steps = new List<(string, int)>();
        foreach (var part in path.Split('.'))
        {
            var bracket = part.IndexOf('[', StringComparison.Ordinal);
            var name = bracket < 0 ? part : part[..bracket];
            if (name.Length == 0)
            {
                throw new FormatException($"\"{path}\" is no path of a field.");
            }

            steps.Add((name, -1));
            var rest = bracket < 0 ? "" : part[bracket..];
            while (rest.Length > 0)
            {
                var end = rest.IndexOf(']', StringComparison.Ordinal);
                if (
                    rest[0] != '['
                    || end < 2
                    || !int.TryParse(rest[1..end], NumberStyles.None, CultureInfo.InvariantCulture, out var index)
                )
                {
                    throw new FormatException($"\"{path}\" is no path of a field.");
                }

                steps.Add(("", index));
                rest = rest[(end + 1)..];
            }
        }

        return steps;
    }

    /// <summary>What stands at a path; null where nothing does.</summary>
    /// <param name="root">The text as nodes.</param>
    /// <param name="path">The path.</param>
    public static System.Text.Json.Nodes.JsonNode? Find(System.Text.Json.Nodes.JsonNode? root, string path)
    {
        var at = root;
        foreach (var (name, index) in Steps(path))
        {
            at =
                index < 0 ? (at as System.Text.Json.Nodes.JsonObject)?[name]
                : at is System.Text.Json.Nodes.JsonArray list && index < list.Count ? list[index]
                : null;
        }

        return at;
    }

    /// <summary>Path of an element of a list.</summary>
    /// <param name="list">Path of the list.</param>
    /// <param name="index">The element, from 0.</param>
    public static string Item(string list, int index) =>
        string.Create(CultureInfo.InvariantCulture, $"{list}[{index}]");

    /// <summary>Path of a field within another.</summary>
    /// <param name="path">The outer path; empty for the rig itself.</param>
    /// <param name="name">The field's name.</param>
    public static string In(string path, string name) => string.IsNullOrEmpty(path) ? name : $"{path}.{name}";

    /// <summary>The id of the input for a field: <c>rows[0].spacing</c> gives <c>f-rows-0-spacing</c>.</summary>
    /// <param name="path">The path.</param>
    public static string Id(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return "f-"
            + path.Replace("[", "-", StringComparison.Ordinal)
                .Replace("]", "", StringComparison.Ordinal)
                .Replace('.', '-');
    }
}
