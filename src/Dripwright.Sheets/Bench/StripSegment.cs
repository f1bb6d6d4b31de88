using Dripwright.Engine.Parts;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>A full-size pattern of one drilled piece, or of so much of it as repeats.</summary>
/// <param name="Pattern">The piece and those like it.</param>
/// <param name="Length">[m] From the piece's left end to where the strip stops.</param>
/// <param name="RepeatsAfter">Hole, counted on this piece from 1, on which hole 1 is laid again; null where the strip is whole.</param>
internal sealed record MarkingStrip(HolePattern Pattern, double Length, int? RepeatsAfter)
{
    private const double Clear = 2.5;
    private const double Snippet = 80;

    /// <summary>Cuts the strip into segments that fit a sheet; joins keep clear of holes where they can.</summary>
    /// <param name="most">[mm] Longest segment.</param>
    public IReadOnlyList<StripSegment> Segments(double most)
    {
        var marks = Pattern.First.Marks.Where(m => m.FromEnd <= Length + 1e-9).ToList();
        var (length, from) = (Length * 1000, 0.0);
        var cuts = new List<double> { 0 };
        while (length - from > most)
        {
            // No snippet at the end: the last two share what is left.
            var cut = length - from < most + Snippet ? (from + length) / 2 : from + most;
            foreach (var mark in marks.AsEnumerable().Reverse())
            {
                var reach = (mark.Diameter * 500) + Clear;
                var at = mark.FromEnd * 1000;
                if (cut > at - reach && cut < at + reach)
                {
                    cut = at - reach;
                }
            }

            // Holes so dense that no join keeps clear of them are cut through: both halves show the cross.
            from = cut > from + (most / 3) ? cut : from + most;
            cuts.Add(from);
        }

        cuts.Add(length);
        return
        [
            .. cuts.Zip(cuts.Skip(1))
                .Select(
                    (span, i) =>
                        new StripSegment(this, i, cuts.Count - 1, span.First, span.Second)
                        {
                            Marks = [.. marks.Where(m => Touches(m, span.First, span.Second))],
                        }
                ),
        ];
    }

    private static bool Touches(HoleMark mark, double from, double to) =>
        mark.FromEnd * 1000 >= from - 1e-6 && mark.FromEnd * 1000 <= to + 1e-6;
}

/// <summary>One stretch of a full-size strip, as wide as a sheet.</summary>
/// <param name="Strip">The strip it is cut from.</param>
/// <param name="Index">Counted from 0 at the left.</param>
/// <param name="Count">Segments of the strip.</param>
/// <param name="From">[mm] From the piece's left end.</param>
/// <param name="To">[mm] From the piece's left end.</param>
internal sealed record StripSegment(MarkingStrip Strip, int Index, int Count, double From, double To)
{
    /// <summary>[mm] Paper left of a join that goes under the segment before.</summary>
    public const double Tab = 7;

    private const double TitleLane = 5.5;
    private const double LabelLane = 7.6;
    private static readonly TextStyle s_style = TextStyle.Note with { Size = 2.9 };

    /// <summary>Holes whose centres lie on it.</summary>
    public required IReadOnlyList<HoleMark> Marks { get; init; }

    private double CrossLane => Math.Max(10, Strip.Pattern.First.Marks.Max(m => m.Diameter) * 1000) + 4;

    private bool IsLast => Index == Count - 1;

    /// <summary>[mm] Height on paper.</summary>
    /// <param name="words">Units of the labels.</param>
    public double Height(Wording words)
    {
        var lanes = IsRoomy(words) ? 0 : Lanes(words, 0).Select(l => l.Lane + 1).DefaultIfEmpty(1).Max();
        return TitleLane + CrossLane + (lanes * LabelLane) + 1;
    }

