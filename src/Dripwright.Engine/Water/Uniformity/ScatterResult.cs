namespace Dripwright.Engine.Water;

/// <summary>What the draws say about one number.</summary>
/// <param name="Mean">[-] Mean of all draws.</param>
/// <param name="StandardDeviation">[-] Standard deviation of the draws (n - 1; 0 for a single draw).</param>
/// <param name="Least">[-] Least draw.</param>
/// <param name="Quantile05">[-] One draw in twenty lies under this.</param>
/// <param name="Quantile25">[-] One draw in four lies under this.</param>
/// <param name="Median">[-] Half the draws lie under this.</param>
/// <param name="Quantile75">[-] Three draws in four lie under this.</param>
/// <param name="Quantile95">[-] Nineteen draws in twenty lie under this.</param>
/// <param name="Greatest">[-] Greatest draw.</param>
/// <param name="Bins">Counts for a plot.</param>
public sealed record DrawDistribution(
    double Mean,
    double StandardDeviation,
    double Least,
    double Quantile05,
    double Quantile25,
    double Median,
    double Quantile75,
    double Quantile95,
    double Greatest,
    HistogramBins Bins
);

/// <summary>Counts in bins of equal width. Bin i runs from From + i·w to From + (i+1)·w; the last includes its end.</summary>
/// <param name="From">[-] Lower end of the first bin.</param>
/// <param name="To">[-] Upper end of the last bin.</param>
/// <param name="Counts">Draws in each bin.</param>
public sealed record HistogramBins(double From, double To, IReadOnlyList<int> Counts);

/// <summary>What may happen when this rig is built and ages: the outcome of many drawn rigs.</summary>
/// <remarks>All measures are of pots, not of emitters: a plant drinks from all emitters of its pot.</remarks>
/// <param name="Draws">How many rigs were drawn.</param>
/// <param name="ChanceOfWeakPot">[-] Part of the rigs whose weakest pot gets less than the limit's part of the mean.</param>
/// <param name="WeakestRatio">Flow of the weakest pot over the mean of the pots.</param>
/// <param name="LowQuarter">Distribution uniformity of the low quarter of the pots.</param>
/// <param name="Christiansen">Christiansen's coefficient of the pots.</param>
/// <param name="ChanceOfBeingWeakest">[-] For each pot, part of the rigs in which it is the weakest. Sums to 1.</param>
/// <param name="ChanceOfBeingWeak">[-] For each pot, part of the rigs in which it is under the limit.</param>
public sealed record ScatterResult(
    int Draws,
    double ChanceOfWeakPot,
    DrawDistribution WeakestRatio,
    DrawDistribution LowQuarter,
    DrawDistribution Christiansen,
    IReadOnlyList<double> ChanceOfBeingWeakest,
    IReadOnlyList<double> ChanceOfBeingWeak
);
