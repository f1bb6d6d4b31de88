namespace Dripwright.Engine.Stands.Sections;

/// <summary>A steel.</summary>
/// <param name="Key">Short name.</param>
/// <param name="Name">Name in full.</param>
/// <param name="Yield">[Pa] Minimum yield strength.</param>
/// <param name="Tensile">[Pa] Minimum tensile strength.</param>
/// <param name="Assumed">True where the seller promises no strength and the weakest welded grade stands in.</param>
/// <param name="Source">Where the strengths are from.</param>
public sealed record Steel(string Key, string Name, double Yield, double Tensile, bool Assumed, string Source)
{
    /// <summary>[Pa] Young's modulus, 29,000 ksi (AISC 360).</summary>
    public double Young { get; init; } = 29000 * Steels.Ksi;

    /// <summary>[Pa] Shear modulus, 11,200 ksi (AISC 360).</summary>
    public double Shear { get; init; } = 11200 * Steels.Ksi;

    /// <summary>[kg/m³] Density, 490 lb/ft³ (AISC manual).</summary>
    public double Density { get; init; } = 490 * 0.45359237 / (0.3048 * 0.3048 * 0.3048);
}
