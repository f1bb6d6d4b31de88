namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>What builds up in a closed loop, in closed form, for one ion in one well-mixed volume.</summary>
/// <remarks>
/// Every litre the plants drink is replaced by a litre of make-up; what they leave of an ion stays. Textbook mass balance;
/// that sodium and chloride level off once uptake over water equals the concentration of the water was measured by
/// D. Savvas et al., Eur. J. Hort. Sci., 2005 (cucumber). Method page: docs/methods/closed-loop.md
/// </remarks>
public static class LoopBalance
{
    /// <summary>Concentration after some turnover when a constant concentration is taken up.</summary>
    /// <remarks>C = C₀ + (c - u) w, w the water taken up over the volume.</remarks>
    /// <param name="start">[mol/m³] Concentration at the start.</param>
    /// <param name="makeUp">[mol/m³] Concentration of the make-up.</param>
    /// <param name="uptake">[mol/m³] Taken up per volume of water.</param>
    /// <param name="turnover">[-] Water taken up over the volume of the loop.</param>
    /// <returns>[mol/m³] Concentration; negative values say that it has run out on the way.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative.</exception>
    /// <example>1.5 of 1.5 mmol/L water, nothing taken, 200 L after 400 L: 4.5 mmol/L.</example>
    public static double Constant(double start, double makeUp, double uptake, double turnover)
    {
        Guard.NotNegative(start);
        Guard.NotNegative(makeUp);
        Guard.NotNegative(uptake);
        Guard.NotNegative(turnover);
        return start + ((makeUp - uptake) * turnover);
    }

    /// <summary>Concentration after some turnover when uptake is proportional to it.</summary>
    /// <remarks>C = c/p - (c/p - C₀) e^(-p w).</remarks>
    /// <param name="start">[mol/m³] Concentration at the start.</param>
    /// <param name="makeUp">[mol/m³] Concentration of the make-up.</param>
    /// <param name="proportion">[-] Concentration taken up over that in the loop; above nought.</param>
    /// <param name="turnover">[-] Water taken up over the volume of the loop.</param>
    /// <returns>[mol/m³] Concentration; the plateau is makeUp/proportion.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double Proportional(double start, double makeUp, double proportion, double turnover)
    {
        Guard.NotNegative(start);
        Guard.NotNegative(makeUp);
        Guard.Positive(proportion);
        Guard.NotNegative(turnover);
        double left = Math.Exp(-proportion * turnover);
        return (start * left) - (makeUp * SmallNumbers.ExpMinusOne(-proportion * turnover) / proportion);
    }

    /// <summary>Turnover until a limit is reached; null when it never is.</summary>
    /// <param name="start">[mol/m³] Concentration at the start.</param>
    /// <param name="makeUp">[mol/m³] Concentration of the make-up.</param>
    /// <param name="uptake">[mol/m³] Constant part of the uptake.</param>
    /// <param name="proportion">[-] Part of the uptake proportional to the concentration.</param>
    /// <param name="limit">[mol/m³] The limit.</param>
    /// <returns>[-] Water taken up over the volume of the loop; 0 when the limit is passed already.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative.</exception>
    public static double? TurnoverTo(double start, double makeUp, double uptake, double proportion, double limit)
    {
        Guard.NotNegative(start);
        Guard.NotNegative(makeUp);
        Guard.NotNegative(uptake);
        Guard.NotNegative(proportion);
        Guard.NotNegative(limit);
        if (start >= limit)
        {
            return 0;
        }

        double gain = makeUp - uptake;
        if (proportion == 0)
        {
            return gain > 0 ? (limit - start) / gain : null;
        }

        double beyond = gain - (proportion * limit);
        return beyond > 0 ? SmallNumbers.LogOnePlus(proportion * (limit - start) / beyond) / proportion : null;
    }

    /// <summary>Bleed that holds a concentration: water let out per water taken up.</summary>
    /// <remarks>B/E = (c - u)/(C - c).</remarks>
    /// <param name="makeUp">[mol/m³] Concentration of the make-up.</param>
    /// <param name="uptake">[mol/m³] Taken up per volume of water.</param>
    /// <param name="held">[mol/m³] Concentration to hold; above the make-up's.</param>
    /// <returns>[-] Bleed over uptake; nought when the plants take all that comes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative, or the make-up is at the limit itself.</exception>
    /// <example>Water of 1.5, nothing taken, 8 held: 0.2308.</example>
    public static double BleedPerUptake(double makeUp, double uptake, double held)
    {
        Guard.NotNegative(makeUp);
        Guard.NotNegative(uptake);
        if (makeUp <= uptake)
        {
            return 0;
        }

        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(Guard.Finite(held), makeUp, nameof(held));
        return (makeUp - uptake) / (held - makeUp);
    }

    /// <summary>Share of all make-up that is bled: (B/E) / (1 + B/E).</summary>
    /// <param name="bleedPerUptake">[-] Water let out per water taken up.</param>
    /// <returns>[-] The leaching fraction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public static double LeachingFraction(double bleedPerUptake)
    {
        Guard.NotNegative(bleedPerUptake);
        return bleedPerUptake / (1 + bleedPerUptake);
    }

    /// <summary>What a refill must hold, from what plants contain and how much they drink.</summary>
    /// <remarks>
    /// Tissue content times water-use efficiency: 3 g of dry matter per litre in ambient air, up to 6 in humid air rich in
    /// carbon dioxide. N. J. Langenfeld et al., Sustainability 14, 2022, 10204.
    /// </remarks>
    /// <param name="milligramsPerGram">[mg/g] Content of dry tissue.</param>
    /// <param name="gramsPerLitre">[g/L] Dry matter grown per water taken up.</param>
    /// <returns>[mg/L] Concentration of the refill.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative.</exception>
    public static double RefillMilligramsPerLitre(double milligramsPerGram, double gramsPerLitre) =>
        Guard.NotNegative(milligramsPerGram) * Guard.NotNegative(gramsPerLitre);
}
