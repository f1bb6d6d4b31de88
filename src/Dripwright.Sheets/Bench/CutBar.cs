using Dripwright.Engine.Parts;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>One length of stock with its pieces, to scale along.</summary>
internal static class CutBar
{
    /// <summary>[mm] Height with its caption.</summary>
    public const double Height = 18;

    private const double Thickness = 9.5;
    private static readonly TextStyle s_style = TextStyle.Note with { Size = 2.8 };
    private static readonly Fill s_keep = new(DrawnRole.Explain, FillPattern.Hatch);
    private static readonly Fill s_waste = new(DrawnRole.Explain, FillPattern.CrossHatch);

    /// <summary>The bar.</summary>
    /// <param name="box">Its box.</param>
    /// <param name="stock">The length and its pieces.</param>
    /// <param name="longest">[m] Longest length of this material, which is as wide as the box.</param>
    /// <param name="caption">What stands above it.</param>
    /// <param name="words">Units.</param>
    public static Group Draw(Box box, CutStock stock, double longest, string caption, Wording words)
    {
        var top = box.Y + 5.5;
        double X(double along) => box.X + (box.Width * along / longest);
        var elements = new List<Element> { new Text(caption, box.TopLeft.Move(0, 4), TextStyle.Note.Bold) };
        var end = stock.Pieces.Count == 0 ? 0 : stock.Pieces[^1].Start + stock.Pieces[^1].Length;
        if (stock.Leftover > 0)
        {
            var rest = new Box(X(stock.Length - stock.Leftover), top, X(stock.Leftover) - box.X, Thickness);
            elements.Add(new Rectangle(rest, Pen.Thin, stock.LeftoverUsable ? s_keep : s_waste));
            if (stock.LeftoverUsable)
            {
                Inside(elements, rest, Words.Of("bench.cuts.keep"), words.Length(stock.Leftover), masked: true);
            }
        }

        elements.Add(new Rectangle(new(box.X, top, X(stock.Length) - box.X, Thickness), Pen.Thin));
        foreach (var piece in stock.Pieces)
        {
            var area = new Box(X(piece.Start), top, X(piece.Length) - box.X, Thickness);
            elements.Add(new Rectangle(area, Pen.Thin, Fill.Paper));
            elements.Add(new Line(new(area.Right, top - 1), new(area.Right, top + Thickness + 1), Pen.Built));
            Inside(elements, area, BenchWords.Piece(piece), words.MarkWithUnit(piece.Length), masked: false);
        }

        if (stock.Pieces.Count > 0 && stock.Pieces[0].Start > 0)
        {
            // The first end is squared.
            var square = X(stock.Pieces[0].Start);
            elements.Add(new Line(new(square, top - 1), new(square, top + Thickness + 1), Pen.Built));
        }

        return new(elements)
        {
            Class = "cut-bar",
            Title = caption,
            Description = Words.Of("bench.cuts.end", words.MarkWithUnit(end)),
        };
    }

    /// <summary>Two lines level, or one turned, or nothing where there is no room: the list has it.</summary>
    private static void Inside(List<Element> elements, Box area, string label, string length, bool masked)
    {
        var middle = area.Centre;
        var wide = Math.Max(TextMeasure.Width(label, s_style.Bold), TextMeasure.Width(length, s_style));
        if (wide + 1.5 <= area.Width)
        {
            Text[] texts =
            [
                new(label, middle.Move(0, -0.7), s_style.Bold.Middle),
                new(length, middle.Move(0, 3), s_style.Middle),
            ];
            if (masked)
            {
                elements.AddRange(
                    texts.Select(t => new Rectangle(
                        TextMeasure.Bounds(t).Inset(-0.8, -0.1, -0.8, -0.1),
                        null,
                        Fill.Paper
                    ))
                );
            }

            elements.AddRange(texts);
            return;
        }

        if (!masked && area.Width >= 3.4 && TextMeasure.Width(label, s_style) <= area.Height - 0.6)
        {
            var at = middle.Move(s_style.CapHeight / 2, 0);
            elements.Add(new Text(label, at, s_style.Middle with { Rotation = -90 }));
        }
    }
}
