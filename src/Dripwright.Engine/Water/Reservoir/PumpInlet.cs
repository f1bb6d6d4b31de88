using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>How deep a pump's inlet must lie, so that no whirl draws air.</summary>
public static class PumpInlet
{
    /// <summary>Least depth of water over an inlet, S = D (1 + 2.3 Fd), Fd = V/√(g D).</summary>
    /// <remarks>
    /// ANSI/HI 9.8 as quoted in an engineering article; made for intake bells with about 1 to 2 m/s. For a pump in a
    /// strainer cage take the diameter of a circle with the cage's open area. A maker's minimum water level governs
    /// where one is given. Method page: docs/methods/reservoir-days.md
    /// </remarks>
    /// <param name="flow">[m³/s] Flow into the inlet, 0 or more.</param>
    /// <param name="diameter">[m] Diameter of the inlet, over 0.</param>
    /// <returns>[m] Depth over the inlet's opening.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    /// <example>1000 US gal/min into 12 in: 25.8 in.</example>
    public static double LeastSubmergence(double flow, double diameter)
    {
        Guard.NotNegative(flow);
        Guard.Positive(diameter);
        var velocity = flow / (Math.PI * diameter * diameter / 4);
        return diameter * (1 + 2.3 * velocity / Math.Sqrt(StandardGravity.Value * diameter));
    }
}
