using System.Runtime.InteropServices;

namespace Dripwright.Engine.Physics;

/// <summary>Geometry of the water in a round pipe that runs partly full.</summary>
/// <remarks>
/// With the wetted angle θ = 2 acos(1 - 2y/D): A = D²(θ - sin θ)/8, P = Dθ/2, T = D sin(θ/2).
/// θ is taken as 4 asin √(y/D), the same thing without loss of digits at small depth.
/// Depths run from 0 to D. Method page: docs/methods/partly-full-pipe.md
/// </remarks>
public static class CircularSection
{
    // [rad] Under this a series gives θ - sin θ.
    private const double SmallAngle = 0.05;

    /// <summary>Area of the water.</summary>
    /// <param name="depth">[m] Depth over the pipe's lowest inside point, 0 to the diameter.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <returns>[m²] Area, D²(θ - sin θ)/8.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double Area(double depth, double diameter) =>
        Segment(Angle(depth, diameter)) * diameter * diameter / 8;

    /// <summary>Wetted perimeter.</summary>
    /// <param name="depth">[m] Depth, 0 to the diameter.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <returns>[m] Length of wall under water, Dθ/2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double WettedPerimeter(double depth, double diameter) => Angle(depth, diameter) * diameter / 2;

    /// <summary>Hydraulic radius, area over wetted perimeter.</summary>
    /// <param name="depth">[m] Depth, 0 to the diameter.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <returns>[m] A/P; 0 when dry.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double HydraulicRadius(double depth, double diameter) =>
        depth == 0 ? 0 * Angle(depth, diameter) : Area(depth, diameter) / WettedPerimeter(depth, diameter);

    /// <summary>Width of the water surface.</summary>
    /// <param name="depth">[m] Depth, 0 to the diameter.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <returns>[m] Width, 2 √(y (D - y)).</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double TopWidth(double depth, double diameter)
    {
        Check(depth, diameter);
        return 2 * Math.Sqrt(depth * (diameter - depth));
    }

    /// <summary>First moment of the water's area about its surface: area times depth of its centroid.</summary>
    /// <remarks>With φ = θ/2 and r = D/2: r³ [2/3 sin³φ - cos φ (φ - sin φ cos φ)].</remarks>
    /// <param name="depth">[m] Depth, 0 to the diameter.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <returns>[m³] Moment; times weight per volume it is the water's thrust.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double SurfaceMoment(double depth, double diameter)
    {
        var half = Angle(depth, diameter) / 2;
        return MomentOfHalfAngle(half) * Math.Pow(diameter / 2, 3);
    }

    /// <summary>Depth at which the water has the given area.</summary>
    /// <param name="area">[m²] Area, 0 to that of the full pipe.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <returns>[m] Depth.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double DepthOfArea(double area, double diameter)
    {
        Guard.Positive(diameter);
        var full = Math.PI * diameter * diameter / 4;
        Guard.Between(area, 0, full * (1 + 1e-12));
        if (area == 0 || area >= full)
        {
            return area == 0 ? 0 : diameter;
        }

        var angle = Bracket.Root(new AngleOfSegment(8 * area / (diameter * diameter)), 1e-8, 2 * Math.PI);
        var quarterSine = Math.Sin(angle / 4);
        return diameter * quarterSine * quarterSine;
    }

    /// <summary>All of it at once, for one arc sine; unchecked.</summary>
    internal static SectionGeometry At(double depth, double diameter)
    {
        var ratio = depth / diameter;
        var angle = 4 * Math.Asin(Math.Sqrt(ratio));
        var width = 2 * Math.Sqrt(depth * (diameter - depth));
        // sin θ = 2 sin(θ/2) cos(θ/2), which width and ratio give; near 0 the difference would lose its digits.
        var segment = angle > SmallAngle ? angle - 2 * (width / diameter) * (1 - 2 * ratio) : Segment(angle);
        return new SectionGeometry(segment * diameter * diameter / 8, angle * diameter / 2, width);
    }

    /// <summary>θ - sin θ without loss of digits near 0.</summary>
    internal static double Segment(double angle)
    {
        if (angle > SmallAngle)
        {
            return angle - Math.Sin(angle);
        }

        var square = angle * angle;
        return angle * square / 6 * (1 - square / 20 * (1 - square / 42));
    }

    private static double MomentOfHalfAngle(double half)
    {
        if (half < 0.02)
        {
            return 2.0 / 15 * Math.Pow(half, 5) * (1 - 11.0 / 42 * half * half);
        }

        var (sin, cos) = Math.SinCos(half);
        return 2.0 / 3 * sin * sin * sin - cos * Segment(2 * half) / 2;
    }

    private static double Angle(double depth, double diameter)
    {
        Check(depth, diameter);
        return 4 * Math.Asin(Math.Sqrt(depth / diameter));
    }

    private static void Check(double depth, double diameter)
    {
        Guard.Positive(diameter);
        Guard.Between(depth, 0, diameter);
    }

    private readonly struct AngleOfSegment(double segment) : IOneNumber
    {
        public double At(double x) => Segment(x) - segment;
    }
}

/// <summary>Area [m²], wetted perimeter [m] and surface width [m] of the water in a channel.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SectionGeometry(double Area, double Perimeter, double TopWidth);
