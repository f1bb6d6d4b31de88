namespace Dripwright.Engine.Printed.Shapes;

/// <summary>A corner of a flat outline.</summary>
/// <param name="X">[m] To the right.</param>
/// <param name="Y">[m] Up the page.</param>
public readonly record struct Corner(double X, double Y);

/// <summary>A closed flat outline without crossings; counter-clockwise is material, clockwise is a hole.</summary>
/// <param name="Corners">Corners in order; the last joins the first.</param>
public sealed record Loop(IReadOnlyList<Corner> Corners)
{
    /// <summary>[m²] Area by the surveyor's formula, A = ½ Σ (xᵢ yᵢ₊₁ - xᵢ₊₁ yᵢ); negative for a clockwise outline.</summary>
    public double Area
    {
        get
        {
            double twice = 0;
            for (var i = 0; i < Corners.Count; i++)
            {
                var a = Corners[i];
                var b = Corners[(i + 1) % Corners.Count];
                twice += (a.X * b.Y) - (b.X * a.Y);
            }

            return twice / 2;
        }
    }

    /// <summary>A rectangle.</summary>
    /// <param name="left">[m] Least x.</param>
    /// <param name="low">[m] Least y.</param>
    /// <param name="right">[m] Greatest x.</param>
    /// <param name="high">[m] Greatest y.</param>
    public static Loop Rectangle(double left, double low, double right, double high) =>
        new([new(left, low), new(right, low), new(right, high), new(left, high)]);

    /// <summary>An even polygon whose sides touch a circle from outside, first side square to x.</summary>
    /// <remarks>Touching from outside, it never makes a bore tighter than the circle.</remarks>
    /// <param name="sides">Number of sides, 3 or more.</param>
    /// <param name="inside">[m] Radius of the circle.</param>
    public static Loop Around(int sides, double inside) => Arc(inside / Math.Cos(Math.PI / sides), sides);

    /// <summary>The same outline shifted.</summary>
    /// <param name="x">[m] To the right.</param>
    /// <param name="y">[m] Up the page.</param>
    public Loop Shifted(double x, double y) => new([.. Corners.Select(c => new Corner(c.X + x, c.Y + y))]);

    /// <summary>The same outline as a hole.</summary>
    public Loop Hole() => new([.. Corners.Reverse()]);

    private static Loop Arc(double radius, int sides) =>
        new([
            .. Enumerable
                .Range(0, sides)
                .Select(i => (i + 0.5) * 2 * Math.PI / sides)
                .Select(a => new Corner(radius * Math.Cos(a), radius * Math.Sin(a))),
        ]);
}
