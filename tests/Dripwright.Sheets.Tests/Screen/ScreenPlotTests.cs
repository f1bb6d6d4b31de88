using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Plots;
using Dripwright.Sheets.Screen;
using Dripwright.Sheets.Tests.Bench;
using SkiaSharp;

namespace Dripwright.Sheets.Tests.Screen;

public sealed class ScreenPlotTests
{
    public static TheoryData<string> Demos => [.. BenchPlans.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Every_plot_can_be_drawn_exported_and_read_back(string demo)
    {
        var plots = ScreenPlot.All(BenchPlans.Demo(demo));
        Assert.Equal(plots.Count, plots.Select(p => p.Key).Distinct().Count());
        foreach (var plot in plots)
        {
            Assert.All(
                [plot.Svg(), plot.Svg(90), plot.SvgFile()],
                svg => Assert.Equal("svg", XDocument.Parse(svg).Root!.Name.LocalName)
            );
            Assert.NotEmpty(plot.Numbers);
            Assert.All(plot.Data.Rows, row => Assert.Equal(plot.Data.Columns.Count, row.Count));
            RoundTrip(plot);
        }
    }

    [Theory]
    [InlineData(UnitSystem.Metric, 3.6e6, 1, 1000)]
    [InlineData(UnitSystem.Us, 951019.388489, 3.280839895, 6894.757293168)]
    public void The_numbers_behind_the_plots_are_those_of_the_plan(
        UnitSystem units,
        double flow,
        double metre,
        double pascals
    )
    {
        var plan = BenchPlans.Demo(BenchPlans.FoodBank);
        var plots = ScreenPlot.All(plan, units).ToDictionary(p => p.Key);
        var pump = plots["pump"].Data;
        Same(plan.Feed.PumpCurve.Select(p => (p.Flow * flow, p.Head * metre)), Pairs(pump, 0, 1));
        Same(plan.Feed.SystemCurve.Select(p => (p.Flow * flow, p.Head * metre)), Pairs(pump, 0, 2));
        Same([(plan.Feed.OperatingPoint!.Flow * flow, plan.Feed.OperatingPoint.Head * metre)], Pairs(pump, 0, 3));

        var line = plan.Feed.Lines.Single(l => l.Run == "F1");
        Same(line.Points.Select(p => (p.Station * metre, p.Pressure / pascals)), Pairs(plots["line-F1"].Data, 0, 1));
        Same(line.Points.Select(p => (p.Station * metre, Math.Abs(p.Flow) * flow)), Pairs(plots["line-F1"].Data, 0, 2));

        var drain = plan.Drain.Runs.Single(r => r.Run == "D1");
        var low = drain.Surface.Min(p => p.Invert);
        var high = units == UnitSystem.Us ? 1 / 0.0254 : 1000;
        Same(
            drain.Surface.Select(p => (p.Station * metre, (p.Invert + p.Depth - low) * high)).Reverse(),
            Pairs(plots["drain-D1"].Data, 0, 2)
        );

        var scatter = plan.Feed.Scatter!;
        Assert.Equal(
            scatter.WeakestRatio.Bins.Counts.Select(c => (double?)c),
            plots["spread-weakest-pot"].Data.Rows.Select(r => r[2])
        );
        Assert.Equal(scatter.Draws, plots["spread-uniformity"].Data.Rows.Sum(r => r[2]));
    }

    [Fact]
    public void The_plotted_points_are_those_of_the_table()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var words = new Wording(plan.Rig.Units);
        var plot = PumpPlot.Of(plan, words, new(words.Us));
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(Pairs(plot.Data, 0, i + 1), plot.Plots[0].Series[i].Points);
        }
    }

    [Fact]
    public void Gravity_feed_has_no_pump_plot_and_a_plan_without_draws_no_spread()
    {
        Assert.DoesNotContain(ScreenPlot.All(BenchPlans.Demo("awkward/gravity")), p => p.Key == "pump");
        var plan = BenchPlans.Demo(BenchPlans.School);
        var plain = plan with { Feed = plan.Feed with { Scatter = null } };
        Assert.DoesNotContain(ScreenPlot.All(plain), p => p.Key.StartsWith("spread", StringComparison.Ordinal));
    }

    [Fact]
    public void A_picture_of_dots_has_the_size_that_was_asked_for_and_is_the_same_each_time()
    {
        var plot = ScreenPlot.All(BenchPlans.Demo(BenchPlans.School))[0];
        var png = plot.Png();
        using var picture = SKBitmap.Decode(png);
        Assert.Equal(1200, picture.Width);
        Assert.Equal(png, plot.Png());
        Assert.Contains(picture.Pixels, p => p.Red < 40);
    }

    [Fact]
    public void Plots_and_their_files_are_the_same_in_every_culture()
    {
        var plan = BenchPlans.Demo(BenchPlans.FoodBank);
        var before = CultureInfo.CurrentCulture;
        var first = Written();
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(first, Written());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        string Written() =>
            string.Concat(ScreenPlot.All(plan).Select(p => p.Svg() + p.Words() + Encoding.UTF8.GetString(p.Csv())));
    }

    private static void RoundTrip(ScreenPlot plot)
    {
        var lines = Encoding.UTF8.GetString(plot.Csv()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(plot.Data.Rows.Count + 1, lines.Length);
        foreach (var (row, line) in plot.Data.Rows.Zip(lines.Skip(1)))
        {
            var read = line.Split(',')
                .Select(f => f.Length == 0 ? (double?)null : double.Parse(f, CultureInfo.InvariantCulture))
                .ToList();
            Assert.Equal(row.Count, read.Count);
            Assert.All(
                row.Zip(read),
                pair =>
                {
                    Assert.Equal(pair.First is null, pair.Second is null);
                    Assert.Equal(pair.First ?? 0, pair.Second ?? 0, Math.Abs(pair.First ?? 0) * 6e-7);
                }
            );
        }
    }

    private static List<(double, double)> Pairs(PlotTable table, int x, int y) =>
        [.. table.Rows.Where(r => r[y] is not null).Select(r => (r[x]!.Value, r[y]!.Value))];

    private static void Same(IEnumerable<(double X, double Y)> expected, List<(double X, double Y)> actual)
    {
        var list = expected.ToList();
        Assert.Equal(list.Count, actual.Count);
        Assert.All(
            list.Zip(actual),
            pair =>
            {
                Assert.Equal(pair.First.X, pair.Second.X, Math.Abs(pair.First.X) * 1e-9);
                Assert.Equal(pair.First.Y, pair.Second.Y, Math.Abs(pair.First.Y) * 1e-9);
            }
        );
    }
}
