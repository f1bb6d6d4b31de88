using System.Globalization;
using Dripwright.Engine.Catalogue;
using Dripwright.Language;
using Spectre.Console;

namespace Dripwright.Screen;

/// <summary>The catalogue on a screen: a part to a block, so that nothing is squeezed.</summary>
internal static class CatalogueView
{
    private const int KeyWidth = 25;

    public static void Draw(IAnsiConsole console, IReadOnlyList<CatalogueGroup> groups)
    {
        for (var i = 0; i < groups.Count; i++)
        {
            var group = groups[i];
            console.Write(new Text($"{(i > 0 ? "\n" : "")}{group.Title}\n", new Style(decoration: Decoration.Bold)));
            // Many rows share a source: it is told once, under its number.
            var sources = group.Rows.Select(row => row[^1]).Distinct().ToList();
            console.Write(Grid(KeyWidth, group.Rows.Select(row => (row[0], Sentence(group, row, sources)))));
            console.Write(new Text($"  {Words.Of("program.catalogue.sources")}\n"));
            console.Write(Grid(4, sources.Select((source, at) => (Number(at), source))));
        }
    }

    private static Grid Grid(int width, IEnumerable<(string Left, string Right)> rows)
    {
        var grid = new Grid();
        grid.AddColumn(new GridColumn { Width = width, Padding = new Padding(2, 0, 1, 0) });
        grid.AddColumn(new GridColumn { Padding = new Padding(0, 0, 0, 0) });
        foreach (var (left, right) in rows)
        {
            grid.AddRow(new Text(Plain.Line(left)), new Text(Plain.Line(right)));
        }

        return grid;
    }

    // First column key, second the part's name, last the source: what lies between is told with its column's head.
    private static string Sentence(CatalogueGroup group, IReadOnlyList<string> row, List<string> sources)
    {
        var figures = Enumerable
            .Range(2, Math.Max(0, row.Count - 3))
            .Where(i => row[i].Length > 0)
            .Select(i => $"{SmallHead(group.Columns[i])} {row[i]}");
        return $"{row[1]}: {string.Join(", ", figures)}. {Number(sources.IndexOf(row[^1]))}";
    }

    private static string SmallHead(string head) => head.Length > 2 ? char.ToLowerInvariant(head[0]) + head[1..] : head;

    private static string Number(int at) => $"[{(at + 1).ToString(CultureInfo.InvariantCulture)}]";
}
