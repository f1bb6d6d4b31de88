using System.Runtime.InteropServices;
using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>Steady flow in a round pipe that runs partly full, by Manning's equation with one n for all depths.</summary>
/// <remarks>
/// Q = A R^(2/3) √S / n. For smooth plastic n is 0.009 to 0.011. Uniform flow only: a drain with inflow along it, a level
/// one or one near its end needs <see cref="DrainProfile"/>. Method page: docs/methods/partly-full-pipe.md
/// </remarks>
public static class PartlyFullPipe
{
    // Wetted angle of greatest flow: A^(5/3) P^(-2/3) has its maximum where 3θ - 5θ cos θ + 2 sin θ = 0.
    private const double AngleOfMostFlow = 5.278107137933795;

    /// <summary>Flow at a depth that stays the same along the pipe.</summary>
    /// <param name="depth">[m] Depth, 0 to the diameter.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <param name="slope">[-] Drop per length, 0 or more.</param>
    /// <param name="roughness">[s/m^(1/3)] Manning's n, over 0.</param>
    /// <returns>[m³/s] Flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double FlowAtDepth(double depth, double diameter, double slope, double roughness)
    {
        Guard.NotNegative(slope);
        Guard.Positive(roughness);
        var radius = CircularSection.HydraulicRadius(depth, diameter);
        return CircularSection.Area(depth, diameter) * Math.Cbrt(radius * radius) * Math.Sqrt(slope) / roughness;
    }

    /// <summary>Mean velocity at a depth that stays the same along the pipe.</summary>
    /// <param name="hydraulicRadius">[m] Area over wetted perimeter, 0 or more.</param>
    /// <param name="slope">[-] Drop per length, 0 or more.</param>
    /// <param name="roughness">[s/m^(1/3)] Manning's n, over 0.</param>
    /// <returns>[m/s] R^(2/3) √S / n.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double Velocity(double hydraulicRadius, double slope, double roughness)
    {
        Guard.NotNegative(hydraulicRadius);
        Guard.NotNegative(slope);
        Guard.Positive(roughness);
        return Math.Cbrt(hydraulicRadius * hydraulicRadius) * Math.Sqrt(slope) / roughness;
    }

    /// <summary>Flow of the pipe just full, not under pressure.</summary>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <param name="slope">[-] Drop per length, 0 or more.</param>
    /// <param name="roughness">[s/m^(1/3)] Manning's n, over 0.</param>
    /// <returns>[m³/s] Flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double FullFlow(double diameter, double slope, double roughness) =>
        FlowAtDepth(diameter, diameter, slope, roughness);

    /// <summary>Greatest flow by Manning's equation, at 0.938 of the diameter; 1.076 times the full flow.</summary>
    /// <remarks>A limit on paper: a pipe this full slams shut at the least wave. Plan for half full.</remarks>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <param name="slope">[-] Drop per length, 0 or more.</param>
    /// <param name="roughness">[s/m^(1/3)] Manning's n, over 0.</param>
    /// <returns>[m³/s] Flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double GreatestFlow(double diameter, double slope, double roughness) =>
        FlowAtDepth(DepthOfGreatestFlow(diameter), diameter, slope, roughness);

    /// <summary>Depth of the greatest flow.</summary>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <returns>[m] 0.938 of the diameter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not over 0.</exception>
    public static double DepthOfGreatestFlow(double diameter) =>
        Guard.Positive(diameter) * (1 - Math.Cos(AngleOfMostFlow / 2)) / 2;

    /// <summary>Depth at which a flow runs uniformly; the lower one where there are two.</summary>
    /// <param name="flow">[m³/s] Flow, 0 or more.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <param name="slope">[-] Drop per length, 0 or more.</param>
    /// <param name="roughness">[s/m^(1/3)] Manning's n, over 0.</param>
    /// <returns>[m] Depth, or null when the pipe cannot carry the flow without pressure (always so when level).</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double? NormalDepth(double flow, double diameter, double slope, double roughness)
    {
        Guard.NotNegative(flow);
        var greatest = GreatestFlow(diameter, slope, roughness);
        if (flow == 0 || flow > greatest)
        {
            return flow == 0 ? 0 : null;
        }

        var search = new FlowAtAngle(flow / (Math.Sqrt(slope) / roughness), diameter);
        return flow == greatest
            ? DepthOfGreatestFlow(diameter)
            : DepthOfAngle(Bracket.Root(search, 1e-9, AngleOfMostFlow), diameter);
    }

    /// <summary>Depth of least energy at a flow: where water goes from slow to fast, as at a free fall.</summary>
    /// <remarks>Q²/g = A³/T. Always under the diameter, since T goes to 0 there.</remarks>
    /// <param name="flow">[m³/s] Flow, 0 or more.</param>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <returns>[m] Depth.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double CriticalDepth(double flow, double diameter)
    {
        Guard.NotNegative(flow);
        Guard.Positive(diameter);
        if (flow == 0)
        {
            return 0;
        }

        // At small depth A³/T tends to 32/27 D y⁴, and is less than that at any depth: the estimate is a lower end.
        var low = Math.Min(
            0.9 * Math.Pow(27 * flow * flow / (32 * StandardGravity.Value * diameter), 0.25),
            0.5 * diameter
        );
        return Bracket.Root(new CriticalBalance(flow, diameter), low, diameter);
    }

    private static double DepthOfAngle(double angle, double diameter)
    {
        var sine = Math.Sin(angle / 4);
        return diameter * sine * sine;
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly struct FlowAtAngle(double section, double diameter) : IOneNumber
    {
        public double At(double x)
        {
            var area = CircularSection.Segment(x) * diameter * diameter / 8;
            var radius = area / (x * diameter / 2);
            return area * Math.Cbrt(radius * radius) - section;
        }
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly struct CriticalBalance(double flow, double diameter) : IOneNumber
    {
        public double At(double x)
        {
            var water = CircularSection.At(x, diameter);
            return flow * Math.Sqrt(water.TopWidth / StandardGravity.Value) - water.Area * Math.Sqrt(water.Area);
        }
    }
}
