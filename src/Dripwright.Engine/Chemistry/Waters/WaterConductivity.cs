using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>The rough conductivity of a water by its charge, to see whether an analysis can be.</summary>
/// <remarks>
/// EC [µS/cm] ≈ 100 · meq/L of cations or anions (Standard Methods 1030 E gives 90 to 110 for complete analyses; from memory).
/// Weak waters of bicarbonate stand near 80 to 95, sulfate waters lower as they grow stronger. For judging only; the EC of a feed
/// has its own method. Method page: docs/methods/water-analysis.md
/// </remarks>
internal static class WaterConductivity
{
    /// <summary>[S/m per mol/m³ of charge] 100 µS/cm for 1 meq/L.</summary>
    private const double PerCharge = 0.01;

    /// <summary>[S/m per mol/m³] The least that ions can carry: magnesium and bicarbonate at 15 % off for their number.</summary>
    private const double LeastPerCharge = 0.007;

    /// <summary>[S/m] Readings of a meter are not surer than this: 0.05 dS/m.</summary>
    private const double PenStep = 0.005;

    public static double Expected(ChargeBalance balance) => PerCharge * (balance.Cations + balance.Anions) / 2;

    /// <summary>True where the ions known carry more current than was measured.</summary>
    public static bool TooLow(double conductivity, ChargeBalance balance) =>
        LeastPerCharge * Math.Max(balance.Cations, balance.Anions) > conductivity + PenStep;

    /// <summary>True where all ions are known and carry less than half of what was measured.</summary>
    public static bool TooHigh(double conductivity, ChargeBalance balance) =>
        balance.Complete && conductivity > 2 * PerCharge * Math.Max(balance.Cations, balance.Anions) + 2 * PenStep;

    /// <summary>Measured over expected where they do not fit; null where they do or cannot be compared.</summary>
    public static double? Misfit(double? conductivity, ChargeBalance balance)
    {
        var expected = Expected(balance);
        if (conductivity is not { } measured || !balance.Complete || expected <= 0)
        {
            return null;
        }
        var ratio = measured / expected;
        var off = Math.Abs(ratio - 1) > RuleBook.Limit("water-ec-off");
        return off && Math.Abs(measured - expected) > 2 * PenStep ? ratio : null;
    }
}
