namespace Dripwright.Engine.Water;

/// <summary>Measures of how evenly a row waters its plants. All are fractions: 1 is perfectly even.</summary>
/// <remarks>
/// None of them changes when all flows are multiplied by one factor, so flows may come in any one unit.
/// Method page: docs/methods/uniformity.md
/// </remarks>
public static class Uniformity
{
    /// <summary>[-] Mean of the lowest quarter of a normal law lies this many standard deviations under the mean.</summary>
    /// <remarks>Density at the lower quartile over 1/4: 0.31777657 / 0.25. The trade rounds it to 1.27.</remarks>
    public const double LowQuarterOfNormal = 1.2711062847;

    /// <summary>[-] Mean absolute deviation of a normal law in standard deviations, √(2/π).</summary>
    public const double MeanDeviationOfNormal = 0.7978845608;

    /// <summary>Design emission uniformity after Keller and Karmeli, EU = (1 - 1.27 Cv/√n) · qmin/qavg.</summary>
    /// <remarks>
    /// The first factor is manufacture (mean of the lowest quarter of a normal law), the second pressure and height.
    /// Source: J. Keller, D. Karmeli, Trickle irrigation design parameters, Trans. ASAE 17(4), 1974 (citation from memory).
    /// </remarks>
    /// <param name="coefficientOfVariation">[-] Maker's coefficient of variation, 0 to 0.5.</param>
    /// <param name="emittersPerPlant">Emitters that share one plant, 1 or more.</param>
    /// <param name="leastFlow">[m³/s] Flow of the emitter with the least pressure, 0 or more.</param>
    /// <param name="meanFlow">[m³/s] Mean flow of all emitters, over 0.</param>
    /// <returns>[-] Emission uniformity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    /// <example>Cv 0.05, one emitter, least flow 0.95 of the mean: 0.889675.</example>
    public static double OfDesign(
        double coefficientOfVariation,
        int emittersPerPlant,
        double leastFlow,
        double meanFlow
    )
    {
        Guard.Between(coefficientOfVariation, 0, 0.5);
        ArgumentOutOfRangeException.ThrowIfLessThan(emittersPerPlant, 1);
        Guard.Positive(meanFlow);
        Guard.Between(leastFlow, 0, meanFlow * (1 + 1e-12));
        return (1 - 1.27 * coefficientOfVariation / Math.Sqrt(emittersPerPlant)) * (leastFlow / meanFlow);
    }

    /// <summary>Distribution uniformity of the low quarter: mean of the lowest quarter over the mean of all.</summary>
    /// <remarks>
    /// When the count is no multiple of four, the quarter is cut through a reading: of 18 readings the lowest four
    /// count whole and the fifth half (4.5 readings). Whole-number rules (lowest four, lowest five) jump as points are
    /// added; this one does not. With fewer than four readings the lowest alone is the quarter.
    /// </remarks>
    /// <param name="flows">[m³/s] Flow (or caught volume) of each point, 0 or more, not all 0.</param>
    /// <returns>[-] Distribution uniformity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No flow is given, one is negative, or all are zero.</exception>
    public static double OfLowQuarter(IReadOnlyList<double> flows)
    {
        var sorted = Sorted(flows);
        return OfLowQuarterSorted(sorted, Mean(sorted));
    }

    /// <summary>Christiansen's coefficient: 1 less the mean absolute deviation over the mean.</summary>
    /// <remarks>CU = 1 - Σ|q - q̄| / (n q̄). J. E. Christiansen, Irrigation by sprinkling, 1942 (from memory).</remarks>
    /// <param name="flows">[m³/s] Flow (or caught volume) of each point, 0 or more, not all 0.</param>
    /// <returns>[-] Christiansen's coefficient.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No flow is given, one is negative, or all are zero.</exception>
    public static double Christiansen(IReadOnlyList<double> flows)
    {
        var values = Checked(flows);
        return OfDeviation(values, Mean(values));
    }

    /// <summary>Statistical uniformity: 1 less the coefficient of variation of a sample.</summary>
    /// <remarks>Us = 1 - s/q̄ with the sample's standard deviation, n - 1 in the denominator.</remarks>
    /// <param name="flows">[m³/s] Flow (or caught volume, or fill time) of each point, two or more, not all 0.</param>
    /// <returns>[-] Statistical uniformity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two flows, one is negative, or all are zero.</exception>
    public static double Statistical(IReadOnlyList<double> flows)
    {
        var values = Checked(flows);
        ArgumentOutOfRangeException.ThrowIfLessThan(values.Length, 2, nameof(flows));
        var mean = Mean(values);
        var squares = 0.0;
        foreach (var value in values)
        {
            squares += (value - mean) * (value - mean);
        }

        return 1 - Math.Sqrt(squares / (values.Length - 1)) / mean;
    }

    /// <summary>Statistical uniformity by the short field method: highest and lowest sixth of the fill times.</summary>
    /// <remarks>
    /// Us = 1 - (Tmax - Tmin) / (1.5 (Tmax + Tmin)), Tmax and Tmin the sums of the longest and the shortest sixth of
    /// the times to fill one and the same container at 18 points or more. 1.5 because the mean of the top sixth of a
    /// normal law lies 1.50 standard deviations over the mean. A sixth that is not whole is cut through a reading.
    /// Method: V. F. Bralts, C. D. Kesner, Drip irrigation field uniformity estimation, Trans. ASAE 26(5), 1983, as
    /// described in University of Florida EDIS AE193; the closed form in place of their nomograph is from memory.
    /// </remarks>
    /// <param name="fillTimes">[s] Time to fill the container at each point, over 0; 6 points or more.</param>
    /// <returns>[-] Statistical uniformity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than six times, or one that is not over 0.</exception>
    public static double ByFillTimes(IReadOnlyList<double> fillTimes)
    {
        var sorted = Sorted(fillTimes);
        ArgumentOutOfRangeException.ThrowIfLessThan(sorted.Length, 6, nameof(fillTimes));
        Guard.Positive(sorted[0], nameof(fillTimes));
        var share = sorted.Length / 6.0;
        var shortest = SumOfLowest(sorted, share);
        Array.Reverse(sorted);
        var longest = SumOfLowest(sorted, share);
        return 1 - (longest - shortest) / (1.5 * (longest + shortest));
    }

    internal static double OfLowQuarterSorted(ReadOnlySpan<double> sorted, double mean)
    {
        var share = Math.Max(sorted.Length / 4.0, 1);
        return SumOfLowest(sorted, share) / share / mean;
    }

    internal static double OfDeviation(ReadOnlySpan<double> values, double mean)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += Math.Abs(value - mean);
        }

        return 1 - sum / (values.Length * mean);
    }

    private static double SumOfLowest(ReadOnlySpan<double> sorted, double share)
    {
        var whole = (int)share;
        var sum = 0.0;
        for (var i = 0; i < whole; i++)
        {
            sum += sorted[i];
        }

        return whole < share ? sum + (share - whole) * sorted[whole] : sum;
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }

    private static double[] Sorted(IReadOnlyList<double> flows)
    {
        var values = Checked(flows);
        Array.Sort(values);
        return values;
    }

    private static double[] Checked(IReadOnlyList<double> flows)
    {
        ArgumentNullException.ThrowIfNull(flows);
        ArgumentOutOfRangeException.ThrowIfZero(flows.Count, nameof(flows));
        var values = new double[flows.Count];
        var largest = 0.0;
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = Guard.NotNegative(flows[i], nameof(flows));
            largest = Math.Max(largest, values[i]);
        }

        Guard.Positive(largest, nameof(flows));
        return values;
    }
}
