using Dripwright.Engine;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Plots;

/// <summary>Pressure and flow along the lines; lines that run alike are plotted once.</summary>
internal static class LinePlots
{
    public static IReadOnlyList<RigPlot> Of(Plan plan, Wording words, PlotUnits units) =>
        [
            .. plan
                .Feed.Lines.Where(line => line.Points.Count > 1)
                .GroupBy(line =>
                    string.Join(
                        ' ',
                        line.Points.Select(p => $"{Key(p.Station, 1e-4)} {Key(p.Pressure, 1)} {Key(p.Flow, 1e-9)}")
                    )
                )
                .Select(group => Line([.. group], words, units)),
        ];

    private static string Key(double value, double step) => QuantityWords.Number(Math.Round(value / step), "0");

    private static RigPlot Line(List<LineProfile> lines, Wording words, PlotUnits units)
    {
        var line = lines[0];
        var points = line.Points;
        var labels = BenchWords.Labels([.. lines.Select(l => l.Run)], 8);
        // Water may come from both ends; a plain line is shown without signs.
        var both = points.Any(p => p.Flow > 1e-12) && points.Any(p => p.Flow < -1e-12);
        double Shown(double si) => units.Flow(both ? si : Math.Abs(si));
        var pressure = new Plot(units.WayAxis, units.PressureAxis with { Low = 0 })
        {
            Title = Words.Of("plot.line.pressure"),
            Series =
            [
                new("", [.. points.Select(p => (units.Way(p.Station), units.Pressure(p.Pressure)))])
                {
                    Pen = Pen.Water,
                },
            ],
        };
        if (points.Any(p => p.Pressure < 0))
        {
            pressure = pressure with { Y = units.PressureAxis };
        }

        var through = new Plot(
            units.WayAxis,
            both ? new(Words.Of("plot.axis.flow.right", units.FlowUnit)) : units.FlowAxis
        )
        {
            Title = Words.Of("plot.line.flow"),
            Series =
            [
                new("", [.. points.Select(p => (units.Way(p.Station), Shown(p.Flow)))], SeriesKind.Step)
                {
                    Pen = Pen.Water,
                },
            ],
        };
        through = both ? through : through with { Y = through.Y with { Low = 0 } };
        return new()
        {
            Key = "line-" + line.Run,
            Title = Words.Of("plot.line.title", labels),
            Plots = [pressure, through],
            Numbers =
            [
                (Words.Of("plot.line.number.highest"), words.Pressure(points.Max(p => p.Pressure))),
                (Words.Of("plot.line.number.lowest"), words.Pressure(points.Min(p => p.Pressure))),
                (Words.Of("plot.line.number.greatest"), words.Flow(points.Max(p => Math.Abs(p.Flow)))),
                .. line.FlushVelocity is { } flush
                    ? new[] { (Words.Of("plot.line.number.flush"), words.Velocity(flush)) }
                    : [],
            ],
            Data = new(
                [
                    new("From the row's left end", Words.Of("plot.column.way"), units.WayUnit),
                    new("Pressure", Words.Of("plot.column.pressure"), units.PressureUnit),
                    both
                        ? new("Flow to the right", Words.Of("plot.column.flow.right"), units.FlowUnit)
                        : new("Flow", Words.Of("plot.column.flow"), units.FlowUnit),
                ],
                [
                    .. points.Select(p =>
                        new double?[] { units.Way(p.Station), units.Pressure(p.Pressure), Shown(p.Flow) }
                    ),
                ]
            ),
        };
    }
}
