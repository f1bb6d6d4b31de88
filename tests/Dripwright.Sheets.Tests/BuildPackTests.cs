using System.Globalization;
using System.Text;
using Dripwright.Engine;
using Dripwright.Language.Report;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Tests.Bench;
using Dripwright.Sheets.Tests.Drawing;
using UglyToad.PdfPig;

namespace Dripwright.Sheets.Tests;

public sealed class BuildPackTests
{
    private static readonly Paper[] s_papers = [Paper.A4, Paper.Letter];

    public static TheoryData<string> Demos => [.. BenchPlans.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void No_text_leaves_the_frame_on_either_paper(string demo)
    {
        foreach (var paper in s_papers)
        {
            Assert.All(
                BuildPack.Sheets(BenchPlans.Demo(demo), new() { Paper = paper }),
                sheet =>
                {
                    FlowTest.AssertInside(sheet);
                    Assert.All(SheetText.Of(sheet), text => Assert.True(TextMeasure.CanWrite(text.Text.Content)));
                }
            );
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Every_piece_of_pipe_is_named_on_paper(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        var words = BuildPack.Sheets(plan, new()).SelectMany(SheetText.Of).Select(text => text.Text.Content);
        var text = string.Join('\n', words);
        var cut = plan.Parts.Cuts.SelectMany(c => c.Stocks).SelectMany(s => s.Pieces).Select(p => p.Label);
        Assert.All(cut.Distinct(), label => Assert.Contains(label, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_rig_with_every_emitter_shut_still_gives_a_pack()
    {
        var plan = BenchPlans.Of(BenchPlans.AllShut);
        Assert.All(plan.Feed.Emitters, emitter => Assert.Equal(0, emitter.Open));
        Assert.All(BuildPack.Sheets(plan, new()), FlowTest.AssertInside);
        Assert.NotEmpty(BuildPack.Write(plan, BenchPlans.AllShut, new())["build-pack.pdf"]);
    }

    [Fact]
    public void The_pack_holds_drawings_lists_the_plan_and_the_rig_file_as_it_was_given()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var text = BenchPlans.TextOf(BenchPlans.School);
        var pack = BuildPack.Write(plan, text, new());
        Assert.Superset(
            new HashSet<string>(StringComparer.Ordinal)
            {
                "build-pack.pdf",
                "parts.csv",
                "cuts.csv",
                "holes.csv",
                "plan.json",
                "sixteen-staggered-pots.rig.json",
            },
            new HashSet<string>(pack.Keys, StringComparer.Ordinal)
        );
        Assert.Equal(text, Encoding.UTF8.GetString(pack["sixteen-staggered-pots.rig.json"]));
        Assert.Equal(PlanJson.Write(plan), pack["plan.json"]);
        var drawings = pack.Keys.Where(name => name.StartsWith("sheets/", StringComparison.Ordinal)).ToList();
        Assert.Equal(drawings.Order(StringComparer.Ordinal), drawings);
        using var pdf = PdfDocument.Open(pack["build-pack.pdf"]);
        Assert.Equal(drawings.Count, pdf.NumberOfPages);
    }

    [Theory]
    [InlineData("A4", 210, 297)]
    [InlineData("Letter", 215.9, 279.4)]
    public void Every_page_is_the_paper_asked_for_with_its_fonts_inside(string name, double width, double height)
    {
        var options = new BuildPackOptions { Paper = s_papers.Single(paper => paper.Name == name) };
        var plan = BenchPlans.Demo(BenchPlans.FoodBank);
        using var pdf = PdfDocument.Open(BuildPack.Write(plan, "", options)["build-pack.pdf"]);
        foreach (var page in pdf.GetPages())
        {
            var edges = new[] { page.Width * 25.4 / 72, page.Height * 25.4 / 72 }.Order().ToList();
            Assert.Equal(width, edges[0], 0.1);
            Assert.Equal(height, edges[1], 0.1);
            var fonts = page.Letters.Select(letter => letter.FontName).Distinct();
            Assert.All(fonts, font => Assert.Contains("DripwrightSans", font, StringComparison.Ordinal));
            Assert.Contains(
                string.Create(CultureInfo.InvariantCulture, $"{page.Number} of {pdf.NumberOfPages}"),
                page.Text,
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void The_same_plan_gives_the_same_bytes_twice_and_in_every_culture()
    {
        var options = new BuildPackOptions { Revision = "2", Date = new DateOnly(2026, 3, 1) };
        var first = BuildPack.Write(BenchPlans.Demo(BenchPlans.School), "{}", options);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            var again = BuildPack.Write(BenchPlans.Of(BenchPlans.TextOf(BenchPlans.School)), "{}", options);
            Assert.Equal(first.Keys, again.Keys);
            Assert.All(first, file => Assert.Equal(file.Value, again[file.Key]));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void The_title_block_says_garden_revision_and_date_as_the_caller_gave_them()
    {
        var options = new BuildPackOptions
        {
            Garden = "North bed",
            Revision = "C",
            Date = new DateOnly(2026, 3, 1),
        };
        var sheets = BuildPack.Sheets(BenchPlans.Demo(BenchPlans.School), options);
        Assert.All(
            sheets,
            sheet =>
            {
                var words = SheetText.Of(sheet).Select(text => text.Text.Content).ToList();
                Assert.Contains("North bed", words);
                Assert.Contains("C", words);
                Assert.Contains("2026-03-01", words);
            }
        );
    }

    [Fact]
    public void Progress_rises_and_ends_at_the_whole()
    {
        var told = new Told();
        BuildPack.Write(BenchPlans.Demo(BenchPlans.School), "{}", new(), told);
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.Equal(1, told.Shares[^1]);
    }

    [Theory]
    [InlineData("Row 1, back room", "row-1-back-room")]
    [InlineData("../../etc/passwd", "etc-passwd")]
    [InlineData("Ümläut & Co.", "ml-ut-co")]
    [InlineData("???", "rig")]
    public void A_file_name_is_made_of_small_letters_figures_and_dashes(string rig, string name) =>
        Assert.Equal(name, BuildPack.FileNameOf(rig));

    private sealed class Told : IProgress<PlanProgress>
    {
        public List<double> Shares { get; } = [];

        public void Report(PlanProgress value) => Shares.Add(value.Share);
    }
}
