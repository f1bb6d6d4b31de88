using System.Text;
using CsvHelper;
using Dripwright.Language;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Tests.Bench;

namespace Dripwright.Sheets.Tests.Lists;

public sealed class PlanListsTests
{
    public static TheoryData<string> Demos => [.. BenchPlans.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Every_hole_of_the_plan_stands_once_in_the_list_where_the_plan_has_it(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        var words = new PlanWords(plan.Rig.Units);
        using var csv = CsvReader.Create(PlanLists.Holes(plan));
        var count = 0;
        while (csv.Read())
        {
            var hole = plan.Parts.Holes[count++];
            Assert.Equal(hole.Piece, csv.GetString("piece"));
            Assert.Equal(hole.Number, csv.Parse<int>("hole"));
            Assert.Equal(hole.Pot, csv.Parse<int>("pot"));
            Assert.Equal(hole.FromEnd * 1000, csv.Parse<double>("from_left_end_mm"), 0.0051);
            Assert.Equal(hole.FromEnd / 0.0254, csv.Parse<double>("from_left_end_in"), 0.00051);
            Assert.Equal(hole.Step * 1000, csv.Parse<double>("from_mark_before_mm"), 0.0051);
            Assert.Equal(hole.Diameter * 1000, csv.Parse<double>("diameter_mm"), 0.0051);
            Assert.Equal(words.Of(hole.Tool), csv.GetString("tool"));
        }

        Assert.Equal(plan.Parts.Holes.Count, count);
        // And the plan itself has a mark for each hole of the layout that lies on a piece.
        Assert.Equal(plan.Layout.Runs.Sum(r => r.Holes.Count) - Unmarked(plan), count);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Pieces_and_leftovers_of_a_bar_are_never_longer_than_the_bar(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        using var csv = CsvReader.Create(PlanLists.Cuts(plan));
        var (pieces, sums) = (0, new Dictionary<string, (double Bar, double Used)>(StringComparer.Ordinal));
        while (csv.Read())
        {
            pieces += csv.GetString("kind") == "piece" ? 1 : 0;
            var bar = csv.GetString("material") + csv.GetString("bar");
            var used = sums.GetValueOrDefault(bar).Used + csv.Parse<double>("length_mm");
            sums[bar] = (csv.Parse<double>("bar_length_mm"), used);
        }

        Assert.Equal(plan.Parts.Cuts.Sum(c => c.Stocks.Sum(s => s.Pieces.Count)), pieces);
        Assert.All(sums.Values, bar => Assert.InRange(bar.Used, 0, bar.Bar + 0.02));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Every_part_is_listed_with_its_numbers(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        var words = new PlanWords(plan.Rig.Units);
        using var csv = CsvReader.Create(PlanLists.Parts(plan));
        var count = 0;
        while (csv.Read())
        {
            var line = plan.Parts.Lines[count++];
            Assert.Equal(words.Of(line.Name), csv.GetString("name"));
            Assert.Equal(words.Of(line.Where), csv.GetString("for"));
            Assert.Equal(line.Needed, csv.Parse<int>("needed"));
            Assert.Equal(line.Buy, csv.Parse<int>("buy"));
        }

        Assert.Equal(plan.Parts.Lines.Count, count);
    }

    [Fact]
    public void Fields_are_quoted_after_RFC_4180_and_formulas_are_disarmed()
    {
        var bytes = CsvText.Write(
            ["a", "b"],
            [
                ["1 1/2\" pipe, \"blue\"", 12.5m],
                ["=1+1", null],
                ["two\nlines", -3],
            ]
        );
        Assert.Equal(
            "a,b\r\n\"1 1/2\"\" pipe, \"\"blue\"\"\",12.5\r\n\"'=1+1\",\r\n\"two\nlines\",-3\r\n",
            Encoding.UTF8.GetString(bytes)
        );
    }

    [Theory]
    [InlineData(0.0125, "12.5")]
    [InlineData(0.1, "100")]
    [InlineData(0.0000049, "0")]
    public void Lengths_carry_no_noughts_that_say_nothing(double metres, string text) =>
        Assert.Equal(text, CsvText.Millimetres(metres).ToString(System.Globalization.CultureInfo.InvariantCulture));

    private static int Unmarked(Engine.Plan plan) =>
        plan.Parts.CutTroubles.Count(trouble => trouble.What.Key == "cut.hole-unmarked");
}
