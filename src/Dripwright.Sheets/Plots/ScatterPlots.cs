using Dripwright.Engine.Water;
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
            Title = "If emitters differ and some clog",
            Words = (_, _) =>
                $"{Wording.Count(scatter.Draws)} rigs like this one were drawn, each with emitters as uneven as they are made and "
                + "some partly clogged. The bars show how often the weakest pot came out how weak.",
            Plots = [Bars("Weakest pot, % of the mean pot", weakest)],
            Numbers =
            [
                ("Weakest pot, half of the rigs over", Wording.Percent(weakest.Median)),
                ("Weakest pot, one rig in twenty under", Wording.Percent(weakest.Quantile05)),
                ("Chance of a pot that gets too little", Wording.Percent(scatter.ChanceOfWeakPot)),
                ("Uniformity of the low quarter, half of the rigs over", Wording.Percent(scatter.LowQuarter.Median)),
            ],
            Data = Counts("Weakest pot", weakest),
        };
    }

    /// <summary>The uniformity of the low quarter of the pots.</summary>
    public static RigPlot Uniformity(ScatterResult scatter)
    {
        var even = scatter.LowQuarter;
        return new()
        {
            Key = "spread-uniformity",
            Title = "How even such rigs are",
            Words = (_, _) =>
                $"The same {Wording.Count(scatter.Draws)} rigs. The bars show how often the quarter of the pots that gets least came "
                + "out how near to the mean.",
            Plots = [Bars("Low quarter of the pots, % of the mean pot", even)],
            Numbers =
            [
                ("One rig in twenty under", Wording.Percent(even.Quantile05)),
                ("One rig in four under", Wording.Percent(even.Quantile25)),
                ("Half of the rigs over", Wording.Percent(even.Median)),
                ("One rig in four over", Wording.Percent(even.Quantile75)),
                ("One rig in twenty over", Wording.Percent(even.Quantile95)),
            ],
            Data = Counts("Low quarter of the pots", even),
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
                            Name = "drawn rigs",
                        },
                        At($"one rig in twenty under {Wording.Percent(draws.Quantile05)}", draws.Quantile05, Dashed),
                        At($"half of the rigs under {Wording.Percent(draws.Median)}", draws.Median, Pen.Built),
                        At($"one rig in twenty over {Wording.Percent(draws.Quantile95)}", draws.Quantile95, Dotted),
                    ],
                },
            ],
        };
    }

    private static readonly Pen Dashed = new(Role.Ink, LineWidth.Wide, LineType.Dashed);
    private static readonly Pen Dotted = new(Role.Ink, LineWidth.Wide, LineType.LongDashDot);

    private static double WidthOf(HistogramBins bins) => (bins.To - bins.From) / Math.Max(1, bins.Counts.Count);

    private static Plot Bars(string label, DrawDistribution draws)
    {
        var (bins, width) = (draws.Bins, WidthOf(draws.Bins));
        var bars = bins.Counts.Select((count, i) => ((bins.From + ((i + 0.5) * width)) * 100, (double)count)).ToList();
        return new(new(label), new("Drawn rigs") { Low = 0 })
        {
            Series = [new("", bars, SeriesKind.Bars) { BarWidth = width * 100 }],
        };
    }

    private static PlotTable Counts(string name, DrawDistribution draws)
    {
        var (bins, width) = (draws.Bins, WidthOf(draws.Bins));
        return new(
            [new(name + ", from", "%"), new(name + ", to", "%"), new("Drawn rigs", "")],
            [
                .. bins.Counts.Select(
                    (count, i) =>
                        new double?[] { (bins.From + (i * width)) * 100, (bins.From + ((i + 1) * width)) * 100, count }
                ),
            ]
        );
    }
}
