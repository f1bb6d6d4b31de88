using System.Runtime.InteropServices;

namespace Dripwright.Sheets.Model;

/// <summary>An upright rectangle on paper.</summary>
/// <param name="X">[mm] Left edge.</param>
/// <param name="Y">[mm] Top edge.</param>
/// <param name="Width">[mm] Width, not negative.</param>
/// <param name="Height">[mm] Height, not negative.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Box(double X, double Y, double Width, double Height)
{
    /// <summary>[mm] Right edge.</summary>
    public double Right => X + Width;

    /// <summary>[mm] Lower edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>The middle.</summary>
    public Point Centre => new(X + (Width / 2), Y + (Height / 2));

    /// <summary>The top left corner.</summary>
    public Point TopLeft => new(X, Y);

    /// <summary>The corners, clockwise from top left.</summary>
    public IReadOnlyList<Point> Corners => [new(X, Y), new(Right, Y), new(Right, Bottom), new(X, Bottom)];

    /// <summary>The smallest box that holds all <paramref name="points"/>.</summary>
    /// <exception cref="ArgumentException">There is no point.</exception>
    public static Box Around(IEnumerable<Point> points)
    {
        var list = points.ToList();
        if (list.Count == 0)
        {
            throw new ArgumentException("A box needs at least one point.", nameof(points));
        }

        var (left, top) = (list.Min(p => p.X), list.Min(p => p.Y));
        return new(left, top, list.Max(p => p.X) - left, list.Max(p => p.Y) - top);
    }

    /// <summary>The smallest box that holds both.</summary>
    public Box With(Box other) => Around([.. Corners, .. other.Corners]);

    /// <summary>The box made smaller on each side (larger when negative).</summary>
    /// <param name="margin">[mm] On each side.</param>
    public Box Inset(double margin) => Inset(margin, margin, margin, margin);

    /// <summary>The box made smaller by a margin of its own on each side.</summary>
    /// <param name="left">[mm] Left margin.</param>
    /// <param name="top">[mm] Top margin.</param>
    /// <param name="right">[mm] Right margin.</param>
    /// <param name="bottom">[mm] Lower margin.</param>
    public Box Inset(double left, double top, double right, double bottom) =>
        new(X + left, Y + top, Math.Max(0, Width - left - right), Math.Max(0, Height - top - bottom));

    /// <summary>Cuts off a strip at the top and returns it with what remains.</summary>
    /// <param name="height">[mm] Height of the strip.</param>
    public (Box Strip, Box Remainder) CutTop(double height) => (this with { Height = height }, Inset(0, height, 0, 0));

    /// <summary>Cuts off a strip at the lower edge and returns it with what remains.</summary>
    /// <param name="height">[mm] Height of the strip.</param>
    public (Box Strip, Box Remainder) CutBottom(double height) =>
        (new(X, Bottom - height, Width, height), Inset(0, 0, 0, height));

    /// <summary>Cuts off a strip at the left and returns it with what remains.</summary>
    /// <param name="width">[mm] Width of the strip.</param>
    public (Box Strip, Box Remainder) CutLeft(double width) => (this with { Width = width }, Inset(width, 0, 0, 0));

    /// <summary>Cuts off a strip at the right and returns it with what remains.</summary>
    /// <param name="width">[mm] Width of the strip.</param>
    public (Box Strip, Box Remainder) CutRight(double width) =>
        (new(Right - width, Y, width, Height), Inset(0, 0, width, 0));

    /// <summary>Whether the two share more than an edge.</summary>
    /// <param name="other">The other box.</param>
    /// <param name="slack">[mm] Overlap that is forgiven.</param>
    public bool Overlaps(Box other, double slack = 1e-6) =>
        X + slack < other.Right && other.X + slack < Right && Y + slack < other.Bottom && other.Y + slack < Bottom;

    /// <summary>Whether the other lies inside this one.</summary>
    /// <param name="other">The other box.</param>
    /// <param name="slack">[mm] Overhang that is forgiven.</param>
    public bool Holds(Box other, double slack = 1e-6) =>
        other.X >= X - slack && other.Y >= Y - slack && other.Right <= Right + slack && other.Bottom <= Bottom + slack;

    /// <summary>Whether a straight line from one point to another runs through the box.</summary>
    /// <param name="from">One end.</param>
    /// <param name="to">The other end.</param>
    /// <remarks>Cuts the line off at each edge in turn: Liang and Barsky (1984), from memory.</remarks>
    public bool Crosses(Point from, Point to)
    {
        var way = to - from;
        var (start, end) = (0.0, 1.0);
        foreach (
            var (along, room) in new[]
            {
                (-way.X, from.X - X),
                (way.X, Right - from.X),
                (-way.Y, from.Y - Y),
                (way.Y, Bottom - from.Y),
            }
        )
        {
            if (along == 0)
            {
                if (room < 0)
                {
                    return false;
                }

                continue;
            }

            var at = room / along;
            (start, end) = along < 0 ? (Math.Max(start, at), end) : (start, Math.Min(end, at));
        }

        return start <= end;
    }
}
