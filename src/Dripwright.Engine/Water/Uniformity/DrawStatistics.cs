namespace Dripwright.Engine.Water;

/// <summary>Sums up the draws of one number.</summary>
internal static class DrawStatistics
{
    private const int BinCount = 40;

    /// <summary>Sorts the draws in place and sums them up.</summary>
    public static DrawDistribution Of(double[] draws)
    {
        Array.Sort(draws);
        var mean = 0.0;
        foreach (var draw in draws)
        {
            mean += draw;
        }

        mean /= draws.Length;
        var squares = 0.0;
        foreach (var draw in draws)
        {
            squares += (draw - mean) * (draw - mean);
        }

        return new DrawDistribution(
            mean,
            draws.Length > 1 ? Math.Sqrt(squares / (draws.Length - 1)) : 0,
            draws[0],
            Quantile(draws, 0.05),
            Quantile(draws, 0.25),
            Quantile(draws, 0.5),
            Quantile(draws, 0.75),
            Quantile(draws, 0.95),
            draws[^1],
            Bins(draws)
        );
    }

    // Straight line between the two neighbouring draws (the rule spreadsheets use).
    private static double Quantile(double[] sorted, double part)
    {
        var place = part * (sorted.Length - 1);
        var below = (int)place;
        return below + 1 < sorted.Length
            ? sorted[below] + (place - below) * (sorted[below + 1] - sorted[below])
            : sorted[below];
    }

    private static HistogramBins Bins(double[] sorted)
    {
        var from = sorted[0];
        var to = sorted[^1];
        if (to - from <= 1e-12 * Math.Abs(to))
        {
            return new HistogramBins(from, to, [sorted.Length]);
        }

        var counts = new int[BinCount];
        foreach (var draw in sorted)
        {
            counts[Math.Min((int)((draw - from) / (to - from) * BinCount), BinCount - 1)]++;
        }

        return new HistogramBins(from, to, counts);
    }
}
