using Dripwright.Engine.Parts;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>
/// A stretch of drilled pipe seen from the drilled face: true to scale along it, thick enough to read. Distances run from
/// the piece's left end above it; hole and pot stand below.
/// </summary>
/// <param name="piece">The piece.</param>
/// <param name="from">[m] Where the stretch starts.</param>
/// <param name="to">[m] Where it ends.</param>
/// <param name="words">Units.</param>
internal sealed class PipeStrip(DrilledPiece piece, double from, double to, Wording words)
{
    private const double Pitch = 3.9;
    private const double Margins = 8;
    private static readonly TextStyle s_style = TextStyle.Note with { Size = 2.9 };

    /// <summary>Most holes that have room for their texts on a stretch as wide as a sheet.</summary>
    private const int MostHoles = 38;

    private IReadOnlyList<HoleMark> Marks { get; } = [.. piece.Marks.Where(m => m.FromEnd >= from && m.FromEnd <= to)];

    /// <summary>[mm] Height of the drawing.</summary>
    public double Height => Above + Thickness + Below;

    private bool Starts => from <= 0;

    private bool Ends => to >= piece.Piece.Length;

    private double Above =>
        7 + Widest(Marks.Select(m => words.MarkWithUnit(m.FromEnd)).Append(words.MarkWithUnit(piece.Piece.Length)));

    private double Below => 5 + Widest(Marks.Select(BenchWords.Hole));

    private static double Thickness => 6;

    /// <summary>The stretches that a piece is drawn in.</summary>
    public static IReadOnlyList<PipeStrip> Of(DrilledPiece piece, Wording words)
    {
        var strips = new List<PipeStrip>();
        var from = 0.0;
        for (var next = MostHoles; next < piece.Marks.Count; next += MostHoles)
        {
            var cut = (piece.Marks[next - 1].FromEnd + piece.Marks[next].FromEnd) / 2;
            strips.Add(new(piece, from, cut, words));
            from = cut;
        }

        strips.Add(new(piece, from, piece.Piece.Length, words));
        return strips;
    }

    /// <summary>Its scale along the pipe, in words.</summary>
    /// <param name="width">[mm] Width of the box it is drawn into.</param>
    public string ScaleIn(double width) => ScaleFor(width - Margins).Words;

    /// <summary>The drawing, in a box as high as <see cref="Height"/>.</summary>
    public Group Draw(Box box)
    {
        var scale = ScaleFor(box.Width - Margins);
        double X(double along) => box.X + 4 + scale.OnPaper(along - from);
        var top = box.Y + Above;
        var middle = top + (Thickness / 2);
        var (left, right) = (X(from), X(to));
        var elements = new List<Element>
        {
            new Line(new(left, top), new(right, top), Pen.Built),
            new Line(new(left, top + Thickness), new(right, top + Thickness), Pen.Built),
            new Line(new(left - 2, middle), new(right + 2, middle), Pen.Centre),
            End(left, top, Starts),
            End(right, top, Ends),
        };
        foreach (var mark in Marks)
        {
            var radius = Math.Clamp(scale.OnPaper(mark.Diameter) / 2, 0.5, (Thickness / 2) - 0.8);
            elements.Add(new Circle(new(X(mark.FromEnd), middle), radius, Pen.Thin, Fill.Paper));
            elements.Add(Mark.Centre(new(X(mark.FromEnd), middle), Math.Max(1.2, radius + 0.6)));
        }

        elements.AddRange(Distances(X, top, box));
        elements.AddRange(Names(X, top + Thickness, box));
        return new(elements) { Class = "pipe-strip", Title = Words.Of("bench.holes.piece", piece.Piece.Label) };
    }

    private IEnumerable<Element> Distances(Func<double, double> x, double top, Box box)
    {
        var places = Marks.Select(m => m.FromEnd).ToList();
        if (Ends)
        {
            places.Add(piece.Piece.Length);
        }

        var spread = DimensionLine.Spread([.. places.Select(x)], Pitch, box.X + 3, box.Right - 1);
        var line = top - 2.5;
        yield return new Line(new(x(from), line), new(x(to), line), Pen.Explain);
        if (Starts)
        {
            yield return new Circle(new(x(0), line), 0.9, Pen.Explain, Fill.Paper);
        }

        for (var i = 0; i < places.Count; i++)
        {
            var at = x(places[i]);
            yield return Arrow.Head(new(at, line), 0);
            yield return new Polyline([new(at, top), new(at, line - 1), new(spread[i], line - 3.2)], Pen.Explain);
            var style = s_style with { Rotation = -90, Weight = i == Marks.Count ? Weight.Bold : Weight.Regular };
            yield return new Text(
                words.MarkWithUnit(places[i]),
                new(spread[i] + (s_style.CapHeight / 2), line - 3.8),
                style
            );
        }
    }

    private IEnumerable<Element> Names(Func<double, double> x, double foot, Box box)
    {
        var spread = DimensionLine.Spread([.. Marks.Select(m => x(m.FromEnd))], Pitch, box.X + 3, box.Right - 1);
        for (var i = 0; i < Marks.Count; i++)
        {
            var at = x(Marks[i].FromEnd);
            yield return new Polyline([new(at, foot), new(at, foot + 1), new(spread[i], foot + 3)], Pen.Explain);
            var style = s_style.End with { Rotation = -90 };
            yield return new Text(
                BenchWords.Hole(Marks[i]),
                new(spread[i] + (s_style.CapHeight / 2), foot + 3.6),
                style
            );
        }
    }

    private static Element End(double x, double top, bool isEnd) =>
        isEnd
            ? new Line(new(x, top), new(x, top + Thickness), Pen.Built)
            : Mark.Break(new(x, top - 1.5), new(x, top + Thickness + 1.5));

    private static double Widest(IEnumerable<string> texts) => texts.Max(text => TextMeasure.Width(text, s_style));

    private Scale ScaleFor(double width)
    {
        var smaller = new[] { 500, 1000, 5000 }.Select(n => new Scale(n, $"1:{Wording.Count(n)}"));
        var scales = Scale.Of(words.Drawn).Concat(smaller).ToList();
        return scales.FirstOrDefault(s => s.OnPaper(to - from) <= width) ?? scales[^1];
    }
}
