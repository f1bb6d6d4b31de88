namespace Dripwright.Engine.Water;

/// <summary>Splits the spread of emitter flows into pressure, height and manufacture.</summary>
/// <remarks>
/// Flows are recomputed with one cause at a time. With d the relative deviation of the flows from all hydraulic causes,
/// p and h those with pressure loss alone and height alone, and Cv the maker's coefficient:
/// V = var d + Cv² · mean(q²)/q̄²; shares cov(p, d)/V, cov(h, d)/V and the Cv term over V. Covariance, not variance, so
/// that causes which add up or work against each other are counted with their sign and the shares add up to 1.
/// Method page: docs/methods/uniformity.md
/// </remarks>
public static class Spread
{
    // Below this the flows differ by rounding only, and shares of rounding mean nothing.
    private const double LeastVariance = 1e-24;

    /// <summary>Shares from flows that the caller has recomputed under each cause.</summary>
    /// <param name="flows">[m³/s] Flow of each emitter as solved, manufacture left out; sum over 0.</param>
    /// <param name="flowsByPressure">[m³/s] The same emitters with all outlets at one height.</param>
    /// <param name="flowsByHeight">[m³/s] The same emitters with no pressure lost along the line.</param>
    /// <param name="coefficientOfVariation">[-] Maker's coefficient of variation, 0 to 0.5.</param>
    /// <returns>The shares.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Lists of unlike length, negative flows, no flow at all.</exception>
    public static SpreadShares Split(
        IReadOnlyList<double> flows,
        IReadOnlyList<double> flowsByPressure,
        IReadOnlyList<double> flowsByHeight,
        double coefficientOfVariation
    )
    {
        Guard.Between(coefficientOfVariation, 0, 0.5);
        ArgumentNullException.ThrowIfNull(flows);
        var all = Deviations(flows, flows.Count, nameof(flows));
        var pressure = Deviations(flowsByPressure, flows.Count, nameof(flowsByPressure));
        var height = Deviations(flowsByHeight, flows.Count, nameof(flowsByHeight));

        var hydraulic = MeanProduct(all, all);
        var manufacture = coefficientOfVariation * coefficientOfVariation * (1 + hydraulic);
        var total = hydraulic + manufacture;
        if (total <= LeastVariance)
        {
            return new SpreadShares(0, 0, 0, 0, 0);
        }

        var byPressure = MeanProduct(pressure, all) / total;
        var byHeight = MeanProduct(height, all) / total;
        var byManufacture = manufacture / total;
        return new SpreadShares(
            byPressure,
            byHeight,
            byManufacture,
            1 - byPressure - byHeight - byManufacture,
            Math.Sqrt(total)
        );
    }

    /// <summary>Shares from the solved pressure heads and the heights of the outlets.</summary>
    /// <remarks>
    /// Pressure alone: every outlet at the mean height with its own total head. Height alone: every outlet at its own
    /// height with the mean total head. Good while most emitters run inside their pressure range.
    /// </remarks>
    /// <param name="heads">[m] Pressure head at each emitter as solved.</param>
    /// <param name="heights">[m] Height of each emitter's outlet over any one datum.</param>
    /// <param name="flowAtHead">Flow [m³/s] of emitter i (first argument) at a pressure head [m] (second argument).</param>
    /// <param name="coefficientOfVariation">[-] Maker's coefficient of variation, 0 to 0.5.</param>
    /// <returns>The shares.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Lists of unlike length, negative flows, no flow at all.</exception>
    public static SpreadShares SplitByHead(
        IReadOnlyList<double> heads,
        IReadOnlyList<double> heights,
        Func<int, double, double> flowAtHead,
        double coefficientOfVariation
    )
    {
        ArgumentNullException.ThrowIfNull(heads);
        ArgumentNullException.ThrowIfNull(heights);
        ArgumentNullException.ThrowIfNull(flowAtHead);
        ArgumentOutOfRangeException.ThrowIfZero(heads.Count, nameof(heads));
        ArgumentOutOfRangeException.ThrowIfNotEqual(heights.Count, heads.Count, nameof(heights));
        var count = heads.Count;
        var meanHeight = heights.Sum() / count;
        var meanTotal = heads.Sum() / count + meanHeight;

        var flows = new double[count];
        var byPressure = new double[count];
        var byHeight = new double[count];
        for (var i = 0; i < count; i++)
        {
            flows[i] = flowAtHead(i, heads[i]);
            byPressure[i] = flowAtHead(i, heads[i] + heights[i] - meanHeight);
            byHeight[i] = flowAtHead(i, meanTotal - heights[i]);
        }

        return Split(flows, byPressure, byHeight, coefficientOfVariation);
    }

    private static double[] Deviations(IReadOnlyList<double> flows, int count, string name)
    {
        ArgumentNullException.ThrowIfNull(flows, name);
        ArgumentOutOfRangeException.ThrowIfZero(flows.Count, name);
        ArgumentOutOfRangeException.ThrowIfNotEqual(flows.Count, count, name);
        var mean = 0.0;
        foreach (var flow in flows)
        {
            mean += Guard.NotNegative(flow, name) / count;
        }

        Guard.Positive(mean, name);
        var deviations = new double[count];
        for (var i = 0; i < count; i++)
        {
            deviations[i] = flows[i] / mean - 1;
        }

        return deviations;
    }

    private static double MeanProduct(double[] left, double[] right)
    {
        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }

        return sum / left.Length;
    }
}
