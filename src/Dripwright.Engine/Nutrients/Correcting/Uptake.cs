using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>What was poured into a tank between two readings.</summary>
/// <param name="Volume">[m³] How much.</param>
/// <param name="DecisiemensPerMetre">[dS/m] How strong; for stock, what it counts for (see <see cref="StockPair.Strength"/>).</param>
public sealed record Poured(double Volume, double DecisiemensPerMetre);

/// <summary>What to top up with, in the three words of the trade.</summary>
public enum TopUpStrength
{
    /// <summary>Plain water.</summary>
    Water,

    /// <summary>Half strength.</summary>
    Half,

    /// <summary>Full strength.</summary>
    Full,
}

/// <summary>What plants took from a tank between two readings.</summary>
/// <param name="Volume">[m³] Water, drunk and evaporated.</param>
/// <param name="DecisiemensPerMetre">[dS/m] Strength of what they took: salt over water.</param>
public sealed record Uptake(double Volume, double DecisiemensPerMetre)
{
    /// <summary>Which of water, half and full strength comes nearest to holding the tank.</summary>
    /// <param name="water">[dS/m] EC of the water.</param>
    /// <param name="full">[dS/m] EC of the full-strength solution made with it, higher than the water's.</param>
    /// <exception cref="ArgumentOutOfRangeException">The full strength is not above the water.</exception>
    public TopUpStrength Nearest(double water, double full)
    {
        Guard.NotNegative(water);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(full, water);
        var share = (DecisiemensPerMetre - water) / (full - water);
        return share switch
        {
            < 0.25 => TopUpStrength.Water,
            < 0.75 => TopUpStrength.Half,
            _ => TopUpStrength.Full,
        };
    }

    /// <summary>Stock to pour in with the water that replaces a volume, so that EC holds.</summary>
    /// <param name="volume">[m³] Volume to replace, water and stock together.</param>
    /// <param name="water">[dS/m] EC of the water.</param>
    /// <param name="stock">The stock pair.</param>
    /// <returns>[m³] Of stock A, and the same of stock B; nought when the water alone brings as much or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative, or the stock is weaker than the water.</exception>
    public double StockEachToHold(double volume, double water, StockPair stock)
    {
        ArgumentNullException.ThrowIfNull(stock);
        Guard.NotNegative(volume);
        Guard.NotNegative(water);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(water, stock.Strength);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(DecisiemensPerMetre, stock.Strength, nameof(stock));
        return volume * Math.Max(0, DecisiemensPerMetre - water) / (stock.Strength - water) / 2;
    }

    /// <summary>What was taken between two readings of one tank.</summary>
    /// <param name="first">The earlier reading.</param>
    /// <param name="second">The later reading.</param>
    /// <param name="poured">What was poured in between.</param>
    /// <param name="capacity">[m³] What the tank holds when full.</param>
    /// <returns>The uptake, or why the readings do not fit together.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A poured volume or strength is negative.</exception>
    public static Answer<Uptake> Between(
        TankReading first,
        TankReading second,
        IReadOnlyList<Poured> poured,
        double capacity
    )
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentNullException.ThrowIfNull(poured);
        Guard.Positive(capacity);
        IReadOnlyList<Unanswerable> faults = [.. first.Faults(capacity), .. second.Faults(capacity)];
        if (faults.Count > 0)
        {
            return Answer<Uptake>.No(faults);
        }

        var water = first.Volume - second.Volume + poured.Sum(p => Guard.NotNegative(p.Volume, nameof(poured)));
        var salt =
            (first.Volume * first.DecisiemensPerMetre)
            - (second.Volume * second.DecisiemensPerMetre)
            + poured.Sum(p => p.Volume * Guard.NotNegative(p.DecisiemensPerMetre, nameof(poured)));
        if (water <= 0)
        {
            return Answer<Uptake>.No(Unanswerable.Of("water-from-nowhere", Measured.Volume(-water)));
        }

        if (salt < -0.05 * first.Volume * first.DecisiemensPerMetre)
        {
            return Answer<Uptake>.No(Unanswerable.Of("salt-from-nowhere"));
        }

        // Within the meters' error, salt that seems to have come means that only water went.
        return Answer<Uptake>.Of(new Uptake(water, Math.Max(0, salt) / water));
    }
}
