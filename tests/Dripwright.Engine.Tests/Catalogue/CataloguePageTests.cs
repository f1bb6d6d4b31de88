using System.Globalization;
using System.Text;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Tests.Catalogue;

public sealed class CataloguePageTests
{
    private const string Start = "<!-- rows: written from the catalogue, checked by a test -->\n";
    private const string Page = "docs/handbook/catalogue.md";

    [Fact]
    public void The_handbooks_fields_and_rows_are_exactly_those_of_the_catalogue() =>
        CommittedText.Holds(
            Page,
            (
                "<!-- fields: begin -->\n",
                "<!-- fields: end -->",
                "\n" + FieldTables.Write(typeof(CatalogueFile), "The catalogue file")
            ),
            (Start, null, Rows())
        );

    [Fact]
    public void The_example_in_the_handbook_reads_without_a_fault()
    {
        var page = CommittedText.Of(Page);
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
        var feeds = PartsCatalogue.Default.Salts.Salts.Count + PartsCatalogue.Default.Targets.Targets.Count;
        var crops = PartsCatalogue.Default.Crops.Count + PartsCatalogue.Default.Media.Count;
        Assert.Equal(PartsCatalogue.Default.All.Count() + crops + feeds, shelves.Sum(shelf => shelf.Rows.Count));
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

    // They are paired one by one, so a group without its kind would shift all after it.
    [Fact]
    public void Every_group_of_the_catalogue_has_its_kind_to_be_asked_for()
    {
        var groups = CatalogueListing.Of(PartsCatalogue.Default);
        Assert.Equal(groups.Count, CatalogueJson.Kinds.Count);
        Assert.Equal("Media", groups[CatalogueJson.Kinds.ToList().IndexOf("media")].Title);
        Assert.Equal("Targets of a feed", groups[CatalogueJson.Kinds.ToList().IndexOf("targets")].Title);
    }
}
