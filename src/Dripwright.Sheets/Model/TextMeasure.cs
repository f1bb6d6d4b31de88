using System.Text;
using SkiaSharp;

namespace Dripwright.Sheets.Model;

/// <summary>Sizes of texts, from the shipped font. No kerning: a text is as wide as its characters together.</summary>
public static class TextMeasure
{
    private const double Ascent = 0.75;
    private const double Descent = 0.22;
    private const string Ellipsis = "…";
    private static readonly Dictionary<int, double> s_regular = Widths(Weight.Regular);
    private static readonly Dictionary<int, double> s_bold = Widths(Weight.Bold);

    /// <summary>[mm] Width of a single line.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="style">Size and weight; the rest does not matter.</param>
    public static double Width(string text, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(text);
        var widths = style.Weight == Weight.Bold ? s_bold : s_regular;
        var sum = 0.0;
        foreach (var rune in text.EnumerateRunes())
        {
            // A character that the font lacks shows as an empty box, which has a width of its own.
            sum += widths.TryGetValue(rune.Value, out var width) ? width : widths[0];
        }

        return sum * style.Size;
    }

    /// <summary>Whether the font has every character of the text.</summary>
    public static bool CanWrite(string text) => text.EnumerateRunes().All(rune => s_regular.ContainsKey(rune.Value));

    /// <summary>The upright box around a placed text, turned or not.</summary>
    public static Box Bounds(Text text) => Box.Around(Corners(text));

    /// <summary>The four corners of a placed text, turned with it.</summary>
    public static IReadOnlyList<Point> Corners(Text text)
    {
        var style = text.Style;
        var width = Width(text.Content, style);
        var left = style.Anchor switch
        {
            Anchor.Middle => -width / 2,
            Anchor.End => -width,
            _ => 0,
        };
        var box = new Box(left, -Ascent * style.Size, width, (Ascent + Descent) * style.Size);
        return [.. box.Corners.Select(corner => text.At + corner.Turn(style.Rotation))];
    }

    /// <summary>
    /// Breaks a text into lines. Breaks at spaces and line feeds; a word wider than a line is broken where it must.
    /// A no-break space keeps a number and its unit together.
    /// </summary>
    /// <param name="text">Any text.</param>
    /// <param name="width">[mm] Width of a line, above 0.</param>
    /// <param name="style">Size and weight.</param>
    /// <returns>At least one line.</returns>
    public static IReadOnlyList<string> Wrap(string text, double width, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        var lines = new List<string>();
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var longer = line.Length == 0 ? word : line + " " + word;
                if (Width(longer, style) <= width)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                line = BreakWord(word, width, style, lines);
            }

            lines.Add(line);
        }

        return lines;
    }

    /// <summary>The style in which a text fits: smaller, down to a least size, where it is too wide.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="width">[mm] Room.</param>
    /// <param name="style">Size and weight.</param>
    /// <param name="least">[mm] Least size.</param>
    public static TextStyle Fitted(string text, double width, TextStyle style, double least = 2)
    {
        ArgumentNullException.ThrowIfNull(style);
        var wide = Width(text, style);
        return wide <= width
            ? style
            : style with
            {
                Size = Math.Min(style.Size, Math.Max(least, style.Size * width / wide)),
            };
    }

    /// <summary>The text if it fits, else its beginning and an ellipsis.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="width">[mm] Room.</param>
    /// <param name="style">Size and weight.</param>
    public static string Shorten(string text, double width, TextStyle style)
    {
        if (Width(text, style) <= width)
        {
            return text;
        }

        var shown = new StringBuilder();
        var room = width - Width(Ellipsis, style);
        foreach (var rune in text.EnumerateRunes())
        {
            var letter = rune.ToString();
            room -= Width(letter, style);
            if (room < 0)
            {
                break;
            }

            shown.Append(letter);
        }

        return shown.ToString().TrimEnd() + Ellipsis;
    }

    // A word that is too long is broken after a hyphen where that fits, else where the room ends.
    private static string BreakWord(string word, double width, TextStyle style, List<string> lines)
    {
        for (var at = word.LastIndexOf('-', word.Length - 1); at > 0; at = word.LastIndexOf('-', at - 1))
        {
            if (at < word.Length - 1 && Width(word, style) > width && Width(word[..(at + 1)], style) <= width)
            {
                lines.Add(word[..(at + 1)]);
                return BreakWord(word[(at + 1)..], width, style, lines);
            }
        }

        var line = new StringBuilder();
        foreach (var rune in word.EnumerateRunes())
        {
            if (line.Length > 0 && Width(line.ToString() + rune, style) > width)
            {
                lines.Add(line.ToString());
                line.Clear();
            }

            line.Append(rune.ToString());
        }

        return line.ToString();
    }

    private static Dictionary<int, double> Widths(Weight weight)
    {
        var typeface = Typeface.Of(weight);
        using var font = new SKFont(typeface, typeface.UnitsPerEm) { Subpixel = true, LinearMetrics = true };
        font.Hinting = SKFontHinting.None;
        var widths = new Dictionary<int, double> { [0] = font.GetGlyphWidths([(ushort)0])[0] / typeface.UnitsPerEm };
        // The font has no character beyond this block.
        for (var code = 0x20; code < 0x2800; code++)
        {
            var glyph = font.GetGlyph(code);
            if (glyph != 0)
            {
                widths[code] = font.GetGlyphWidths([glyph])[0] / typeface.UnitsPerEm;
            }
        }

        return widths;
    }
}
