using Dripwright.Engine.Catalogue;
using Spectre.Console;

namespace Dripwright.Screen;

/// <summary>Shelves of the catalogue on a screen: a part to a block, so that nothing is squeezed.</summary>
internal static class ShelfView
{
    public static void Draw(IAnsiConsole console, IReadOnlyList<CatalogueShelf> shelves)
    {
        for (var i = 0; i < shelves.Count; i++)
        {
            var shelf = shelves[i];
            console.Write(new Text($"{(i > 0 ? "\n" : "")}{shelf.Title}\n", new Style(decoration: Decoration.Bold)));
            var grid = new Grid();
            grid.AddColumn(new GridColumn { Width = 26, Padding = new Padding(2, 0, 1, 0) });
            grid.AddColumn(new GridColumn { Padding = new Padding(0, 0, 0, 0) });
            foreach (var row in shelf.Rows)
            {
                grid.AddRow(new Text(Plain.Line(row[0])), new Text(Plain.Line(Sentence(shelf, row))));
            }

            console.Write(grid);
        }
    }

    // First column key, second the part's name, last the source: what lies between is told with its column's head.
    private static string Sentence(CatalogueShelf shelf, IReadOnlyList<string> row)
    {
        var figures = Enumerable
            .Range(2, Math.Max(0, row.Count - 3))
            .Where(i => row[i].Length > 0)
            .Select(i => $"{shelf.Columns[i]} {row[i]}");
        return $"{row[1]}. {string.Join(", ", figures)}. [{row[^1]}]";
    }
}
