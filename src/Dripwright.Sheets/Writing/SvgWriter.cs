using System.Text;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Writing;

/// <summary>
/// Writes a sheet as SVG: user unit 1 mm, text as text, a class for each role so that a page can restyle it. The same
/// sheet gives the same characters in every culture.
/// </summary>
public static class SvgWriter
{
    /// <summary>The sheet as an SVG document, or as an element for a web page.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not finite.</exception>
    public static string Write(Sheet sheet, SvgOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        options ??= new();
        var window = options.Window ?? sheet.Paper.Area;
        var svg = new StringBuilder();
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"sheet\" role=\"");
        svg.Append(options.Live ? "group\" aria-label=\"" + Xml.Escape(sheet.Title) : "img").Append('"');
        if (!options.Fluid)
        {
            svg.Append(" width=\"").Append(FileNumbers.Millimetres(window.Width)).Append("mm\" height=\"");
            svg.Append(FileNumbers.Millimetres(window.Height)).Append("mm\"");
        }

        svg.Append(" viewBox=\"")
            .AppendJoin(' ', new[] { window.X, window.Y, window.Width, window.Height }.Select(FileNumbers.Millimetres));
        svg.Append("\">\n");
        TitleOf(svg, sheet.Title, sheet.Description);
        if (options.EmbedStyles)
        {
            svg.Append("<style>\n").Append(options.EmbedFont ? SvgStyles.FontFaces() : "");
            svg.Append(SvgStyles.Embedded(options.Palette)).Append(options.MoreStyles).Append("</style>\n");
        }

        SvgPatterns.Write(svg, FillsOf(sheet.Elements), options.IdPrefix);
        new SvgShapes(svg, options).Paper(window);
        var shapes = new SvgShapes(svg, options);
        foreach (var element in sheet.Elements)
        {
            shapes.Write(element);
        }

        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>
    /// Style sheet for pages that hold inline sheets: light, dark and print schemes as custom properties
    /// (<c>--sheet-ink</c>, <c>--sheet-water</c>, <c>--sheet-water-tint</c> …).
    /// </summary>
    public static string PageStyles() => SvgStyles.Page();

    internal static void TitleOf(StringBuilder svg, string? title, string? description)
    {
        if (title is not null)
        {
            svg.Append("<title>").Append(Xml.Escape(title)).Append("</title>\n");
        }

        if (description is not null)
        {
            svg.Append("<desc>").Append(Xml.Escape(description)).Append("</desc>\n");
        }
    }

    private static IEnumerable<Fill> FillsOf(IEnumerable<Element> elements) =>
        elements.SelectMany(element =>
            element switch
            {
                Group group => FillsOf(group.Children),
                Polyline { Fill: { } fill } => [fill],
                Rectangle { Fill: { } fill } => [fill],
                Circle { Fill: { } fill } => [fill],
                Curve { Fill: { } fill } => [fill],
                _ => Enumerable.Empty<Fill>(),
            }
        );
}
