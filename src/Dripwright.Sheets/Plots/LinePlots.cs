using Dripwright.Engine;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Sheets.Bench;
using Dripwright.Sheets.Drawing;
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
            Title = "Pressure in the line",
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

        var through = new Plot(units.WayAxis, new(units.FlowAxis.Label + (both ? ", to the right" : "")))
        {
            Title = "Flow in the line",
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
            Title = $"Along {labels}",
            Plots = [pressure, through],
            Numbers =
            [
                ("Highest pressure", words.Pressure(points.Max(p => p.Pressure))),
                ("Lowest pressure", words.Pressure(points.Min(p => p.Pressure))),
                ("Greatest flow", words.Flow(points.Max(p => Math.Abs(p.Flow)))),
                .. line.FlushVelocity is { } flush
                    ? new[] { ("Velocity at the end with its flush cap open", words.Velocity(flush)) }
                    : [],
            ],
            Data = new(
                [
                    new("From the row's left end", units.WayUnit),
                    new("Pressure", units.PressureUnit),
                    new(both ? "Flow to the right" : "Flow", units.FlowUnit),
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
