namespace Dripwright.Sheets.Model;

/// <summary>Anything drawn on a sheet.</summary>
public abstract record Element;

/// <summary>A straight line.</summary>
/// <param name="From">Start.</param>
/// <param name="To">End.</param>
/// <param name="Pen">Pen.</param>
public sealed record Line(Point From, Point To, Pen Pen) : Element;

/// <summary>Straight lines joined end to end.</summary>
/// <param name="Points">At least two points.</param>
/// <param name="Pen">Pen of the line; null for none.</param>
/// <param name="Fill">Fill; null for none.</param>
/// <param name="Closed">Whether the last point joins the first.</param>
public sealed record Polyline(IReadOnlyList<Point> Points, Pen? Pen, Fill? Fill = null, bool Closed = false) : Element
{
    /// <summary>A closed polygon.</summary>
    public static Polyline Polygon(IReadOnlyList<Point> points, Pen? pen, Fill? fill = null) =>
        new(points, pen, fill, Closed: true);
}

/// <summary>An upright rectangle.</summary>
/// <param name="Area">Where.</param>
/// <param name="Pen">Pen of the outline; null for none.</param>
/// <param name="Fill">Fill; null for none.</param>
public sealed record Rectangle(Box Area, Pen? Pen, Fill? Fill = null) : Element;

/// <summary>A circle.</summary>
/// <param name="Centre">Centre.</param>
/// <param name="Radius">[mm] Radius, above 0.</param>
/// <param name="Pen">Pen of the outline; null for none.</param>
/// <param name="Fill">Fill; null for none.</param>
public sealed record Circle(Point Centre, double Radius, Pen? Pen, Fill? Fill = null) : Element;

/// <summary>Part of a circle's outline.</summary>
/// <param name="Centre">Centre.</param>
/// <param name="Radius">[mm] Radius, above 0.</param>
/// <param name="Start">[°] Where it starts: 0 is to the right, 90 is down.</param>
/// <param name="Sweep">[°] How far it goes, clockwise as seen on paper when positive; below a full turn.</param>
/// <param name="Pen">Pen.</param>
public sealed record Arc(Point Centre, double Radius, double Start, double Sweep, Pen Pen) : Element
{
    /// <summary>The point of the circle at an angle.</summary>
    /// <param name="degrees">[°] 0 is to the right, 90 is down.</param>
    public Point At(double degrees) => Centre + new Point(Radius, 0).Turn(degrees);
}

/// <summary>A line of straight and curved pieces.</summary>
/// <param name="Steps">The pieces; the first is a move.</param>
/// <param name="Pen">Pen of the line; null for none.</param>
/// <param name="Fill">Fill; null for none.</param>
public sealed record Curve(IReadOnlyList<CurveStep> Steps, Pen? Pen, Fill? Fill = null) : Element;

/// <summary>A single line of text.</summary>
/// <param name="Content">What it says.</param>
/// <param name="At">The anchor, on the baseline.</param>
/// <param name="Style">How it is set.</param>
public sealed record Text(string Content, Point At, TextStyle Style) : Element;

/// <summary>
/// Elements that belong together, such as one pot. <see cref="Id"/>, <see cref="Class"/>, <see cref="Title"/> and
/// <see cref="Description"/> reach the web page, where the group can be named, found and tapped.
/// </summary>
/// <param name="Children">What it is made of.</param>
public sealed record Group(IReadOnlyList<Element> Children) : Element
{
    /// <summary>Name that is unique on the sheet; null for none.</summary>
    public string? Id { get; init; }

    /// <summary>Kind of thing, such as "pot"; null for none.</summary>
    public string? Class { get; init; }

    /// <summary>What it is, in words a reader hears.</summary>
    public string? Title { get; init; }

    /// <summary>More about it.</summary>
    public string? Description { get; init; }

    /// <summary>Where the origin of the children lies.</summary>
    public Point Offset { get; init; }

    /// <summary>[°] Turn about that origin, clockwise. There is no scaling: pens and letters keep their size.</summary>
    public double Rotation { get; init; }

    /// <summary>Outline, in the children's coordinates, outside which nothing shows; null for none.</summary>
    public IReadOnlyList<Point>? Clip { get; init; }

    /// <summary>More attributes for a web page, in this order; they stand in for the group's own role and label.</summary>
    public IReadOnlyList<(string Name, string Value)> Attributes { get; init; } = [];
}
