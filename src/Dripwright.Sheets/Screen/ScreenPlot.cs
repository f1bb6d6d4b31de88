using Dripwright.Engine;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Plots;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Screen;

/// <summary>A plot for a page: picture, key numbers, the table behind it, and the files to take away.</summary>
public sealed class ScreenPlot
{
    private const double LeastWidth = 70;
    private readonly RigPlot _plot;

    private ScreenPlot(RigPlot plot) => this._plot = plot;

    /// <summary>Short name, for ids and file names: "pump", "line-F1", "drain-D1", "spread-weakest-pot".</summary>
    public string Key => _plot.Key;

    /// <summary>Heading.</summary>
    public string Title => _plot.Title;

    /// <summary>Key numbers, each with its unit.</summary>
    public IReadOnlyList<(string What, string Value)> Numbers => _plot.Numbers;

    /// <summary>The numbers behind the plot, in the units of its axes.</summary>
    public PlotTable Data => _plot.Data;

    /// <summary>
    /// All plots of a plan: pump and rig, pressure and flow along each line, water in each drain, and the spread of the
    /// weakest pot and of the uniformity. Lines and drains that run alike are plotted once. What the plan does not hold, such
    /// as the pump of a gravity feed, has no plot.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units to show; those of the rig where null.</param>
    public static IReadOnlyList<ScreenPlot> All(Plan plan, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var words = new Wording(units ?? plan.Rig.Units);
        var axes = new PlotUnits(words.Us);
        List<RigPlot> plots =
        [
            PumpPlot.Of(plan, words, axes),
            .. LinePlots.Of(plan, words, axes),
            .. DrainPlots.Of(plan, words, axes),
        ];
        if (plan.Feed.Scatter is { } scatter)
        {
            plots.Add(ScatterPlots.Marked(ScatterPlots.Weakest(scatter), scatter.WeakestRatio));
            plots.Add(ScatterPlots.Marked(ScatterPlots.Uniformity(scatter), scatter.LowQuarter));
        }

        return [.. plots.Where(p => p.Plots.Count > 0).Select(p => new ScreenPlot(p))];
    }

    /// <summary>
    /// The weeks ahead: the EC and the sodium of all ways of topping up, and each main element of one of them. None where
    /// nothing goes round.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="way">Which of the ways the elements are shown of, from 0; the last where there are fewer.</param>
    public static IReadOnlyList<ScreenPlot> Weeks(Plan plan, int way)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentOutOfRangeException.ThrowIfNegative(way);
        return plan.Nutrients is { Outlook: { } outlook } feed
            ? [.. LoopPlots.Of(feed, outlook, Math.Min(way, outlook.All.Count - 1)).Select(p => new ScreenPlot(p))]
            : [];
    }

    /// <summary>What the plot shows, in a sentence or two; "" where the heading says it all.</summary>
    /// <param name="width">[mm] Width of the picture, 70 or more.</param>
    public string Words(double width = 150) => _plot.Words(width, HeightOf(width));

    /// <summary>The plot as a piece of a page, which brings <see cref="ScreenView.Styles"/>.</summary>
    /// <param name="width">[mm] Width, 70 or more: letters are about 3 mm high, so 150 suits 700 px, 90 suits a phone.</param>
    /// <param name="idPrefix">Put before every id; the key and a dash where null.</param>
    public string Svg(double width = 150, string? idPrefix = null) =>
        SvgWriter.Write(Sheet(width), SvgOptions.Inline with { IdPrefix = idPrefix ?? Key + "-" });

    /// <summary>The plot as a file that looks right on its own, title included.</summary>
    /// <param name="width">[mm] Width, 70 or more.</param>
    public string SvgFile(double width = 150) => SvgWriter.Write(Sheet(width, titled: true), SvgOptions.File);

    /// <summary>The plot as a PNG file of about 200 dots an inch, title included.</summary>
    /// <param name="width">[mm] Width, 70 or more.</param>
    public byte[] Png(double width = 150) => PngWriter.Write(Sheet(width, titled: true));

    /// <summary>The table behind the plot as CSV.</summary>
    public byte[] Csv() => Data.Csv();

    private double HeightOf(double width) => Math.Clamp(width * 0.55, 60, 90) * (1 + (0.6 * (_plot.Plots.Count - 1)));

    private Sheet Sheet(double width, bool titled = false)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, LeastWidth);
        var (height, top) = (HeightOf(width), titled ? 8 : 0);
        List<Element> elements = [RigPlotPicture.Draw(_plot, new Box(0, top, width, height).Inset(titled ? 3 : 0.5))];
        if (titled)
        {
            elements.Insert(0, new Text(Title, new(3, 8), TextStyle.Body.Bold));
        }

        var told = string.Join("; ", Numbers.Select(n => $"{n.What}: {n.Value}")).Replace('\u00a0', ' ');
        return new(new("screen", width, height + top), Title, elements) { Description = told };
    }
}
