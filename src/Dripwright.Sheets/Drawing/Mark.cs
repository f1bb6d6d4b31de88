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
                new(Role.Stop)
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
            Grade.Stop => Role.Paper,
            Grade.Mend => Role.Care,
            _ => Role.Ink,
        };
        var down = grade == Grade.Mend ? 1.8 : 0.85;
        return new([shape, new Text(number, centre.Move(0, down), text with { Role = role })])
        {
            Class = $"finding {Word(grade).ToLowerInvariant()}",
            Title = $"{Word(grade)} {number}".TrimEnd(),
        };
    }

    /// <summary>The word that stands beside the mark.</summary>
    public static string Word(Grade grade) =>
        grade switch
        {
            Grade.Stop => "Stop",
            Grade.Mend => "Mend",
            _ => "Note",
        };
}
