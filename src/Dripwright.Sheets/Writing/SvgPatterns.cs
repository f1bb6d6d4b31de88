using System.Text;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Writing;

/// <summary>The pattern fills of an SVG file, as &lt;pattern&gt; elements.</summary>
internal static class SvgPatterns
{
    public static string Id(Fill fill) => $"{fill.Pattern}-{fill.Role}".ToLowerInvariant();

    public static void Write(StringBuilder svg, IEnumerable<Fill> fills, string prefix)
    {
        var used = fills.Where(fill => fill.IsPattern).Distinct().OrderBy(Id, StringComparer.Ordinal).ToList();
        if (used.Count == 0)
        {
            return;
        }

        svg.Append("<defs>\n");
        foreach (var fill in used)
        {
            var size = FileNumbers.Millimetres(PatternLines.Pitch(fill.Pattern));
            svg.Append("<pattern id=\"").Append(prefix).Append(Id(fill)).Append("\" width=\"").Append(size);
            svg.Append("\" height=\"").Append(size).Append("\" patternUnits=\"userSpaceOnUse\"");
            svg.Append(fill.Pattern is FillPattern.Levels or FillPattern.Dots ? ">" : Turned(fill.Pattern));
            Tile(svg, fill);
            svg.Append("</pattern>\n");
        }

        svg.Append("</defs>\n");
    }

    private static string Turned(FillPattern pattern) =>
        $" patternTransform=\"rotate({(pattern == FillPattern.BackHatch ? "45" : "-45")})\">";

    private static void Tile(StringBuilder svg, Fill fill)
    {
        var half = FileNumbers.Millimetres(PatternLines.Pitch(fill.Pattern) / 2);
        var size = FileNumbers.Millimetres(PatternLines.Pitch(fill.Pattern));
        if (fill.Pattern == FillPattern.Dots)
        {
            svg.Append("<circle class=\"fill-").Append(SvgStyles.Name(fill.Role)).Append("\" cx=\"").Append(half);
            svg.Append("\" cy=\"").Append(half).Append("\" r=\"");
            svg.Append(FileNumbers.Millimetres(PatternLines.DotRadius)).Append("\"/>");
            return;
        }

        svg.Append("<path class=\"").Append(SvgStyles.Class(new Pen(fill.Role))).Append("\" d=\"M0 ");
        svg.Append(half).Append('H').Append(size);
        if (fill.Pattern == FillPattern.CrossHatch)
        {
            svg.Append('M').Append(half).Append(" 0V").Append(size);
        }

        svg.Append("\"/>");
    }
}
