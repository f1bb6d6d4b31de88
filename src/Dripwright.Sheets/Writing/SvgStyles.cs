using System.Text;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Writing;

/// <summary>Class names and style sheets of the SVG files. Everything is scoped by the class "sheet" of the root.</summary>
internal static class SvgStyles
{
    public static string Name(DrawnRole role) => role.ToString().ToLowerInvariant();

    public static string Class(Pen pen)
    {
        var name = $"pen-{Name(pen.Role)} {(pen.Width == LineWidth.Wide ? "wide" : "narrow")}";
        return pen.Type == LineType.Continuous ? name : name + " " + LineName(pen.Type);
    }

    public static string Class(Fill fill) =>
        fill.Pattern == FillPattern.Solid ? $"fill-{Name(fill.Role)}" : $"tint-{Name(fill.Role)}";

    public static string Class(TextStyle style)
    {
        var anchor = style.Anchor switch
        {
            Anchor.Middle => " middle",
            Anchor.End => " end",
            _ => "",
        };
        return $"text-{Name(style.Role)}{(style.Weight == Weight.Bold ? " bold" : "")}{anchor}";
    }

    /// <summary>Plain colours, for a file that stands alone.</summary>
    public static string Embedded(Palette palette)
    {
        var css = new StringBuilder();
        Shapes(css, ".sheet *");
        foreach (var role in Enum.GetValues<DrawnRole>())
        {
            Rules(css, role, palette.Colours[role], palette.Tints[role]);
        }

        return css.ToString();
    }

    /// <summary>Custom properties, for a page with a light and a dark scheme.</summary>
    public static string Page()
    {
        var css = new StringBuilder();
        Variables(css, ":root", Palette.Light);
        css.Append("@media (prefers-color-scheme: dark) {\n");
        Variables(css, ":root", Palette.Dark);
        css.Append("}\n@media print {\n");
        Variables(css, ":root", Palette.Print);
        css.Append("}\n");
        Shapes(css, ".sheet :not([fill])");
        foreach (var role in Enum.GetValues<DrawnRole>())
        {
            Rules(css, role, $"var(--sheet-{Name(role)})", $"var(--sheet-{Name(role)}-tint)");
        }

        return css.ToString();
    }

    public static string FontFaces()
    {
        var css = new StringBuilder();
        foreach (var weight in Enum.GetValues<Weight>())
        {
            css.Append("@font-face{font-family:'").Append(Typeface.Family).Append("';font-weight:");
            css.Append(weight == Weight.Bold ? "700" : "400").Append(";src:url(data:font/ttf;base64,");
            css.Append(Convert.ToBase64String(Typeface.File(weight))).Append(")}\n");
        }

        return css.ToString();
    }

    private static string LineName(LineType type) =>
        type switch
        {
            LineType.Dashed => "dashed",
            LineType.LongDashDot => "centre",
            _ => "neighbour",
        };

    private static void Shapes(StringBuilder css, string unfilled)
    {
        css.Append(unfilled).Append("{fill:none;stroke-linejoin:round}\n");
        foreach (var width in Enum.GetValues<LineWidth>())
        {
            var name = width == LineWidth.Wide ? "wide" : "narrow";
            css.Append(".sheet .").Append(name).Append("{stroke-width:");
            css.Append(FileNumbers.Millimetres(new Pen(DrawnRole.Ink, width).Millimetres)).Append("}\n");
            foreach (var type in Enum.GetValues<LineType>().Where(type => type != LineType.Continuous))
            {
                var dashes = new Pen(DrawnRole.Ink, width, type).Dashes.Select(FileNumbers.Millimetres);
                css.Append(".sheet .").Append(name).Append('.').Append(LineName(type));
                css.Append("{stroke-dasharray:").AppendJoin(' ', dashes).Append("}\n");
            }
        }

        css.Append(".sheet text{font-family:").Append(Typeface.Stack);
        css.Append(";font-kerning:none;font-variant-numeric:lining-nums tabular-nums;white-space:pre}\n");
        css.Append(".sheet .bold{font-weight:700}\n.sheet .middle{text-anchor:middle}\n");
        css.Append(".sheet .end{text-anchor:end}\n");
    }

    private static void Rules(StringBuilder css, DrawnRole role, string colour, string tint)
    {
        var name = Name(role);
        css.Append(".sheet .pen-").Append(name).Append("{stroke:").Append(colour).Append("}\n");
        css.Append(".sheet .fill-").Append(name).Append(",.sheet .text-").Append(name);
        css.Append("{fill:").Append(colour).Append("}\n");
        css.Append(".sheet .tint-").Append(name).Append("{fill:").Append(tint).Append("}\n");
    }

    private static void Variables(StringBuilder css, string selector, Palette palette)
    {
        css.Append(selector).Append(" {\n");
        foreach (var role in Enum.GetValues<DrawnRole>())
        {
            css.Append("  --sheet-").Append(Name(role)).Append(": ").Append(palette.Colours[role]).Append(";\n");
            css.Append("  --sheet-").Append(Name(role)).Append("-tint: ").Append(palette.Tints[role]).Append(";\n");
        }

        css.Append("}\n");
    }
}
