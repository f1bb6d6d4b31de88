using System.Runtime.InteropServices;

namespace Dripwright.Engine.Water;

/// <summary>What one pot, or anything else, lets into the drain pipe.</summary>
/// <param name="Distance">[m] Distance from the pipe's high (closed) end, 0 to its length.</param>
/// <param name="Flow">[m³/s] Flow, 0 or more. A sum under 10⁻¹⁵ (a drop a year) counts as none.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct DrainInflow(double Distance, double Flow);

/// <summary>One straight drain pipe, closed (but vented) at its high end, open at its low end.</summary>
/// <remarks>A drain that leaves its row from a tee in the middle is two runs, one from each end to the tee.</remarks>
public sealed record DrainRun
{
    /// <summary>[m] Inside diameter, over 0.</summary>
    public required double Diameter { get; init; }

    /// <summary>[m] Length from the high end to the outlet, over 0.</summary>
    public required double Length { get; init; }

    /// <summary>[-] Drop per length, 0 (level) to 0.5.</summary>
    public required double Slope { get; init; }

    /// <summary>[s/m^(1/3)] Manning's n, 0 (frictionless, for checks) to 0.1. Smooth plastic 0.009 to 0.011.</summary>
    public double Roughness { get; init; } = 0.010;

    /// <summary>Inflows in order of distance from the high end. Several may share a place.</summary>
    public required IReadOnlyList<DrainInflow> Inflows { get; init; }

    /// <summary>[m] Water level at the outlet over the pipe's lowest inside point there; 0 for a free fall.</summary>
    public double OutletWaterDepth { get; init; }

    /// <summary>[m] Height the slope costs from the high end to the outlet.</summary>
    public double Drop => Slope * Length;

    /// <summary>[m³/s] All inflows together.</summary>
    public double TotalFlow => Inflows.Sum(inflow => inflow.Flow);

    internal void Check()
    {
        Guard.Positive(Diameter);
        Guard.Positive(Length);
        Guard.Between(Slope, 0, 0.5);
        Guard.Between(Roughness, 0, 0.1);
        Guard.NotNegative(OutletWaterDepth);
        var before = 0.0;
        foreach (var inflow in Inflows)
        {
            // Out of order means a mistake in the caller's stations: say so rather than sort.
            before = Guard.Between(inflow.Distance, before, Length, nameof(Inflows));
            Guard.NotNegative(inflow.Flow, nameof(Inflows));
        }
    }
}
