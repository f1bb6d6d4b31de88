using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>Waters mixed with each other.</summary>
public static class WaterBlend
{
    /// <summary>Mixes waters by volume.</summary>
    /// <param name="parts">Each water with its volume [m³] or share [-]; only the ratio counts.</param>
    /// <returns>The blend. Constituents and alkalinity are exact; the EC is the mean by volume, good to a few percent; the pH of a
    /// blend does not follow from the pH of its parts and is left open.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A volume is negative or not finite, or all are 0.</exception>
    public static WaterSupply Of(params IReadOnlyList<(WaterSupply Water, double Volume)> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var whole = 0.0;
        foreach (var (_, volume) in parts)
        {
            whole += Guard.NotNegative(volume, nameof(parts));
        }
        Guard.Positive(whole, nameof(parts));
        var used = parts.Where(part => part.Volume > 0).ToList();
        if (used.Count == 1)
        {
            return used[0].Water;
        }
        var composition = Composition.Nothing;
        var alkalinity = 0.0;
        double? conductivity = 0;
        foreach (var (water, volume) in used)
        {
            composition += water.Composition * (volume / whole);
            alkalinity += water.Alkalinity * (volume / whole);
            conductivity += water.Conductivity * (volume / whole);
        }
        var name = Phrase.Of("water.blend", new Several([.. used.Select(part => part.Water.Name)]));
        return new WaterSupply(name, composition, alkalinity, conductivity);
    }

    /// <summary>Share of water without a constituent that brings it down to a limit.</summary>
    /// <param name="amount">[mol/m³] What the water has.</param>
    /// <param name="limit">[mol/m³] What the blend may have.</param>
    /// <returns>[-] 0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative or not finite.</exception>
    public static double ShareOfPure(double amount, double limit)
    {
        Guard.NotNegative(amount);
        Guard.NotNegative(limit);
        return amount <= limit ? 0 : 1 - limit / amount;
    }
}
