using System.Globalization;
using System.Text;
using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Tests.Catalogue;

public sealed class CataloguePageTests
{
    private const string Start = "<!-- rows: written from the catalogue, checked by a test -->";

    [Fact]
    public void The_handbook_lists_exactly_the_rows_of_the_catalogue()
    {
        var path = Path.Combine(Repository(), "docs", "handbook", "catalogue.md");
        var page = File.ReadAllText(path).ReplaceLineEndings("\n");
        var start = page.IndexOf(Start, StringComparison.Ordinal);
        Assert.True(start >= 0, "the page lost the mark where its rows start");
        var expected = page[..start] + Start + "\n" + Rows();
        if (page != expected)
        {
            File.WriteAllText(path + ".received.md", expected);
        }
        Assert.True(page == expected, "out of step: look at catalogue.md.received.md and rename it to accept");
    }

    [Fact]
    public void The_example_in_the_handbook_reads_without_a_fault()
    {
        var page = File.ReadAllText(Path.Combine(Repository(), "docs", "handbook", "catalogue.md"));
        var start = page.IndexOf("```json", StringComparison.Ordinal) + "```json".Length;
        var example = page[start..page.IndexOf("```", start, StringComparison.Ordinal)];
        var reading = CatalogueReader.Read(Encoding.UTF8.GetBytes(example), "page", PartsCatalogue.Default);
        Assert.Empty(reading.Faults);
        Assert.Equal(3, reading.Catalogue!.Pumps["my-pump"].Curve.Count);
    }

    [Fact]
    public void The_listing_is_the_same_in_every_culture()
    {
        var expected = Rows();
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(expected, Rows());
            Assert.Equal(PartsCatalogue.Default.All.Count(), CatalogueData.Load().All.Count());
            Assert.Equal(21.336e-3, CatalogueData.Load().Pipes["pvc40-1/2"].OutsideDiameter, 1e-12);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Every_row_of_the_listing_has_a_cell_for_each_column()
    {
        var shelves = CatalogueListing.Of(PartsCatalogue.Default);
        Assert.Equal(PartsCatalogue.Default.All.Count(), shelves.Sum(shelf => shelf.Rows.Count));
        Assert.All(shelves, shelf => Assert.All(shelf.Rows, row => Assert.Equal(shelf.Columns.Count, row.Count)));
    }

    // Sources repeat down a shelf: each is written once below its table and named by a number.
    private static string Rows()
    {
        var text = new StringBuilder();
        foreach (var shelf in CatalogueListing.Of(PartsCatalogue.Default))
        {
            var sources = shelf.Rows.Select(row => row[^1]).Distinct(StringComparer.Ordinal).ToList();
            text.Append("\n## ").Append(shelf.Title).Append("\n\n");
            Line(text, shelf.Columns);
            Line(text, shelf.Columns.Select(_ => "---"));
            foreach (var row in shelf.Rows)
            {
                var number = sources.IndexOf(row[^1]) + 1;
                Line(text, [$"`{row[0]}`", .. row.Skip(1).SkipLast(1), FormattableString.Invariant($"{number}")]);
            }
            text.Append("\nSources:\n\n");
            for (var i = 0; i < sources.Count; i++)
            {
                text.Append(FormattableString.Invariant($"{i + 1}. {sources[i]}\n"));
            }
        }
        return text.ToString();
    }

    private static void Line(StringBuilder text, IEnumerable<string> cells) =>
        text.Append("| ").AppendJoin(" | ", cells).Append(" |\n");

    internal static string Repository()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Dripwright.slnx")))
        {
            folder = folder.Parent;
        }
        return folder?.FullName ?? throw new InvalidOperationException("The tests do not stand in the repository.");
    }
}
