using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>How grave a finding is, as it is marked.</summary>
public enum Grade
{
    /// <summary>Must be changed before anything is built.</summary>
    Stop,

    /// <summary>Should be mended.</summary>
    Mend,

    /// <summary>Good to know.</summary>
    Note,
}

/// <summary>Small marks: holes, centres, breaks, tick boxes, findings.</summary>
public static class Mark
{
    /// <summary>A hole with its centre lines.</summary>
    /// <param name="centre">Centre.</param>
    /// <param name="diameter">[mm] Diameter on paper, above 0.</param>
    /// <param name="pen">Pen of the edge; <see cref="Pen.Built"/> unless told.</param>
    public static Group Hole(Point centre, double diameter, Pen? pen = null) =>
        new([new Circle(centre, diameter / 2, pen ?? Pen.Built), Centre(centre, (diameter / 2) + 2)])
        {
            Class = "hole",
        };

    /// <summary>Crossed centre lines.</summary>
    /// <param name="centre">Where they cross.</param>
    /// <param name="reach">[mm] Length of each arm.</param>
    public static Group Centre(Point centre, double reach)
    {
        // A dash-dot pattern cannot be told on a short line.
        var pen = reach > 8 ? Pen.Centre : Pen.Explain;
        return new([
            new Line(centre.Move(-reach, 0), centre.Move(reach, 0), pen),
            new Line(centre.Move(0, -reach), centre.Move(0, reach), pen),
        ]);
    }

    /// <summary>A break line: straight with zig-zags, where the thing goes on but the drawing does not.</summary>
    /// <param name="from">Start.</param>
    /// <param name="to">End.</param>
    public static Element Break(Point from, Point to)
    {
        var way = to - from;
        var direction = double.RadiansToDegrees(Math.Atan2(way.Y, way.X));
        var middle = way.Length / 2;
        var zig = Math.Min(2.5, middle / 2);
        Point[] along =
        [
            new(0, 0),
            new(middle - zig, 0),
            new(middle - (zig / 2), -zig),
            new(middle + (zig / 2), zig),
            new(middle + zig, 0),
            new(way.Length, 0),
        ];
        return new Polyline([.. along.Select(p => from + p.Turn(direction))], Pen.Explain);
    }

    /// <summary>A cutting line with arrows that show which way one looks, and its letter at both ends.</summary>
    /// <param name="from">Start.</param>
    /// <param name="to">End.</param>
    /// <param name="letter">Its letter, such as "A".</param>
    public static Group Section(Point from, Point to, string letter)
    {
        var way = to - from;
        var direction = double.RadiansToDegrees(Math.Atan2(way.Y, way.X));
        var bold = TextStyle.Note.Bold.Middle;
        var elements = new List<Element> { new Line(from, to, Pen.Centre) };
        foreach (var (end, inwards) in new[] { (from, 1), (to, -1) })
        {
            // One looks to the left of the way from start to end.
            var foot = end + new Point(0, -6).Turn(direction);
            elements.Add(new Line(end, end + new Point(inwards * 5, 0).Turn(direction), Pen.Built));
            elements.Add(new Line(end, foot, Pen.Explain));
            elements.Add(Arrow.Head(foot, direction - 90));
            var beside = end + new Point(-inwards * 3, -3).Turn(direction);
            elements.Add(new Text(letter, beside.Move(0, bold.CapHeight / 2), bold));
        }

        return new(elements) { Class = "section", Title = Words.Of("sheet.mark.section", letter) };
    }

    /// <summary>The number of a part in a circle, with a line to the part.</summary>
    /// <param name="part">A place on the part.</param>
    /// <param name="centre">Middle of the circle.</param>
    /// <param name="number">Number in the list of parts; up to three figures.</param>
    public static Group Part(Point part, Point centre, string number)
    {
        const double radius = 3.2;
        var way = part - centre;
        var elements = new List<Element>();
        if (way.Length > radius)
        {
            elements.Add(new Line(centre + (way * (radius / way.Length)), part, Pen.Explain));
            elements.Add(Arrow.Dot(part));
        }

        elements.Add(new Circle(centre, radius, Pen.Thin, Fill.Paper));
        elements.Add(new Text(number, centre.Move(0, 1.05), TextStyle.Note.Middle));
        return new(elements) { Class = "part-number", Title = Words.Of("sheet.mark.part", number) };
    }

    /// <summary>The name of a view, underlined, with its scale where it differs from the sheet's.</summary>
    /// <param name="middle">Middle of the baseline.</param>
    /// <param name="name">Such as "Section A-A".</param>
    /// <param name="scale">Its scale; null where the title block says it.</param>
    public static Group Caption(Point middle, string name, Scale? scale = null)
    {
        var text = scale is null ? name : $"{name}, {scale.Words}";
        var style = TextStyle.Body.Bold.Middle;
        var half = (TextMeasure.Width(text, style) / 2) + 1;
        return new([
            new Text(text, middle, style),
            new Line(middle.Move(-half, 1.4), middle.Move(half, 1.4), Pen.Thin),
        ]);
    }

    /// <summary>A box for a pencil.</summary>
    /// <param name="topLeft">Its corner.</param>
    /// <param name="size">[mm] Edge; 4 mm is easy to tick.</param>
    public static Element TickBox(Point topLeft, double size = 4) =>
        new Rectangle(new(topLeft.X, topLeft.Y, size, size), Pen.Thin);

    /// <summary>
    /// The mark of a finding: stop is a filled square on its corner, mend an open triangle, note an open circle; each
    /// with its number. Six mm high.
    /// </summary>
    /// <param name="centre">Its middle.</param>
    /// <param name="grade">How grave.</param>
    /// <param name="number">Number in the list of findings, or "".</param>
    public static Group Finding(Point centre, Grade grade, string number)
    {
        var text = TextStyle.Small.Bold.Middle;
        Element shape = grade switch
        {
            Grade.Stop => Polyline.Polygon(
                [centre.Move(0, -3.6), centre.Move(3.6, 0), centre.Move(0, 3.6), centre.Move(-3.6, 0)],
                Pen.Stop,
                new(DrawnRole.Stop)
            ),
            Grade.Mend => Polyline.Polygon(
                [centre.Move(0, -3.8), centre.Move(3.8, 2.6), centre.Move(-3.8, 2.6)],
                Pen.Care,
                Fill.Paper
            ),
            _ => new Circle(centre, 2.8, Pen.Thin, Fill.Paper),
        };
        var role = grade switch
        {
            Grade.Stop => DrawnRole.Paper,
            Grade.Mend => DrawnRole.Care,
            _ => DrawnRole.Ink,
        };
        var down = grade == Grade.Mend ? 1.8 : 0.85;
        return new([shape, new Text(number, centre.Move(0, down), text with { Role = role })])
        {
            Class = $"finding {grade.ToString().ToLowerInvariant()}",
            Title = $"{Word(grade)} {number}".TrimEnd(),
        };
    }

    /// <summary>The word that stands beside the mark.</summary>
    public static string Word(Grade grade) =>
        grade switch
        {
            Grade.Stop => Words.Of("sheet.grade.stop"),
            Grade.Mend => Words.Of("sheet.grade.mend"),
            _ => Words.Of("sheet.grade.note"),
        };
}
