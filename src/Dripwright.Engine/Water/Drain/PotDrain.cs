using Dripwright.Engine.Physics;
using MathNet.Numerics.Integration;

namespace Dripwright.Engine.Water;

/// <summary>A pot as its drain sees it. Heights are over the pot's inside floor.</summary>
public sealed record DrainedPot
{
    /// <summary>Inside shape; its height is the rim, or the lowest opening it would spill from.</summary>
    public required VesselShape Shape { get; init; }

    /// <summary>[m] Height of the outlet's lowest inside point: what stands under it is the sump. 0 to the rim.</summary>
    public required double SillHeight { get; init; }

    /// <summary>[m] Inside diameter of the drain elbow, over 0.</summary>
    public required double Bore { get; init; }

    /// <summary>[-] Part of the volume that water can fill and leave freely: 1 for an empty pot, less among grains.</summary>
    public double FreeFraction { get; init; } = 1;

    /// <summary>[-] Discharge coefficient of the outlet, over 0, at most 1.</summary>
    public double DischargeCoefficient { get; init; } = PotOutlet.SharpEdged;

    internal void Check()
    {
        Guard.Between(SillHeight, 0, Shape.Height);
        Guard.Positive(Bore);
        Guard.Between(FreeFraction, double.Epsilon, 1);
        Guard.Between(DischargeCoefficient, double.Epsilon, 1);
    }
}

/// <summary>Water in one pot while it is fed and drains.</summary>
/// <param name="Level">[m] Water level over the floor.</param>
/// <param name="HeadOverSill">[m] Level over the sill.</param>
/// <param name="VolumeOverSill">[m³] Free water over the sill, which comes down when the feed stops.</param>
/// <param name="StandingVolume">[m³] Free water under the sill, which stays.</param>
/// <param name="PondsBack">True when the drain's own water stands over the sill and so in the pot.</param>
/// <param name="Floods">True when the level would be over the rim; level and volume are then those of the brimful pot.</param>
public sealed record PotWater(
    double Level,
    double HeadOverSill,
    double VolumeOverSill,
    double StandingVolume,
    bool PondsBack,
    bool Floods
);

/// <summary>What a pot's drain elbow does: standing sump, running level, time to empty, time to spill.</summary>
/// <remarks>Method page: docs/methods/pot-drain.md</remarks>
public static class PotDrain
{
    /// <summary>[m] Head at which a pot counts as empty down to its sill: the last film creeps out ever more slowly.</summary>
    public const double RestHead = 0.001;

    private const int Panels = 8;
    private const int Points = 20;

    /// <summary>Water in the pot at a steady inflow.</summary>
    /// <param name="pot">The pot.</param>
    /// <param name="inflow">[m³/s] Inflow, 0 or more.</param>
    /// <param name="drainSurface">[m] Height of the drain's water surface over the pot's floor; under the sill (or negative) when it does not reach the elbow.</param>
    /// <returns>The water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static PotWater Running(DrainedPot pot, double inflow, double drainSurface = double.NegativeInfinity)
    {
        ArgumentNullException.ThrowIfNull(pot);
        pot.Check();
        if (double.IsNaN(drainSurface) || double.IsPositiveInfinity(drainSurface))
        {
            throw new ArgumentOutOfRangeException(nameof(drainSurface), drainSurface, "A height is needed.");
        }

        var behind = Math.Max(drainSurface - pot.SillHeight, 0);
        var head = PotOutlet.HeadFor(inflow, pot.Bore, behind, pot.DischargeCoefficient);
        var level = pot.SillHeight + head;
        var floods = level > pot.Shape.Height;
        level = floods ? pot.Shape.Height : level;
        var standing = Free(pot, pot.SillHeight);
        return new PotWater(level, level - pot.SillHeight, Free(pot, level) - standing, standing, behind > 0, floods);
    }

    /// <summary>Time for a flooded pot to fall from one level to another through its outlet.</summary>
    /// <remarks>
    /// t = ∫ φ A(h) dh / (Q(h) - q), by Gauss-Legendre in the logarithm of the head. To fall to the sill itself takes
    /// for ever; <see cref="RestHead"/> over it is a practical end.
    /// </remarks>
    /// <param name="pot">The pot.</param>
    /// <param name="fromLevel">[m] Level at the start over the floor, over the sill, to the rim.</param>
    /// <param name="toHead">[m] Head over the sill at the end, over 0.</param>
    /// <param name="inflow">[m³/s] Inflow that goes on meanwhile, 0 or more.</param>
    /// <returns>[s] Time; 0 when the start is not over the end; null when the inflow keeps the level over the end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double? TimeToDrain(DrainedPot pot, double fromLevel, double toHead = RestHead, double inflow = 0)
    {
        ArgumentNullException.ThrowIfNull(pot);
        pot.Check();
        Guard.Between(fromLevel, 0, pot.Shape.Height);
        Guard.Positive(toHead);
        Guard.NotNegative(inflow);
        var fromHead = fromLevel - pot.SillHeight;
        if (fromHead <= toHead)
        {
            return 0;
        }

        if (PotOutlet.FlowUnchecked(toHead, pot.Bore, 0, pot.DischargeCoefficient) <= inflow)
        {
            return null;
        }

        double Slowness(double logHead)
        {
            var head = Math.Exp(logHead);
            var outflow = PotOutlet.FlowUnchecked(head, pot.Bore, 0, pot.DischargeCoefficient);
            var area = pot.FreeFraction * pot.Shape.SurfaceAt(Math.Min(pot.SillHeight + head, pot.Shape.Height));
            return area * head / (outflow - inflow);
        }

        var start = Math.Log(toHead);
        var width = (Math.Log(fromHead) - start) / Panels;
        var time = 0.0;
        for (var panel = 0; panel < Panels; panel++)
        {
            time += GaussLegendreRule.Integrate(Slowness, start + panel * width, start + (panel + 1) * width, Points);
        }

        return time;
    }

    /// <summary>Time until a pot with a stuck drain runs over its rim.</summary>
    /// <param name="pot">The pot.</param>
    /// <param name="fromLevel">[m] Level when the drain sticks, 0 to the rim.</param>
    /// <param name="inflow">[m³/s] Inflow, 0 or more.</param>
    /// <returns>[s] Time; null without inflow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double? TimeToSpill(DrainedPot pot, double fromLevel, double inflow)
    {
        ArgumentNullException.ThrowIfNull(pot);
        pot.Check();
        Guard.NotNegative(inflow);
        var room = Free(pot, pot.Shape.Height) - Free(pot, Guard.Between(fromLevel, 0, pot.Shape.Height));
        return inflow > 0 ? room / inflow : null;
    }

    private static double Free(DrainedPot pot, double level) => pot.FreeFraction * pot.Shape.VolumeAt(level);
}