    /// <summary>The segment, full size.</summary>
    /// <param name="at">Top of the line at which it starts; the tab lies left of it.</param>
    /// <param name="words">Units of the labels.</param>
    public Group Draw(Point at, Wording words)
    {
        var height = Height(words);
        var (left, right) = (at.X, at.X + To - From);
        var middle = at.Y + TitleLane + (CrossLane / 2);
        double X(HoleMark mark) => left + (mark.FromEnd * 1000) - From;
        var elements = new List<Element>
        {
            new Line(new(left, at.Y), new(right, at.Y), Pen.Thin),
            new Line(new(left, at.Y + height), new(right, at.Y + height), Pen.Thin),
            new Line(new(left, middle), new(right, middle), Pen.Centre),
            Title(words, new(left + 9, at.Y + 4)),
        };
        Left(elements, new(left, at.Y), height);
        Right(elements, new(right, at.Y), height);
        foreach (var mark in Marks)
        {
            var centre = new Point(X(mark), middle);
            elements.Add(new Circle(centre, mark.Diameter * 500, Pen.Built));
            elements.Add(new Line(centre.Move(-5, 0), centre.Move(5, 0), Pen.Thin));
            elements.Add(new Line(centre.Move(0, -5), centre.Move(0, 5), Pen.Thin));
        }

        elements.AddRange(
            IsRoomy(words)
                ? Marks.SelectMany(m => BesideLabel(m, new(X(m), middle), words))
                : Lanes(words, left).SelectMany(l => BelowLabel(l.Mark, new(X(l.Mark), middle), l.X, l.Lane, words))
        );
        return new(elements)
        {
            Class = "marking-strip",
            Title = Words.Of("bench.strips.part", Strip.Pattern.First.Piece.Label, Index + 1),
        };
    }

    /// <summary>True where every label has room beside its hole.</summary>
    private bool IsRoomy(Wording words)
    {
        var all = Strip.Pattern.First.Marks;
        var widest = all.Select(m => LabelWidth(m, words) + Reach(m)).Max();
        return all.Zip(all.Skip(1)).All(pair => pair.Second.Step * 1000 > (2 * widest) + 4)
            && Marks.All(m => FitsRight(m, words) || FitsLeft(m, words));
    }

    private bool FitsRight(HoleMark mark, Wording words) =>
        (mark.FromEnd * 1000) + Reach(mark) + LabelWidth(mark, words) <= To - 0.5;

    private bool FitsLeft(HoleMark mark, Wording words) =>
        (mark.FromEnd * 1000) - Reach(mark) - LabelWidth(mark, words) >= From + 0.5;

    private static double Reach(HoleMark mark) => Math.Max(5, mark.Diameter * 500) + 2;

    private static double LabelWidth(HoleMark mark, Wording words)
    {
        var (first, second) = LabelOf(mark, words);
        return Math.Max(TextMeasure.Width(first, s_style.Bold), TextMeasure.Width(second, s_style)) + 1;
    }

    private IEnumerable<Element> BesideLabel(HoleMark mark, Point centre, Wording words)
    {
        var (first, second) = LabelOf(mark, words);
        var right = FitsRight(mark, words);
        var at = centre.Move(right ? Reach(mark) : -Reach(mark), 0);
        var style = right ? s_style : s_style.End;
        yield return new Text(first, at.Move(0, -1.2), style.Bold);
        yield return new Text(second, at.Move(0, 3.4), style);
    }

    private IEnumerable<Element> BelowLabel(HoleMark mark, Point centre, double x, int lane, Wording words)
    {
        var (first, second) = LabelOf(mark, words);
        var top = centre.Y + (CrossLane / 2) + (lane * LabelLane);
        var foot = centre.Move(0, Math.Max(5, (mark.Diameter * 500) + 0.5));
        // A label that was moved in from the end of its segment stands left of its hole: the line ends above it.
        yield return x > centre.X
            ? new Polyline([foot, new(centre.X, top), new(x - 0.8, top + 1.5)], Pen.Explain)
            : new Line(foot, new(centre.X, top), Pen.Explain);
        yield return new Text(first, new(x, top + 3), s_style.Bold);
        yield return new Text(second, new(x, top + 6.4), s_style);
    }

