using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Plots;

namespace Dripwright.Sheets.Bench;

/// <summary>How the water runs: pump, lines, drains and what uneven emitters may do, each plot with its key numbers.</summary>
public static class PlotSheets
{
    private const double PlotHeight = 66;

    /// <summary>Most different lines, and most different drains, that are plotted.</summary>
    private const int MostPlotted = 8;

    private static string Title => Words.Of("bench.plots.title");

    /// <summary>The sheets.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var flow = new Flow(paper.Portrait, Title);
        var words = new Wording(plan.Rig.Units);
        var units = new PlotUnits(words.Us);
        if (!plan.Feed.Solved)
        {
            flow.Caution(Words.Of("bench.plots.unsolved", new PlanWords(plan.Rig.Units).Of(plan.Feed.Trouble)))
                .Space(2);
        }

        Add(flow, PumpPlot.Of(plan, words, units));
        Add(flow, LinePlots.Of(plan, words, units), "bench.plots.lines");
        Add(flow, DrainPlots.Of(plan, words, units), "bench.plots.drains");
        if (plan.Feed.Scatter is { } scatter)
        {
            Add(flow, ScatterPlots.Weakest(scatter));
        }
        else
        {
            flow.Heading(Words.Of("bench.plots.uneven")).Paragraph(Words.Of("bench.plots.unsimulated"));
        }

        return flow.Build();
    }

    private static void Add(Flow flow, IReadOnlyList<RigPlot> plots, string more)
    {
        foreach (var plot in plots.Take(MostPlotted))
        {
            Add(flow, plot);
        }

        if (plots.Count > MostPlotted)
        {
            flow.Paragraph(Words.Count(more, plots.Count - MostPlotted));
        }
    }

    private static void Add(Flow flow, RigPlot plot)
    {
        var table = new Table(
            new(Words.Of("bench.plots.column.what")),
            new(Words.Of("bench.plots.column.value"), Align.Right)
        );
        foreach (var (what, value) in plot.Numbers)
        {
            table.Row(what, value);
        }

        if (plot.Plots.Count == 0)
        {
            flow.Heading(plot.Title).Table(table);
            return;
        }

        // Two plots, one over the other, are not twice as high as one.
        var height = PlotHeight * (1 + (0.6 * (plot.Plots.Count - 1)));
        var words = plot.Words(flow.Width * 0.62, height);
        flow.Beside(plot.Title, words, height, box => RigPlotPicture.Draw(plot, box), table);
    }
}
