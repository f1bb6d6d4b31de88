using Dripwright.Engine.Water;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Plots;

/// <summary>What uneven and clogging emitters may do, from many drawn rigs.</summary>
internal static class ScatterPlots
{
    /// <summary>The weakest pot, as it is printed.</summary>
    public static RigPlot Weakest(ScatterResult scatter)
    {
        var weakest = scatter.WeakestRatio;
        return new()
        {
            Key = "spread-weakest-pot",
            Title = Words.Of("plot.spread.weakest.title"),
            Words = (_, _) => Words.Of("plot.spread.weakest.words", scatter.Draws),
            Plots = [Bars(Words.Of("plot.spread.weakest.axis"), weakest)],
            Numbers =
            [
                (Words.Of("plot.spread.number.weakest.half"), Wording.Percent(weakest.Median)),
                (Words.Of("plot.spread.number.weakest.twentieth"), Wording.Percent(weakest.Quantile05)),
                (Words.Of("plot.spread.number.weak"), Wording.Percent(scatter.ChanceOfWeakPot)),
                (Words.Of("plot.spread.number.uniformity"), Wording.Percent(scatter.LowQuarter.Median)),
            ],
            Data = Counts("Weakest pot", "weakest", weakest),
        };
    }

    /// <summary>The uniformity of the low quarter of the pots.</summary>
    public static RigPlot Uniformity(ScatterResult scatter)
    {
        var even = scatter.LowQuarter;
        return new()
        {
            Key = "spread-uniformity",
            Title = Words.Of("plot.spread.uniformity.title"),
            Words = (_, _) => Words.Of("plot.spread.uniformity.words", scatter.Draws),
            Plots = [Bars(Words.Of("plot.spread.uniformity.axis"), even)],
            Numbers =
            [
                (Words.Of("plot.spread.number.q05"), Wording.Percent(even.Quantile05)),
                (Words.Of("plot.spread.number.q25"), Wording.Percent(even.Quantile25)),
                (Words.Of("plot.spread.number.q50"), Wording.Percent(even.Median)),
                (Words.Of("plot.spread.number.q75"), Wording.Percent(even.Quantile75)),
                (Words.Of("plot.spread.number.q95"), Wording.Percent(even.Quantile95)),
            ],
            Data = Counts("Low quarter of the pots", "quarter", even),
        };
    }

    /// <summary>The same plot with lines at one rig in twenty, half, and nineteen in twenty.</summary>
    public static RigPlot Marked(RigPlot plot, DrawDistribution draws)
    {
        var bars = plot.Plots[0];
        var top = bars.Series[0].Points.Select(p => p.Y).DefaultIfEmpty(1).Max();
        Series At(string name, double share, Pen pen) =>
            new(name, [(share * 100, 0), (share * 100, top)]) { Pen = pen };
        return plot with
        {
            Plots =
            [
                bars with
                {
                    HasLegend = true,
                    Series =
                    [
                        bars.Series[0] with
                        {
                            Name = Words.Of("plot.spread.rigs"),
                        },
                        At(
                            Words.Of("plot.spread.under", Wording.Percent(draws.Quantile05)),
                            draws.Quantile05,
                            s_dashed
                        ),
                        At(Words.Of("plot.spread.half", Wording.Percent(draws.Median)), draws.Median, Pen.Built),
                        At(Words.Of("plot.spread.over", Wording.Percent(draws.Quantile95)), draws.Quantile95, s_dotted),
                    ],
                },
            ],
        };
    }

    private static readonly Pen s_dashed = new(DrawnRole.Ink, LineWidth.Wide, LineType.Dashed);
    private static readonly Pen s_dotted = new(DrawnRole.Ink, LineWidth.Wide, LineType.LongDashDot);

    private static double WidthOf(HistogramBins bins) => (bins.To - bins.From) / Math.Max(1, bins.Counts.Count);

    private static Plot Bars(string label, DrawDistribution draws)
    {
        var (bins, width) = (draws.Bins, WidthOf(draws.Bins));
        var bars = bins.Counts.Select((count, i) => ((bins.From + ((i + 0.5) * width)) * 100, (double)count)).ToList();
        return new(new(label), new(Words.Of("plot.spread.axis.rigs")) { Low = 0 })
        {
            Series = [new("", bars, SeriesKind.Bars) { BarWidth = width * 100 }],
        };
    }

    private static PlotTable Counts(string name, string key, DrawDistribution draws)
    {
        var (bins, width) = (draws.Bins, WidthOf(draws.Bins));
        return new(
            [
                new(name + ", from", Words.Of($"plot.column.{key}.from"), "%"),
                new(name + ", to", Words.Of($"plot.column.{key}.to"), "%"),
                new("Simulated rigs", Words.Of("plot.column.rigs"), ""),
            ],
            [
                .. bins.Counts.Select(
                    (count, i) =>
                        new double?[] { (bins.From + (i * width)) * 100, (bins.From + ((i + 1) * width)) * 100, count }
                ),
            ]
        );
    }
}
