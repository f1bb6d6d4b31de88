using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Full-size strips to lay on the pipes of the rows: cut out, join, tape on, mark through the crosses.</summary>
public static class MarkingStrips
{
    /// <summary>Most sheets that are printed; beyond it a repeating pattern is printed once, then strips are left out.</summary>
    internal const int MostSheets = 60;

    private const string Title = "Marking strips, full size";
    private const double RulerHeight = 25;
    private const double Between = 4;

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

    private static string Named(int sheet, int of) => $"{Title}, {Wording.Count(sheet)} of {Wording.Count(of)}";

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
            .Heading($"{Title}: {Wording.Counted(pages, "sheet")} of strips follow")
            .Paragraph(
                "For each piece of pipe along the rows one strip. Cut it out, lay each part with its dashed tab under the part "
                    + "before, letter to letter, and tape them together. Lay the strip on the line along the pipe, its left end "
                    + "flush with the pipe's left end, and prick every cross through the paper. Pieces cut alike share a strip."
            )
            .Caution(
                "Check both rulers on every sheet before you drill: a printer set to fit the page makes every hole fall wrong. "
                    + "Print at 100 %. Where strip and hole map differ, the hole map is right."
            )
            .Space(2);
        if (left.Count > 0)
        {
            var labels = BenchWords.Labels([.. left.SelectMany(p => p.Pieces).Select(p => p.Piece.Label)]);
            flow.Paragraph(
                $"Full-size strips of all pieces would take more than {Wording.Count(MostSheets)} sheets. There is none for "
                    + $"{Wording.Counted(left.Sum(p => p.Count), "piece")}: {labels}. Mark these from the hole map with a tape."
            );
        }
        else if (strips.Any(s => s.RepeatsAfter is not null))
        {
            flow.Paragraph(
                $"Whole strips would take more than {Wording.Count(MostSheets)} sheets, so a pattern that repeats is printed "
                    + "once: move it on from hole to hole, and check the last hole against the hole map."
            );
        }

        flow.Figure(RulerHeight, box => CheckRuler.Across(box.TopLeft));
        var table = new Table(
            new("Strip of"),
            new("Make", Align.Right),
            new("Length", Align.Decimal),
            new("Holes", Align.Right),
            new("Strip sheets"),
            new("Printed"),
            new("Taped on", Align.Tick)
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
                first == last ? from : $"{from} to {Wording.Count(last)}",
                strip.RepeatsAfter is { } hole ? $"one repeat: go on at hole {Wording.Count(hole)}" : "whole"
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
            "Cut along the outlines. Dashed tabs go under the part before.",
            "Circle: size of the hole. At it: hole, pot, distance from",
            words.Us ? "the pipe's left end in inches (and millimetres)." : "the pipe's left end.",
        ];
        elements.AddRange(
            notes.Select((note, i) => new Text(note, new(room.X + 124, foot.Y + 6 + (i * 4.4)), TextStyle.Note))
        );
        return new(paper, title, elements) { Scale = Scale.Full };
    }
}
