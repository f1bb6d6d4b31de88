namespace Dripwright.Engine.Water;

/// <summary>Puts a measure of uniformity, or a maker's coefficient of variation, into its class.</summary>
/// <remarks>
/// The standard's bands (ASABE EP458, limits from memory) leave gaps: 87 to 94 %, for instance, has no word. The break
/// is put at the middle of each gap. A value on the break takes the better class.
/// Method page: docs/methods/uniformity.md
/// </remarks>
public static class UniformityClasses
{
    private const int Bands = 4;

    // Middles of the gaps 87-94, 75-81, 62-68, 50-56.
    private static readonly double[] s_quarterBreaks = [0.905, 0.78, 0.65, 0.53];

    // Middles of the gaps 90-95, 80-85, 70-75, 60-65.
    private static readonly double[] s_statisticalBreaks = [0.925, 0.825, 0.725, 0.625];

    /// <summary>Class of a distribution uniformity of the low quarter, or of a design emission uniformity.</summary>
    /// <remarks>Breaks at 90.5, 78, 65 and 53 % (middles of the gaps of ASABE EP458, from memory).</remarks>
    /// <param name="uniformity">[-] Uniformity as a fraction, at most 1. May be negative for a very uneven row.</param>
    /// <returns>The class.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The uniformity is over 1 or not a number.</exception>
    public static UniformityClass OfLowQuarter(double uniformity) => Among(s_quarterBreaks, uniformity);

    /// <summary>Class of a statistical uniformity.</summary>
    /// <remarks>Breaks at 92.5, 82.5, 72.5 and 62.5 % (middles of the gaps of ASABE EP458, from memory).</remarks>
    /// <param name="uniformity">[-] Uniformity as a fraction, at most 1. May be negative for a very uneven row.</param>
    /// <returns>The class.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The uniformity is over 1 or not a number.</exception>
    public static UniformityClass OfStatistical(double uniformity) => Among(s_statisticalBreaks, uniformity);

    /// <summary>Class of a Christiansen coefficient.</summary>
    /// <remarks>
    /// The standard gives this coefficient no class of its own. It is turned into the low-quarter uniformity that a
    /// normal law would have, 1 - 1.593 (1 - CU), and classed by that.
    /// </remarks>
    /// <param name="coefficient">[-] Christiansen coefficient as a fraction, at most 1.</param>
    /// <returns>The class.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The coefficient is over 1 or not a number.</exception>
    public static UniformityClass OfChristiansen(double coefficient) =>
        Among(
            s_quarterBreaks,
            1
                - Uniformity.LowQuarterOfNormal
                    / Uniformity.MeanDeviationOfNormal
                    * (1 - InRange(coefficient, nameof(coefficient)))
        );

    /// <summary>Class of emitters placed one by one, by the maker's coefficient of variation.</summary>
    /// <remarks>
    /// Under 0.05 excellent, to 0.07 average, to 0.11 marginal, to 0.15 poor, above unacceptable
    /// (ASABE EP405.1, table of manufacturer's coefficient of variation, from memory).
    /// </remarks>
    /// <param name="coefficientOfVariation">[-] Standard deviation over mean of new emitters at one pressure.</param>
    /// <returns>The class.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The coefficient is negative or not a number.</exception>
    public static ManufactureClass OfEmitters(double coefficientOfVariation)
    {
        RequireSpread(coefficientOfVariation);
        return coefficientOfVariation switch
        {
            < 0.05 => ManufactureClass.Excellent,
            <= 0.07 => ManufactureClass.Average,
            <= 0.11 => ManufactureClass.Marginal,
            <= 0.15 => ManufactureClass.Poor,
            _ => ManufactureClass.Unacceptable,
        };
    }

    private static UniformityClass Among(double[] breaks, double uniformity)
    {
        InRange(uniformity, nameof(uniformity));
        for (var band = 0; band < Bands; band++)
        {
            if (uniformity >= breaks[band])
            {
                return (UniformityClass)band;
            }
        }

        return UniformityClass.Unacceptable;
    }

    private static double InRange(double value, string name)
    {
        if (double.IsNaN(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "A uniformity is a number, at most 1.");
        }

        // Equal flows may come out a last digit over 1.
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, 1 + 1e-12, name);
        return value;
    }

    private static void RequireSpread(double coefficientOfVariation)
    {
        if (!double.IsFinite(coefficientOfVariation))
        {
            throw new ArgumentOutOfRangeException(
                nameof(coefficientOfVariation),
                coefficientOfVariation,
                "A coefficient of variation is zero or more."
            );
        }

        ArgumentOutOfRangeException.ThrowIfNegative(coefficientOfVariation);
    }
}