    // Set smaller before it is cut short: the labels of many alike pieces stand on the sheet of holes too.
    private Text Title(Wording words, Point at)
    {
        var pattern = Strip.Pattern;
        var piece = pattern.First;
        var name =
            Count > 1
                ? Words.Of("bench.strips.name.part", piece.Piece.Label, Index + 1, Count, pattern.Use)
                : Words.Of("bench.strips.name.whole", piece.Piece.Label, pattern.Use);
        var make =
            pattern.Count > 1 && Index == 0 ? "; " + Words.Of("bench.strips.make", pattern.Count, pattern.Labels) : "";
        var end = Index == 0 ? Words.Of("bench.strips.end.left") + " " : "";
        var title = $"{end}{name}{make}";
        var room = Math.Max(8, To - From - 18);
        var style = TextMeasure.Fitted(title, room, s_style.Bold);
        return new(TextMeasure.Shorten(title, room + 1e-6, style), at, style);
    }

    private void Left(List<Element> elements, Point corner, double height)
    {
        var foot = corner.Move(0, height);
        if (Index == 0)
        {
            elements.Add(new Line(corner, foot, Pen.Built));
            elements.Add(Arrow.Head(corner.Move(0.3, 2.9), 180));
            elements.Add(new Line(corner.Move(3, 2.9), corner.Move(8, 2.9), Pen.Explain));
            return;
        }

        var tab = corner.Move(-Tab, 0);
        elements.Add(new Polyline([corner, tab, tab.Move(0, height), foot], Pen.Hidden));
        elements.Add(new Line(corner, foot, Pen.Thin));
        elements.Add(new Text(Letter(Index - 1), corner.Move(3, 4.4), TextStyle.Body.Bold));
        elements.Add(
            new Text(
                Words.Of("bench.strips.under"),
                tab.Move(4.6, height / 2),
                TextStyle.Small.Middle with
                {
                    Rotation = -90,
                }
            )
        );
    }

    private void Right(List<Element> elements, Point corner, double height)
    {
        var foot = corner.Move(0, height);
        if (!IsLast)
        {
            elements.Add(new Line(corner, foot, Pen.Thin));
            elements.Add(new Text(Letter(Index), corner.Move(-2.5, 4.4), TextStyle.Body.Bold.End));
            return;
        }

        elements.Add(new Line(corner, foot, Strip.RepeatsAfter is null ? Pen.Built : Pen.Hidden));
        var words = Strip.RepeatsAfter is { } hole
            ? Words.Of("bench.strips.goeson", hole)
            : Words.Of("bench.strips.end.right");
        var style = TextStyle.Small.End;
        var room = To - From - 12;
        elements.Add(
            new Text(TextMeasure.Shorten(words, Math.Max(12, room), style), corner.Move(-1.5, height - 1.2), style)
        );
    }

    /// <summary>Where each label stands: below its hole, in the first lane that is free there.</summary>
    private List<(HoleMark Mark, double X, int Lane)> Lanes(Wording words, double left)
    {
        var ends = new List<double>();
        var lanes = new List<(HoleMark, double, int)>();
        foreach (var mark in Marks)
        {
            var (first, second) = LabelOf(mark, words);
            var width = Math.Max(TextMeasure.Width(first, s_style.Bold), TextMeasure.Width(second, s_style)) + 2;
            // A label never sticks out of its segment, or it would be cut off.
            var along = Math.Min((mark.FromEnd * 1000) - From + 1, To - From - width);
            var x = left + Math.Max(1, along);
            var lane = ends.FindIndex(end => end <= x);
            if (lane < 0)
            {
                lane = ends.Count;
                ends.Add(0);
            }

            ends[lane] = x + width;
            lanes.Add((mark, x, lane));
        }

        return lanes;
    }

    private static (string First, string Second) LabelOf(HoleMark mark, Wording words) =>
        (
            BenchWords.Hole(mark),
            words.Us
                ? $"{words.MarkWithUnit(mark.FromEnd)} ({QuantityWords.Number(mark.FromEnd * 1000, "0.0")})"
                : words.MarkWithUnit(mark.FromEnd)
        );

    /// <summary>A to Z, then AA.</summary>
    private static string Letter(int join)
    {
        var letter = ((char)('A' + (join % 26))).ToString();
        return join < 26 ? letter : Letter((join / 26) - 1) + letter;
    }
}
