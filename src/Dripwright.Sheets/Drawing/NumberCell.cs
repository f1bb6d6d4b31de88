using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>A number taken apart for aligning: what stands before the decimal point, what follows, and the unit.</summary>
internal sealed record NumberCell(string Whole, string Part, string Unit)
{
    private const double UnitGap = 0.8;

    public static NumberCell Of(string text)
    {
        var i = 0;
        while (i < text.Length && (char.IsAsciiDigit(text[i]) || "-−+±≤≥≈<>".Contains(text[i]) || IsGroup(text, i)))
        {
            i++;
        }

        var whole = text[..i];
        var start = i;
        while (i < text.Length && (char.IsNumber(text[i]) || ".,⁄/".Contains(text[i]) || IsFractionGap(text, i)))
        {
            i++;
        }

        return new(whole, text[start..i], text[i..].Trim());
    }

    public static TextStyle UnitStyle(TextStyle style) => style with { Size = style.Size * 0.8 };

    public double Before(TextStyle style) => TextMeasure.Width(Whole, style);

    public double After(TextStyle style) =>
        TextMeasure.Width(Part, style) + (Unit.Length == 0 ? 0 : UnitGap + TextMeasure.Width(Unit, UnitStyle(style)));

    /// <summary>Draws it with its decimal point at the place.</summary>
    public IEnumerable<Element> Draw(Point at, TextStyle style)
    {
        yield return new Text(Whole + Part, at.Move(-Before(style), 0), style);
        if (Unit.Length > 0)
        {
            yield return new Text(Unit, at.Move(TextMeasure.Width(Part, style) + UnitGap, 0), UnitStyle(style));
        }
    }

    /// <summary>A space between groups of three digits: "1 234".</summary>
    private static bool IsGroup(string text, int i) =>
        text[i] is ' ' or '\u202f' or '\u2009' or '\u00a0'
        && i > 0
        && i + 3 < text.Length + 0
        && text.Skip(i + 1).Take(3).All(char.IsAsciiDigit);

    /// <summary>A space between a whole number and a fraction: "1 ½".</summary>
    private static bool IsFractionGap(string text, int i) =>
        text[i] is ' ' or '\u202f' or '\u2009' or '\u00a0'
        && i + 1 < text.Length
        && char.IsNumber(text[i + 1])
        && !char.IsAsciiDigit(text[i + 1]);
}
