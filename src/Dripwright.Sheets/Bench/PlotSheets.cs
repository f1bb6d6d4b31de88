using Dripwright.Engine;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Plots;

namespace Dripwright.Sheets.Bench;

/// <summary>How the water runs: pump, lines, drains and what uneven emitters may do, each plot with its key numbers.</summary>
public static class PlotSheets
{
    private const string Title = "How the water runs";
    private const double PlotHeight = 66;

    /// <summary>The sheets.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var flow = new Flow(paper.Portrait, Title);
        var words = new BenchWords(plan.Rig.Units);
        var units = new PlotUnits(words.Us);
        if (!plan.Feed.Solved)
        {
            flow.Caution("The feed could not be solved: " + plan.Feed.Trouble).Space(2);
        }

        Pump(flow, plan, words, units);
        LinePlots.Add(flow, plan, words, units, PlotHeight);
        DrainPlots.Add(flow, plan, words, units, PlotHeight);
        Scatter(flow, plan);
        return flow.Build();
    }

    private static void Pump(Flow flow, Plan plan, BenchWords words, PlotUnits units)
    {
        var feed = plan.Feed;
        if (feed.WorkingPoint is not { } point || feed.PumpCurve.Count < 2)
        {
            flow.Heading("Gravity feed")
                .Table(
                    Numbers()
                        .Row("Water over the mean emitter", words.Head(feed.StaticHead))
                        .Row("Flow in all", words.Flow(feed.TotalFlow))
                        .Row("Flow in all at the lowest level", words.Flow(feed.TotalFlowAtLowest))
                );
            return;
        }

        List<Series> series =
        [
            new("pump", [.. feed.PumpCurve.Select(p => (units.Flow(p.Flow), units.Head(p.Head)))]) { Pen = Pen.Built },
        ];
        if (feed.SystemCurve.Count > 1)
        {
            series.Add(
                new(
                    "rig: what it asks for",
                    [.. feed.SystemCurve.Select(p => (units.Flow(p.Flow), units.Head(p.Head)))]
                )
                {
                    Pen = new(Role.Water, LineWidth.Wide, LineType.Dashed),
                }
            );
        }

        series.Add(
            new("working point", [(units.Flow(point.Flow), units.Head(point.Head))], SeriesKind.Points)
            {
                Marker = Marker.Dot,
            }
        );
        // The rig's curve may climb far over the pump's: the plot ends a little over what the pump can do.
        var top = feed.PumpCurve.Max(p => p.Head) * 1.3;
        var plot = new Plot(units.FlowAxis with { Low = 0 }, units.HeadAxis with { Low = 0, High = units.Head(top) })
        {
            Series = series,
            HasLegend = true,
            Notes =
            [
                new PlotNote(
                    units.Flow(point.Flow),
                    units.Head(point.Head),
                    $"works here:\n{words.Flow(point.Flow)} at {words.Head(point.Head)}",
                    6,
                    -9
                ),
            ],
        };
        var table = Numbers()
            .Row("Flow through the pump", words.Flow(point.Flow))
            .Row("Head it gives", words.Head(point.Head))
            .Row("Out of the emitters", words.Flow(feed.TotalFlow))
            .Row("Out of the emitters at the lowest level", words.Flow(feed.TotalFlowAtLowest));
        if (feed.BypassFlow > 0)
        {
            table.Row("Back through the bypass", words.Flow(feed.BypassFlow));
        }

        table.Row("Power it takes", $"{BenchWords.Number(point.Power, "0")}\u00a0W");
        flow.Beside("Pump and rig", "", PlotHeight, plot.Draw, table);
    }

    private static void Scatter(Flow flow, Plan plan)
    {
        if (plan.Feed.Scatter is not { } scatter)
        {
            flow.Heading("Uneven emitters").Paragraph("Not drawn: no water comes, or the plan was made without draws.");
            return;
        }

        var weakest = scatter.WeakestRatio;
        var bins = weakest.Bins;
        var width = (bins.To - bins.From) / Math.Max(1, bins.Counts.Count);
        var bars = bins.Counts.Select((count, i) => ((bins.From + ((i + 0.5) * width)) * 100, (double)count)).ToList();
        var plot = new Plot(new("Weakest pot, % of the mean pot"), new("Drawn rigs") { Low = 0 })
        {
            Series = [new("", bars, SeriesKind.Bars) { BarWidth = width * 100 }],
        };
        flow.Beside(
            "If emitters differ and some clog",
            $"{BenchWords.Count(scatter.Draws)} rigs like this one were drawn, each with emitters as uneven as they are made and "
                + "some partly clogged. The bars show how often the weakest pot came out how weak.",
            PlotHeight,
            plot.Draw,
            Numbers()
                .Row("Weakest pot, half of the rigs over", BenchWords.Percent(weakest.Median))
                .Row("Weakest pot, one rig in twenty under", BenchWords.Percent(weakest.Quantile05))
                .Row("Chance of a pot that gets too little", BenchWords.Percent(scatter.ChanceOfWeakPot))
                .Row(
                    "Evenness of the low quarter, half of the rigs over",
                    BenchWords.Percent(scatter.LowQuarter.Median)
                )
        );
    }

    /// <summary>A table of key numbers.</summary>
    internal static Table Numbers() => new(new("What"), new("Value", Align.Right));
}
