using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>A black border with the word "Caution" and what to beware of.</summary>
public static class CautionBox
{
    private const double Margin = 2.5;
    private static readonly TextStyle s_style = TextStyle.Body;

    // The word may be longer in another language.
    private static double WordWidth => Math.Max(21, 4 + TextMeasure.Width(Words.Of("sheet.caution"), s_style.Bold) + 2);

    /// <summary>[mm] Height of the box for a text.</summary>
    /// <param name="text">What to beware of.</param>
    /// <param name="width">[mm] Width of the box, above 40.</param>
    public static double Height(string text, double width) =>
        (Lines(text, width).Count * s_style.LineHeight) + (2 * Margin);

    /// <summary>The box.</summary>
    /// <param name="text">What to beware of.</param>
    /// <param name="topLeft">Its corner.</param>
    /// <param name="width">[mm] Width of the box, above 40.</param>
    public static Group Draw(string text, Point topLeft, double width)
    {
        var lines = Lines(text, width);
        var box = new Box(topLeft.X, topLeft.Y, width, Height(text, width));
        var first = topLeft.Y + Margin + (s_style.Size * 0.95);
        var elements = new List<Element>
        {
            new Rectangle(box, Pen.Built),
            new Rectangle(box with { Width = 1.5 }, null, Fill.Ink),
            new Text(Words.Of("sheet.caution"), new(topLeft.X + 4, first), s_style.Bold),
        };
        elements.AddRange(
            lines.Select(
                (line, i) => new Text(line, new(topLeft.X + WordWidth, first + (i * s_style.LineHeight)), s_style)
            )
        );
        return new(elements) { Class = "caution", Title = Words.Of("sheet.caution") };
    }

    private static IReadOnlyList<string> Lines(string text, double width) =>
        TextMeasure.Wrap(text, width - WordWidth - Margin, s_style);
}
