using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Stands.Loads;

/// <summary>A pipe between two places that hold it, as a beam.</summary>
public static class PipeBeam
{
    /// <summary>[kg/m³] Water in it, rounded up.</summary>
    private const double Water = 1000;

    /// <summary>[Pa] Modulus of bending.</summary>
    /// <remarks>
    /// Rigid PVC: 360,000 lb/in² at 23 °C (ASTM D790, cell class 12454, as pipe makers' sheets state it). Hose: 0.2 GPa,
    /// low-density polyethylene, from memory.
    /// </remarks>
    /// <param name="family">Family of the pipe.</param>
    public static double Modulus(PipeFamily family) =>
        family is PipeFamily.PvcSchedule40 or PipeFamily.PvcMetric ? 360_000 * 6894.757 : 0.2e9;

    /// <summary>[-] How many times farther a pipe has sagged under a weight that never leaves it than on the first day.</summary>
    /// <remarks>
    /// Modulus at first over that after 50 years, AASHTO LRFD Bridge Design Specifications, table 12.12.3.3-1, from memory:
    /// rigid PVC of cell class 12454 400,000 and 140,000 lb/in², polyethylene 110,000 and 22,000 lb/in².
    /// </remarks>
    /// <param name="family">Family of the pipe.</param>
    public static double Creep(PipeFamily family) =>
        family is PipeFamily.PvcSchedule40 or PipeFamily.PvcMetric ? 400.0 / 140 : 110.0 / 22;

    /// <summary>[N/m] Weight under which a pipe would sag on the first day as far as it does full of water after years.</summary>
    /// <remarks>Its own weight never leaves it and counts with its creep; water stands in a drain for hours.</remarks>
    /// <param name="pipe">The pipe.</param>
    /// <param name="density">[kg/m³] Of its wall.</param>
    public static double LastingWeight(PipeSize pipe, double density)
    {
        var empty = Weight(pipe, density, full: false);
        return Weight(pipe, density, full: true) + ((Creep(pipe.Family) - 1) * empty);
    }

    /// <summary>[N/m] Weight, with or without water.</summary>
    /// <param name="pipe">The pipe.</param>
    /// <param name="density">[kg/m³] Of its wall.</param>
    /// <param name="full">Whether it is full of water.</param>
    public static double Weight(PipeSize pipe, double density, bool full)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        var bore = Math.PI / 4 * pipe.InsideDiameter * pipe.InsideDiameter;
        var wall = (Math.PI / 4 * pipe.OutsideDiameter * pipe.OutsideDiameter) - bore;
        return ((wall * density) + (full ? bore * Water : 0)) * StandardGravity.Value;
    }

    /// <summary>[N·m²] Stiffness in bending, E I.</summary>
    /// <param name="pipe">The pipe.</param>
    public static double Stiffness(PipeSize pipe)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        var inertia = Math.PI / 64 * (Math.Pow(pipe.OutsideDiameter, 4) - Math.Pow(pipe.InsideDiameter, 4));
        return Modulus(pipe.Family) * inertia;
    }

    /// <summary>[m] Sag of a simple beam under its weight, w x (L³ - 2 L x² + x³)/(24 EI) (AISC beam sheets, case 1).</summary>
    /// <param name="weight">[N/m] Weight w.</param>
    /// <param name="stiffness">[N·m²] E I, over 0.</param>
    /// <param name="span">[m] Span L.</param>
    /// <param name="at">[m] Place x, from 0 to the span.</param>
    public static double Sag(double weight, double stiffness, double span, double at) =>
        weight * at * ((span * span * span) - (2 * span * at * at) + (at * at * at)) / (24 * stiffness);

    /// <summary>[-] Slope of that sag, w (L³ - 6 L x² + 4 x³)/(24 EI): greatest at the ends, w L³/(24 EI).</summary>
    /// <param name="weight">[N/m] Weight w.</param>
    /// <param name="stiffness">[N·m²] E I, over 0.</param>
    /// <param name="span">[m] Span L.</param>
    /// <param name="at">[m] Place x, from 0 to the span.</param>
    public static double SagSlope(double weight, double stiffness, double span, double at) =>
        weight * ((span * span * span) - (6 * span * at * at) + (4 * at * at * at)) / (24 * stiffness);
}
