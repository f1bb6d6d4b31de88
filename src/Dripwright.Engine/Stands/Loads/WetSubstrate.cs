namespace Dripwright.Engine.Stands.Loads;

/// <summary>What coir weighs in a pot.</summary>
/// <remarks>
/// A coir bag drained for an hour weighs 0.645 kg a litre (a maker's grow-bag data: 11.603 kg in 18 L); the heaviest coir
/// soaked to its limit 0.98 (dry 0.122 g/cm³ and 0.855 L of water a litre: the upper ends in Noguera et al. 2003, as
/// summarised in a public stormwater manual). For strength the heavy end counts, for tipping the light one.
/// Method page: docs/methods/stand-loads.md
/// </remarks>
public static class WetSubstrate
{
    /// <summary>[kg/m³] Soaked, upper end, rounded up.</summary>
    public const double Soaked = 1000;

    /// <summary>[kg/m³] Drained for an hour: 11.603 kg in 18 L.</summary>
    public const double Drained = 11.603 / 0.018;

    /// <summary>[kg/m³] Half dried out, when a pot tips most easily; between dry coir and a drained bag.</summary>
    public const double Light = 400;

    /// <summary>Mass of a pot's filling.</summary>
    /// <param name="volume">[m³] Volume of substrate, 0 or more.</param>
    /// <param name="density">[kg/m³] Its density, 0 or more.</param>
    /// <returns>[kg] Mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is negative or no number.</exception>
    public static double Mass(double volume, double density) => Guard.NotNegative(volume) * Guard.NotNegative(density);
}
