using System.Text;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Writing;

/// <summary>Writes elements as SVG shapes, one a line, attributes always in the same order.</summary>
internal sealed class SvgShapes(StringBuilder svg, SvgOptions options)
{
    private readonly string _prefix = options.IdPrefix;
    private int _clips;

    public void Paper(Box area) => Shape("rect", Where(area), null, Fill.Paper);

    public void Write(Element element)
    {
        switch (element)
        {
            case Line line:
                Shape(
                    "line",
                    $"x1=\"{N(line.From.X)}\" y1=\"{N(line.From.Y)}\" x2=\"{N(line.To.X)}\" y2=\"{N(line.To.Y)}\"",
                    line.Pen,
                    null
                );
                break;
            case Polyline line:
                Shape(line.Closed ? "polygon" : "polyline", $"points=\"{Points(line.Points)}\"", line.Pen, line.Fill);
                break;
            case Rectangle rectangle:
                Shape("rect", Where(rectangle.Area), rectangle.Pen, rectangle.Fill);
                break;
            case Circle circle:
                var place = $"cx=\"{N(circle.Centre.X)}\" cy=\"{N(circle.Centre.Y)}\" r=\"{N(circle.Radius)}\"";
                Shape("circle", place, circle.Pen, circle.Fill);
                break;
            case Arc arc:
                Shape("path", $"d=\"{Path(arc)}\"", arc.Pen, null);
                break;
            case Curve curve:
                Shape("path", $"d=\"{string.Concat(curve.Steps.Select(Path))}\"", curve.Pen, curve.Fill);
                break;
            case Text text:
                Words(text);
                break;
            case Group group:
                Write(group);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(element), element, "Unknown kind of element.");
        }
    }

    private static string N(double value) => FileNumbers.Millimetres(value);

    private static string Where(Box area) =>
        $"x=\"{N(area.X)}\" y=\"{N(area.Y)}\" width=\"{N(area.Width)}\" height=\"{N(area.Height)}\"";

    private static string Points(IEnumerable<Point> points) =>
        string.Join(' ', points.Select(point => $"{N(point.X)},{N(point.Y)}"));

    private static string Path(Arc arc)
    {
        var (from, to) = (arc.At(arc.Start), arc.At(arc.Start + arc.Sweep));
        var flags = $"{(Math.Abs(arc.Sweep) > 180 ? "1" : "0")} {(arc.Sweep > 0 ? "1" : "0")}";
        return $"M{N(from.X)} {N(from.Y)}A{N(arc.Radius)} {N(arc.Radius)} 0 {flags} {N(to.X)} {N(to.Y)}";
    }

    private static string Path(CurveStep step) =>
        step switch
        {
            CurveStep.Move move => $"M{N(move.To.X)} {N(move.To.Y)}",
            CurveStep.Straight line => $"L{N(line.To.X)} {N(line.To.Y)}",
            CurveStep.Cubic c =>
                $"C{N(c.Control1.X)} {N(c.Control1.Y)} {N(c.Control2.X)} {N(c.Control2.Y)} {N(c.To.X)} {N(c.To.Y)}",
            _ => "Z",
        };

    private void Shape(string kind, string place, Pen? pen, Fill? fill)
    {
        var classes = new List<string>();
        if (pen is not null)
        {
            classes.Add(SvgStyles.Class(pen));
        }

        // A pattern is named at its place, for its id is known only there: in a file by a style attribute, which wins over
        // the class rule "fill: none" in every reader; on a page, whose content policy may let no style attribute through,
        // by a fill attribute, and there the rule spares who has one.
        var pattern = "";
        if (fill is { IsPattern: true })
        {
            var name = $"url(#{_prefix}{SvgPatterns.Id(fill)})";
            pattern = options.EmbedStyles ? $" style=\"fill:{name}\"" : $" fill=\"{name}\"";
        }
        else if (fill is not null)
        {
            classes.Add(SvgStyles.Class(fill));
        }

        var attribute = classes.Count == 0 ? "" : $" class=\"{string.Join(' ', classes)}\"";
        svg.Append('<').Append(kind).Append(attribute).Append(' ').Append(place).Append(pattern).Append("/>\n");
    }

    private void Words(Text text)
    {
        svg.Append("<text class=\"").Append(SvgStyles.Class(text.Style));
        svg.Append("\" x=\"").Append(N(text.At.X)).Append("\" y=\"").Append(N(text.At.Y));
        svg.Append("\" font-size=\"").Append(N(text.Style.Size)).Append('"');
        if (text.Style.Rotation != 0)
        {
            svg.Append(" transform=\"rotate(").Append(N(text.Style.Rotation)).Append(' ');
            svg.Append(N(text.At.X)).Append(' ').Append(N(text.At.Y)).Append(")\"");
        }

        svg.Append('>').Append(Xml.Escape(text.Content)).Append("</text>\n");
    }

    private void Write(Group group)
    {
        string? clip = null;
        if (group.Clip is { } outline)
        {
            clip = $"{_prefix}clip-{N(++_clips)}";
            svg.Append("<clipPath id=\"").Append(clip).Append("\"><polygon points=\"");
            svg.Append(Points(outline)).Append("\"/></clipPath>\n");
        }

        svg.Append("<g");
        Attribute("id", group.Id is null ? null : _prefix + group.Id);
        Attribute("class", group.Class);
        Attribute("transform", Transform(group));
        foreach (var (name, value) in group.Attributes)
        {
            Attribute(name, value);
        }

        if (group.Title is not null && group.Attributes.Count == 0)
        {
            Attribute("role", "group");
            Attribute("aria-label", group.Title);
        }

        svg.Append(">\n");
        SvgWriter.TitleOf(svg, group.Title, group.Description);
        if (clip is not null)
        {
            svg.Append("<g clip-path=\"url(#").Append(clip).Append(")\">\n");
        }

        foreach (var child in group.Children)
        {
            Write(child);
        }

        svg.Append(clip is null ? "</g>\n" : "</g>\n</g>\n");
    }

    private void Attribute(string name, string? value)
    {
        if (value is not null)
        {
            svg.Append(' ').Append(name).Append("=\"").Append(Xml.Escape(value)).Append('"');
        }
    }

    private static string? Transform(Group group)
    {
        var move = group.Offset == default ? "" : $"translate({N(group.Offset.X)} {N(group.Offset.Y)})";
        var turn = group.Rotation == 0 ? "" : $"rotate({N(group.Rotation)})";
        return (move + turn).Length == 0 ? null : move + turn;
    }
}
