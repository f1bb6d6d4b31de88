using System.Globalization;
using CsCheck;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Phrases;
using Dripwright.Sheets.Bench;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;
using UglyToad.PdfPig;

namespace Dripwright.Sheets.Tests.Bench;

public sealed class MarkingStripsTests
{
    private const double PointsPerMillimetre = 72 / 25.4;

    public static TheoryData<string, string> Cases =>
        new(from demo in BenchPlans.Demos from paper in new[] { "A4", "Letter" } select (demo, paper));

    [Theory]
    [MemberData(nameof(Cases))]
    public void Crosses_read_back_from_the_file_lie_as_far_apart_as_the_holes_of_the_plan(string demo, string paper)
    {
        var plan = BenchPlans.Demo(demo);
        var drafts = MarkingStrips.Draw(plan, paper == "A4" ? Paper.A4 : Paper.Letter);
        using var pdf = PdfDocument.Open(PdfWriter.Write(new SheetSet("", "", "", "", "").Finish(drafts), "strips"));
        var crosses = pdf.GetPages().SelectMany(page => CrossesOf(page).Select(c => (page.Number, c.X, c.Y))).ToList();
        var marks = HolePattern
            .Of(plan)
            .Where(pattern => pattern.First.Run.Row > 0)
            .SelectMany(pattern => pattern.First.Marks.Select(m => (pattern, m)))
            .ToList();
        Assert.Equal(marks.Count, crosses.Count);
        var compared = 0;
        for (var i = 1; i < marks.Count; i++)
        {
            var sameStrip = ReferenceEquals(marks[i].pattern, marks[i - 1].pattern);
            var sameLine =
                crosses[i].Number == crosses[i - 1].Number && Math.Abs(crosses[i].Y - crosses[i - 1].Y) < 0.05;
            if (sameStrip && sameLine)
            {
                var planned = (marks[i].m.FromEnd - marks[i - 1].m.FromEnd) * 1000;
                Assert.Equal(planned, crosses[i].X - crosses[i - 1].X, 0.02);
                compared++;
            }
        }

        Assert.True(compared > 0 || marks.Count < 6, "no two crosses stood on one line");
    }

    [Fact]
    public void Every_sheet_carries_the_rulers_and_says_how_to_print()
    {
        foreach (var draft in MarkingStrips.Draw(BenchPlans.Demo(BenchPlans.School), Paper.A4))
        {
            var words = SheetText.Of(draft.Elements).Select(text => text.Text.Content).ToList();
            Assert.Contains("100\u202fmm", words);
            Assert.Contains("4\u202fin", words);
            Assert.Contains(words, text => text.StartsWith("Print at 100 %", StringComparison.Ordinal));
            Assert.Equal(Scale.Full, draft.Scale);
        }
    }

    [Fact]
    public void Joins_carry_the_same_letter_on_both_sides()
    {
        var drafts = MarkingStrips.Draw(BenchPlans.Demo(BenchPlans.School), Paper.A4);
        var letters = drafts
            .SelectMany(draft => SheetText.Of(draft.Elements))
            .Select(text => text.Text.Content)
            .Where(text => text.Length == 1 && char.IsAsciiLetterUpper(text[0]))
            .GroupBy(letter => letter)
            .ToList();
        Assert.NotEmpty(letters);
        Assert.All(letters, letter => Assert.Equal(0, letter.Count() % 2));
    }

    [Fact]
    public void Rows_that_all_differ_never_take_more_than_sixty_sheets_and_the_first_says_what_is_left_out()
    {
        var rows = Enumerable
            .Range(0, 12)
            .Select(i =>
                string.Create(CultureInfo.InvariantCulture, $$"""{ "pots": 12, "spacing": "{{400 + i}} mm" }""")
            );
        var plan = BenchPlans.Of($$"""{ "rows": [{{string.Join(',', rows)}}] }""");
        var drafts = MarkingStrips.Draw(plan, Paper.A4);
        Assert.InRange(drafts.Count, 2, MarkingStrips.MostSheets);
        var words = string.Join(
            ' ',
            SheetText.Of(drafts.Take(2).SelectMany(d => d.Elements)).Select(t => t.Text.Content)
        );
        Assert.Contains("more than 60 sheets", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Segments_join_without_gap_fit_the_sheet_and_hold_every_hole()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var pattern = HolePattern.Of(plan)[0];
        var gen = Gen.Select(Gen.Double[0.005, 0.3].Array[1, 40], Gen.Double[0.002, 0.03]);
        gen.Holds(
            (steps, diameter) =>
            {
                var marks = new List<HoleMark>();
                foreach (var step in steps)
                {
                    var last = marks.Count == 0 ? 0 : marks[^1].FromEnd;
                    marks.Add(
                        new(
                            "P",
                            "R",
                            marks.Count + 1,
                            last + step,
                            step,
                            diameter,
                            Phrase.Plain("drill"),
                            HoleFace.Top,
                            1,
                            1
                        )
                    );
                }

                var piece = pattern.First with { Marks = marks };
                var length = marks[^1].FromEnd + 0.05;
                var segments = new MarkingStrip(new HolePattern([piece]), length, null).Segments(240);
                Assert.Equal(0, segments[0].From);
                Assert.Equal(length * 1000, segments[^1].To, 1e-9);
                Assert.All(segments, s => Assert.InRange(s.To - s.From, 0, 240 + 1e-9));
                Assert.All(segments.Zip(segments.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
                Assert.Equal(marks, segments.SelectMany(s => s.Marks).Distinct());
            },
            iter: 500
        );
    }

    /// <summary>Middles of the upright strokes of all crosses, read as text is: from the top, then from the left.</summary>
    private static IEnumerable<(double X, double Y)> CrossesOf(UglyToad.PdfPig.Content.Page page) =>
        page
            .Paths.Select(path => path.GetBoundingRectangle())
            .OfType<UglyToad.PdfPig.Core.PdfRectangle>()
            .Where(box => box.Width < 0.01 && Math.Abs(box.Height - (10 * PointsPerMillimetre)) < 0.01)
            .Select(box => (X: box.Centroid.X / PointsPerMillimetre, Y: box.Centroid.Y / PointsPerMillimetre))
            .OrderByDescending(c => Math.Round(c.Y, 1))
            .ThenBy(c => c.X);
}
