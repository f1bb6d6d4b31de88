namespace Dripwright.Engine.Water;

/// <summary>How much a drain takes before it is as full as one allows, whatever its slope.</summary>
public static class DrainCapacity
{
    private const int MostHalvings = 40;

    /// <summary>Factor by which all inflows may grow before the deepest place reaches a depth ratio.</summary>
    /// <remarks>
    /// Found by halving on whole profiles, to a millionth. Unlike the uniform (Manning) capacity this holds for level
    /// and short pipes too, and counts the outlet's water level.
    /// </remarks>
    /// <param name="run">The pipe with its present inflows, not all 0.</param>
    /// <param name="depthRatio">[-] Allowed depth over diameter, over 0, at most 1.</param>
    /// <param name="tolerance">[-] How near the factor is found, as a share of it.</param>
    /// <returns>[-] Factor: under 1, the drain is already too full; 0, the outlet's water level alone makes it so.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The ratio lies outside its range, or there is no inflow.</exception>
    public static double GrowthTo(DrainRun run, double depthRatio, double tolerance = 1e-6)
    {
        ArgumentNullException.ThrowIfNull(run);
        Guard.Between(depthRatio, double.Epsilon, 1);
        Guard.Positive(run.TotalFlow, nameof(run));
        if (!Fits(run, 0, depthRatio))
        {
            return 0;
        }

        var low = 0.0;
        var high = 1.0;
        while (Fits(run, high, depthRatio))
        {
            low = high;
            high *= 4;
        }

        for (var i = 0; i < MostHalvings && high - low > tolerance * high; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Fits(run, middle, depthRatio) ? (middle, high) : (low, middle);
        }

        return low;
    }

    private static bool Fits(DrainRun run, double factor, double depthRatio)
    {
        var grown = run with
        {
            Inflows = [.. run.Inflows.Select(inflow => inflow with { Flow = inflow.Flow * factor })],
        };
        return DrainProfile.Of(grown).GreatestDepthRatio <= depthRatio;
    }
}
