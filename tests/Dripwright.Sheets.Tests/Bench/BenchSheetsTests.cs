using Dripwright.Engine.Units;
using Dripwright.Sheets.Bench;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Bench;

public sealed class BenchSheetsTests
{
    public static TheoryData<string> Demos => [.. BenchPlans.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void The_hole_map_shows_every_hole_of_every_pattern_with_its_distance(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        var words = new Wording(plan.Rig.Units);
        var drawn = Words(HoleMap.Draw(plan, Paper.A4)).ToHashSet(StringComparer.Ordinal);
        foreach (var mark in HolePattern.Of(plan).SelectMany(pattern => pattern.First.Marks))
        {
            Assert.Contains(words.MarkWithUnit(mark.FromEnd), drawn);
            Assert.Contains(BenchWords.Hole(mark), drawn);
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Patterns_hold_every_drilled_piece_once(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        var pieces = HolePattern.Of(plan).SelectMany(pattern => pattern.Pieces).ToList();
        Assert.Equal(plan.Parts.Holes.Count, pieces.Sum(piece => piece.Marks.Count));
        Assert.Equal(pieces.Count, pieces.Select(piece => piece.Piece.Label).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Texts_of_one_sheet_do_not_run_into_each_other(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        Func<Engine.Plan, Paper, IReadOnlyList<SheetDraft>>[] all =
        [
            HoleMap.Draw,
            MarkingStrips.Draw,
            CutDiagrams.Draw,
            PartsSheets.Draw,
            PlotSheets.Draw,
            FirstFillForm.Draw,
        ];
        foreach (var draft in all.SelectMany(draw => draw(plan, Paper.Letter)))
        {
            var texts = SheetText.Of(draft.Elements);
            for (var i = 0; i < texts.Count; i++)
            {
                for (var j = i + 1; j < texts.Count; j++)
                {
                    Assert.False(
                        texts[i].Bounds.Overlaps(texts[j].Bounds, 0.6),
                        $"{draft.Title}: '{texts[i].Text.Content}' and '{texts[j].Text.Content}'"
                    );
                }
            }
        }
    }

    [Fact]
    public void Up_to_sixty_pots_every_one_is_measured_and_beyond_it_a_sample_with_both_ends_and_the_middle()
    {
        var school = BenchPlans.Demo(BenchPlans.School).Layout;
        Assert.Equal(school.Rows.Sum(row => row.Pots.Count), FirstFillForm.Sample(school).Pots.Count);
        var large = BenchPlans.Demo(BenchPlans.Large).Layout;
        var (pots, every) = FirstFillForm.Sample(large);
        Assert.Equal(9, every);
        Assert.InRange(pots.Count, 30, 150);
        Assert.All(
            large.Rows,
            row =>
            {
                Assert.Contains((row.Number, 1), pots);
                Assert.Contains((row.Number, (row.Pots.Count + 1) / 2), pots);
                Assert.Contains((row.Number, row.Pots.Count), pots);
            }
        );
    }

    [Fact]
    public void The_catch_test_expects_what_the_plan_gives_each_emitter()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var words = Words(FirstFillForm.Draw(plan, Paper.A4)).ToList();
        foreach (var emitter in plan.Feed.Emitters)
        {
            Assert.Contains(QuantityWords.Number(emitter.Flow * 60e6, "0.0"), words);
        }
    }

    [Theory]
    [InlineData("hole saw 1 1/8 in", "hole saw 1\u00a0⅛\u00a0in")]
    [InlineData("PVC pipe 1-1/2 in", "PVC pipe 1\u00a0½\u00a0in")]
    [InlineData("5/16 in", "⁵⁄₁₆\u00a0in")]
    [InlineData("flows at 2 m/s", "flows at 2\u00a0m/s")]
    [InlineData("pulled with 309 lbf", "pulled with 309\u00a0lbf")]
    [InlineData("12/25/2026", "12/25/2026")]
    [InlineData("1/3 full", "1/3 full")]
    public void Fractions_are_set_as_fractions_and_units_stay_with_their_numbers(string written, string set) =>
        Assert.Equal(set, Wording.Sentence(written));

    [Fact]
    public void Marks_are_whole_sixteenths_or_millimetres()
    {
        Assert.Equal("7\u00a0½\u00a0in", new Wording(UnitSystem.Us).MarkWithUnit(0.1905));
        Assert.Equal("191\u00a0mm", new Wording(UnitSystem.Metric).MarkWithUnit(0.1908));
    }

    private static IEnumerable<string> Words(IEnumerable<SheetDraft> drafts) =>
        drafts.SelectMany(draft => SheetText.Of(draft.Elements)).Select(text => text.Text.Content);
}
