using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>Ends of dimension and leader lines (ISO 129, from memory): filled arrow of 15°, stroke, dot.</summary>
public static class Arrow
{
    /// <summary>[mm] Length of an arrowhead.</summary>
    public const double Length = 3;

    /// <summary>A filled arrowhead.</summary>
    /// <param name="tip">Its tip.</param>
    /// <param name="direction">[°] Where it points: 0 is to the right, 90 is down.</param>
    /// <param name="role">What it stands for.</param>
    public static Element Head(Point tip, double direction, DrawnRole role = DrawnRole.Explain)
    {
        var half = Length * Math.Tan(double.DegreesToRadians(7.5));
        return Polyline.Polygon(
            [tip, tip + new Point(-Length, -half).Turn(direction), tip + new Point(-Length, half).Turn(direction)],
            null,
            new(role)
        );
    }

    /// <summary>An oblique stroke, where arrows have no room.</summary>
    /// <param name="at">Its middle.</param>
    /// <param name="direction">[°] Direction of the dimension line.</param>
    public static Element Stroke(Point at, double direction)
    {
        var half = new Point(1.2, -1.2).Turn(direction);
        return new Line(at - half, at + half, Pen.Explain);
    }

    /// <summary>A dot, for leaders that end within a surface.</summary>
    /// <param name="at">Its middle.</param>
    public static Element Dot(Point at) => new Circle(at, 0.6, null, new(DrawnRole.Explain));

    /// <summary>A line with an arrowhead at its end: flow, direction.</summary>
    /// <param name="from">Start.</param>
    /// <param name="to">Tip.</param>
    /// <param name="pen">Pen; its role colours the head too.</param>
    public static Element Flow(Point from, Point to, Pen pen)
    {
        ArgumentNullException.ThrowIfNull(pen);
        var way = to - from;
        var direction = double.RadiansToDegrees(Math.Atan2(way.Y, way.X));
        var end = to - (way * (Math.Min(2.5, way.Length) / Math.Max(way.Length, 1e-9)));
        // Broader than the head of a dimension, so that it shows on a wide line.
        Point[] head = [to, to + new Point(-3, -1.1).Turn(direction), to + new Point(-3, 1.1).Turn(direction)];
        return new Group([new Line(from, end, pen), Polyline.Polygon(head, null, new(pen.Role))]);
    }
}
