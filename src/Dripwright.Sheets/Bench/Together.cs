using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Heading, words, drawing and key numbers that stand on one sheet or move to the next as one.</summary>
internal static class Together
{
    private const double Gap = 5;

    /// <summary>A heading and a paragraph with the figure that they belong to.</summary>
    /// <param name="flow">Sheets to add to.</param>
    /// <param name="heading">Heading.</param>
    /// <param name="words">Paragraph; "" for none.</param>
    /// <param name="height">[mm] Height of the figure.</param>
    /// <param name="draw">Draws it into its box.</param>
    public static Flow Titled(this Flow flow, string heading, string words, double height, Func<Box, Element> draw)
    {
        var title = TextMeasure.Wrap(heading, flow.Width, TextStyle.Heading);
        var lines = words.Length == 0 ? [] : TextMeasure.Wrap(words, flow.Width, TextStyle.Body);
        var above = 3 + (title.Count * TextStyle.Heading.LineHeight) + 1.5;
        var text = lines.Count == 0 ? 0 : (lines.Count * TextStyle.Body.LineHeight) + 2;
        return flow.Figure(
            above + text + height,
            box => new Group([
                .. Lines(title, box.TopLeft.Move(0, 3), TextStyle.Heading),
                .. Lines(lines, box.TopLeft.Move(0, above), TextStyle.Body),
                draw(box.CutTop(above + text).Remainder),
            ])
        );
    }

    /// <summary>The same with a table of key numbers at the figure's right.</summary>
    /// <param name="flow">Sheets to add to.</param>
    /// <param name="heading">Heading.</param>
    /// <param name="words">Paragraph; "" for none.</param>
    /// <param name="height">[mm] Least height of the figure.</param>
    /// <param name="draw">Draws it into its box.</param>
    /// <param name="numbers">Key numbers.</param>
    public static Flow Beside(
        this Flow flow,
        string heading,
        string words,
        double height,
        Func<Box, Element> draw,
        Table numbers
    )
    {
        var width = flow.Width * 0.35;
        return flow.Titled(
            heading,
            words,
            Math.Max(height, numbers.Height(width)) + 2,
            box =>
            {
                var (right, left) = box.CutRight(width);
                var figure = draw(new(left.X, left.Y, left.Width - Gap, height));
                return new Group([figure, numbers.Draw(right.TopLeft, width)]);
            }
        );
    }

    private static IEnumerable<Text> Lines(IReadOnlyList<string> lines, Point at, TextStyle style) =>
        lines.Select((line, i) => new Text(line, at.Move(0, (style.Size * 0.95) + (i * style.LineHeight)), style));
}
