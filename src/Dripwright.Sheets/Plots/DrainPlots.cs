using Dripwright.Engine;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Plots;

/// <summary>The water surface along the drains; drains that run alike are plotted once.</summary>
internal static class DrainPlots
{
    public static IReadOnlyList<RigPlot> Of(Plan plan, Wording words, PlotUnits units) =>
        [
            .. plan
                .Drain.Runs.Where(run => run.Surface.Count > 1)
                .GroupBy(run =>
                    string.Join(
                        ' ',
                        run.Surface.Select(p =>
                            $"{Key(p.Station - run.Surface[0].Station)} {Key(p.Invert - run.Surface[0].Invert)} {Key(p.Depth)}"
                        )
                    )
                )
                .Select(group => Drain(plan, [.. group], words, units)),
        ];

    private static string Key(double value) => QuantityWords.Number(Math.Round(value * 1e4), "0");

    private static RigPlot Drain(Plan plan, List<DrainRunPlan> runs, Wording words, PlotUnits units)
    {
        var run = runs[0];
        var bore = BoreOf(plan, run);
        // Two points share each inflow's place, so the list is turned round, not sorted.
        var points = run.Surface.ToList();
        if (points[0].Station > points[^1].Station)
        {
            points.Reverse();
        }

        var low = points.Min(p => p.Invert);
        (double, double) At(SurfacePoint p, double over) => (units.Way(p.Station), units.Height(p.Invert + over - low));
        List<(double X, double Y)> invert = [.. points.Select(p => At(p, 0))];
        List<(double X, double Y)> surface = [.. points.Select(p => At(p, p.Depth))];
        List<(double X, double Y)> crown = [.. points.Select(p => At(p, bore))];
        var plot = new Plot(units.WayAxis with { Label = Label(units, run) }, units.HeightAxis with { Low = 0 })
        {
            Regions =
            [
                new("", [.. invert, .. surface.AsEnumerable().Reverse()], new(DrawnRole.Return, FillPattern.Tint)),
            ],
            Series =
            [
                new(Words.Of("plot.drain.top"), crown) { Pen = Pen.Hidden },
                new(Words.Of("plot.drain.surface"), surface) { Pen = Pen.Return },
                new(Words.Of("plot.drain.bottom"), invert) { Pen = Pen.Built },
            ],
            HasLegend = true,
        };
        return new()
        {
            Key = "drain-" + run.Run.Replace(' ', '-'),
            Title = Words.Of("plot.drain.title", BenchWords.Labels([.. runs.Select(r => words.Told.Of(r.Name))], 8)),
            Words = (width, height) => Exaggeration(points, bore, width, height),
            Plots = [plot],
            Numbers =
            [
                (Words.Of("plot.drain.number.flow"), words.Flow(run.Flow)),
                (
                    Words.Of("plot.drain.number.fullest"),
                    Words.Of("plot.drain.fullest", Wording.Percent(run.DeepestRatio), words.Length(run.DeepestStation))
                ),
                (
                    Words.Of("plot.drain.number.full"),
                    run.Capacity > 0 ? words.Flow(run.Capacity) : Words.Of("plot.drain.level")
                ),
                (Words.Of("plot.drain.number.stored"), words.Volume(run.Stored)),
                (
                    Words.Of("plot.drain.number.low"),
                    run.FreeFall ? Words.Of("plot.drain.free") : Words.Of("plot.drain.drowned")
                ),
                .. run.Pressurised
                    ? new[] { (Words.Of("plot.drain.number.pressurised"), Words.Of("plot.drain.pressurised")) }
                    : [],
            ],
            Data = new(
                [
                    run.Row > 0
                        ? new("From the row's left end", Words.Of("plot.column.way"), units.WayUnit)
                        : new("From its high end", Words.Of("plot.column.way.high"), units.WayUnit),
                    new("Inside bottom over the lowest point", Words.Of("plot.column.bottom"), units.HeightUnit),
                    new("Water surface", Words.Of("plot.column.surface"), units.HeightUnit),
                    new("Inside top", Words.Of("plot.column.top"), units.HeightUnit),
                    new("Depth of water", Words.Of("plot.column.depth"), units.HeightUnit),
                    new("Flow", Words.Of("plot.column.flow"), units.FlowUnit),
                ],
                [
                    .. points.Select(
                        (p, i) =>
                            new double?[]
                            {
                                units.Way(p.Station),
                                invert[i].Y,
                                surface[i].Y,
                                crown[i].Y,
                                units.Height(p.Depth),
                                units.Flow(p.Flow),
                            }
                    ),
                ]
            ),
        };
    }

    private static string Label(PlotUnits units, DrainRunPlan run) =>
        run.Row > 0 ? units.WayAxis.Label : Words.Of("plot.axis.way.high", units.WayUnit);

    private static double BoreOf(Plan plan, DrainRunPlan run) =>
        plan.Layout.Runs.FirstOrDefault(r => r.Label == run.Label)?.Pipe.InsideDiameter
        ?? plan.Layout.Parts.Drain.InsideDiameter;

    /// <summary>How much the plot stretches heights; about, because its axes end at round numbers.</summary>
    private static string Exaggeration(List<SurfacePoint> points, double bore, double width, double height)
    {
        var along = points[^1].Station - points[0].Station;
        var up = points.Max(p => p.Invert + bore) - points.Min(p => p.Invert);
        if (along <= 0)
        {
            return Words.Of("plot.drain.taller");
        }

        // Figures, labels and legend take about 15 mm of the width and 32 mm of the height.
        var times = (height - 32) / up / ((width - 15) / along);
        return times < 1.5
            ? Words.Of("plot.drain.alike")
            : Words.Of("plot.drain.times", QuantityWords.Number(times, "0"));
    }
}
