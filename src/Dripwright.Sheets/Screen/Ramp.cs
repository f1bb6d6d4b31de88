using System.Globalization;
using System.Text;

namespace Dripwright.Sheets.Screen;

/// <summary>Six steps of colour from dark blue to yellow that read alike to colour-blind people and get lighter step by step.</summary>
/// <remarks>
/// Samples 0, 1/5 … 1 of the map "cividis": J. R. Nuñez, C. R. Anderton, R. S. Renslow, "Optimizing colormaps with
/// consideration for color vision deficiency to enable accurate interpretation of scientific data", PLoS ONE 13(7),
/// e0199239 (2018), doi 10.1371/journal.pone.0199239; values as published with an open plotting library.
/// </remarks>
public static class Ramp
{
    /// <summary>Colours as #rrggbb, the least first.</summary>
    public static IReadOnlyList<string> Colours { get; } =
    ["#00224e", "#35456c", "#666970", "#948e77", "#c8b866", "#fee838"];

    /// <summary>Colour of letters and lines on each step, as #rrggbb.</summary>
    public static IReadOnlyList<string> Letters { get; } =
    [.. Colours.Select(c => Contrast(c, White) >= Contrast(c, Black) ? White : Black)];

    private const string White = "#ffffff";
    private const string Black = "#11100e";

    /// <summary>Relative luminance of a colour, which is its grey.</summary>
    /// <param name="colour">As #rrggbb.</param>
    /// <remarks>L = 0.2126 R + 0.7152 G + 0.0722 B of the linear parts: W3C, WCAG 2.2, "relative luminance".</remarks>
    public static double Luminance(string colour)
    {
        ArgumentNullException.ThrowIfNull(colour);
        var parts = new[] { 1, 3, 5 }
            .Select(i => byte.Parse(colour.AsSpan(i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
            .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4))
            .ToArray();
        return (0.2126 * parts[0]) + (0.7152 * parts[1]) + (0.0722 * parts[2]);
    }

    /// <summary>Contrast of two colours, from 1 to 21, after W3C, WCAG 2.2, "contrast ratio".</summary>
    /// <param name="one">As #rrggbb.</param>
    /// <param name="other">As #rrggbb.</param>
    public static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one) + 0.05, Luminance(other) + 0.05);
        return Math.Max(a, b) / Math.Min(a, b);
    }

    /// <summary>Rules that colour what stands in a step.</summary>
    internal static string Styles()
    {
        var css = new StringBuilder();
        for (var i = 0; i < Colours.Count; i++)
        {
            var step = ".sheet .step-" + (i + 1).ToString(CultureInfo.InvariantCulture);
            css.Append(step).Append(">.fill-paper{fill:").Append(Colours[i]).Append("}\n");
            css.Append(step).Append(">text{fill:").Append(Letters[i]).Append("}\n");
            css.Append(step).Append(">line{stroke:").Append(Letters[i]).Append("}\n");
            // A plant from above lies on the colour, from the side over it.
            css.Append(step).Append(".above>.pen-plant{fill:none;stroke:").Append(Letters[i]).Append("}\n");
        }

        return css.ToString();
    }
}
