using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Full-size strips to lay on the pipes of the rows: cut out, join, tape on, mark through the crosses.</summary>
public static class MarkingStrips
{
    /// <summary>Most sheets that are printed; beyond it a repeating pattern is printed once, then strips are left out.</summary>
    internal const int MostSheets = 60;

    private const double RulerHeight = 25;
    private const double Between = 4;

    private static string Title => Words.Of("bench.strips.title");

    /// <summary>The sheets: first what they are and how many, then the strips. Empty where no pipe is drilled.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they lie on their long edge.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var words = new Wording(plan.Rig.Units);
        var across = paper.Landscape;
        var patterns = HolePattern
            .Of(plan)
            .Where(p => p.First.Run.Service is RunService.Feed or RunService.Drain)
            .ToList();
        if (patterns.Count == 0)
        {
            return [];
        }

        // The opening lists the strips: the more there are, the more sheets it takes itself.
        for (var reserved = 1; ; reserved++)
        {
            var (strips, left) = Choose(patterns, across, MostSheets - reserved, words);
            var pages = Deal(strips, across, words);
            var opening = Opening(across, strips, left, pages.Count, FirstSheets(pages), words);
            if (opening.Count <= reserved || reserved == MostSheets - 1)
            {
                return
                [
                    .. opening,
                    .. pages.Select((page, i) => Sheet(across, page, Named(i + 1, pages.Count), words)),
                ];
            }
        }
    }

    private static string Named(int sheet, int of) => Words.Of("bench.strips.numbered", sheet, of);

    /// <summary>Whole strips if they fit the number of sheets, else one repeat of each, else as many as fit.</summary>
    private static (List<MarkingStrip> Strips, List<HolePattern> Left) Choose(
        List<HolePattern> patterns,
        Paper paper,
        int most,
        Wording words
    )
    {
        var whole = patterns.Select(p => new MarkingStrip(p, p.First.Piece.Length, null)).ToList();
        if (Deal(whole, paper, words).Count <= most)
        {
            return (whole, []);
        }

        var shorter = whole.Select(Shortened).ToList();
        var count = shorter.Count;
        while (count > 1 && Deal(shorter.Take(count), paper, words).Count > most)
        {
            count--;
        }

        // A single strip may itself be longer than all sheets together.
        if (Deal(shorter.Take(count), paper, words).Count > most)
        {
            count = 0;
        }

        return ([.. shorter.Take(count)], [.. patterns.Skip(count)]);
    }

    private static MarkingStrip Shortened(MarkingStrip strip)
    {
        var marks = strip.Pattern.First.Marks;
        if (strip.Pattern.Period() is not { } period || marks.Count <= (2 * period) + 1)
        {
            return strip;
        }

        // On to just beyond the hole on which the first one is laid again.
        var end = marks[period].FromEnd + (marks[period].Diameter / 2) + 0.012;
        return end < strip.Length ? strip with { Length = end, RepeatsAfter = marks[period].Number } : strip;
    }

    private static List<List<StripSegment>> Deal(IEnumerable<MarkingStrip> strips, Paper paper, Wording words)
    {
        var room = SheetSet.Room(paper);
        var most = room.Width - StripSegment.Tab - 1;
        var height = room.Height - RulerHeight;
        var pages = new List<List<StripSegment>>();
        var used = double.PositiveInfinity;
        foreach (var segment in strips.SelectMany(strip => strip.Segments(most)))
        {
            var tall = segment.Height(words) + Between;
            if (used + tall > height)
            {
                pages.Add([]);
                used = 0;
            }

            pages[^1].Add(segment);
            used += tall;
        }

        return pages;
    }

    private static Dictionary<MarkingStrip, (int First, int Last)> FirstSheets(List<List<StripSegment>> pages)
    {
        var sheets = new Dictionary<MarkingStrip, (int First, int Last)>();
        for (var i = 0; i < pages.Count; i++)
        {
            foreach (var segment in pages[i])
            {
                var first = sheets.TryGetValue(segment.Strip, out var known) ? known.First : i + 1;
                sheets[segment.Strip] = (first, i + 1);
            }
        }

        return sheets;
    }

    private static IReadOnlyList<SheetDraft> Opening(
        Paper paper,
        List<MarkingStrip> strips,
        List<HolePattern> left,
        int pages,
        Dictionary<MarkingStrip, (int First, int Last)> sheets,
        Wording words
    )
    {
        var flow = new Flow(paper, Title)
            .Heading(Words.Count("bench.strips.heading", pages))
            .Paragraph(Words.Of("bench.strips.how"))
            .Caution(Words.Of("bench.strips.caution"))
            .Space(2);
        if (left.Count > 0)
        {
            var labels = BenchWords.Labels([.. left.SelectMany(p => p.Pieces).Select(p => p.Piece.Label)]);
            flow.Paragraph(Words.Of("bench.strips.missing", MostSheets, labels));
        }
        else if (strips.Any(s => s.RepeatsAfter is not null))
        {
            flow.Paragraph(Words.Of("bench.strips.repeats", MostSheets));
        }

        flow.Figure(RulerHeight, box => CheckRuler.Across(box.TopLeft));
        var table = new Table(
            new(Words.Of("bench.strips.column.of")),
            new(Words.Of("bench.strips.column.make"), Align.Right),
            new(Words.Of("bench.strips.column.length"), Align.Decimal),
            new(Words.Of("bench.strips.column.holes"), Align.Right),
            new(Words.Of("bench.strips.column.sheets")),
            new(Words.Of("bench.strips.column.printed")),
            new(Words.Of("bench.strips.column.taped"), Align.Tick)
        );
        foreach (var strip in strips)
        {
            var (first, last) = sheets[strip];
            var from = Wording.Count(first);
            table.Row(
                $"{strip.Pattern.Labels}, {strip.Pattern.Use}",
                Wording.Count(strip.Pattern.Count),
                words.MarkWithUnit(strip.Pattern.First.Piece.Length),
                Wording.Count(strip.Pattern.First.Marks.Count),
                first == last ? from : Words.Of("bench.strips.range", from, last),
                strip.RepeatsAfter is { } hole ? Words.Of("bench.strips.repeat", hole) : Words.Of("bench.strips.whole")
            );
        }

        flow.Table(table);
        return [.. flow.Build().Select(draft => draft with { Scale = Scale.Full })];
    }

    private static SheetDraft Sheet(Paper paper, List<StripSegment> segments, string title, Wording words)
    {
        var room = SheetSet.Room(paper);
        var (foot, rest) = room.CutBottom(RulerHeight);
        var elements = new List<Element>();
        var at = rest.TopLeft.Move(StripSegment.Tab, 0);
        foreach (var segment in segments)
        {
            elements.Add(segment.Draw(at, words));
            at = at.Move(0, segment.Height(words) + Between);
        }

        elements.Add(CheckRuler.Across(foot.TopLeft.Move(0, 1)));
        string[] notes =
        [
            Words.Of("bench.strips.note.cut"),
            Words.Of("bench.strips.note.circle"),
            Words.Of(words.Us ? "bench.strips.note.inches" : "bench.strips.note.end"),
        ];
        elements.AddRange(
            notes.Select((note, i) => new Text(note, new(room.X + 124, foot.Y + 6 + (i * 4.4)), TextStyle.Note))
        );
        return new(paper, title, elements) { Scale = Scale.Full };
    }
}
