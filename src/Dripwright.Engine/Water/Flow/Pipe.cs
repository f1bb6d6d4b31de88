using System.Runtime.InteropServices;

namespace Dripwright.Engine.Water;

/// <summary>A round pipe running full, with the local losses that act on its own velocity.</summary>
/// <param name="Length">[m] Length along the axis; 0 for a fitting that is nothing but its loss coefficient.</param>
/// <param name="InsideDiameter">[m] Inside diameter, greater than 0.</param>
/// <param name="Roughness">[m] Wall roughness, at most 0.05 of the diameter; 1.5 μm for drawn plastic.</param>
/// <param name="LossCoefficient">[-] Sum of K of the fittings, on V²/2g in this bore.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Pipe(double Length, double InsideDiameter, double Roughness, double LossCoefficient = 0)
{
    /// <summary>Flow area of the bore.</summary>
    /// <remarks>A = π D² / 4.</remarks>
    /// <returns>[m²] Area.</returns>
    public double Area => Math.PI / 4 * InsideDiameter * InsideDiameter;

    /// <summary>Mean velocity at a flow.</summary>
    /// <remarks>V = Q / A. Any flow; the sign follows the flow.</remarks>
    /// <param name="flow">[m³/s] Flow.</param>
    /// <returns>[m/s] Velocity.</returns>
    public double Velocity(double flow) => flow / Area;

    /// <summary>Throws when a field is not physically possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A field is outside the range given above.</exception>
    internal void ThrowIfImpossible()
    {
        Guard.NotNegative(Length);
        Guard.Positive(InsideDiameter);
        Guard.NotNegative(Roughness);
        Guard.Between(Roughness / InsideDiameter, 0, Friction.LargestRelativeRoughness, nameof(Roughness));
        Guard.NotNegative(LossCoefficient);
    }
}
