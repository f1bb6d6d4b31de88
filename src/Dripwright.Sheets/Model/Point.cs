using System.Runtime.InteropServices;

namespace Dripwright.Sheets.Model;

/// <summary>A place on paper: mm to the right of and below the top left corner.</summary>
/// <param name="X">[mm] To the right.</param>
/// <param name="Y">[mm] Downwards.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Point(double X, double Y)
{
    /// <summary>The sum of two places, as vectors.</summary>
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>The way from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>A vector made longer or shorter.</summary>
    public static Point operator *(Point a, double factor) => new(a.X * factor, a.Y * factor);

    /// <summary>The sum of two places, as vectors.</summary>
    public static Point Add(Point left, Point right) => left + right;

    /// <summary>The way from <paramref name="right"/> to <paramref name="left"/>.</summary>
    public static Point Subtract(Point left, Point right) => left - right;

    /// <summary>A vector made longer or shorter.</summary>
    public static Point Multiply(Point left, double right) => left * right;

    /// <summary>[mm] Distance from the origin.</summary>
    public double Length => double.Hypot(X, Y);

    /// <summary>The place moved along and across.</summary>
    /// <param name="dx">[mm] To the right.</param>
    /// <param name="dy">[mm] Downwards.</param>
    public Point Move(double dx, double dy) => new(X + dx, Y + dy);

    /// <summary>The place turned about the origin, clockwise as seen on paper.</summary>
    /// <param name="degrees">[°] Angle; any finite value.</param>
    public Point Turn(double degrees)
    {
        // Quarter turns are exact, so that upright drawings keep whole numbers.
        var (sin, cos) = Quarter(degrees) ?? double.SinCos(double.DegreesToRadians(degrees));
        return new((X * cos) - (Y * sin), (X * sin) + (Y * cos));
    }

    private static (double Sin, double Cos)? Quarter(double degrees) =>
        (degrees % 360) switch
        {
            0 => (0, 1),
            90 or -270 => (1, 0),
            180 or -180 => (0, -1),
            270 or -90 => (-1, 0),
            _ => null,
        };
}
