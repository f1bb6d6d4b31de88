using Dripwright.Engine;
using Dripwright.Engine.Water;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Plots;

namespace Dripwright.Sheets.Bench;

/// <summary>Pressure and flow along the lines; lines that run alike are plotted once.</summary>
internal static class LinePlots
{
    /// <summary>Most different lines that are plotted.</summary>
    private const int MostPlotted = 8;

    public static void Add(Flow flow, Plan plan, BenchWords words, PlotUnits units, double height)
    {
        var alike = plan
            .Feed.Lines.Where(line => line.Points.Count > 1)
            .GroupBy(line =>
                string.Join(
                    ' ',
                    line.Points.Select(p => $"{Key(p.Station, 1e-4)} {Key(p.Pressure, 1)} {Key(p.Flow, 1e-9)}")
                )
            )
            .Select(group => group.ToList())
            .ToList();
        foreach (var lines in alike.Take(MostPlotted))
        {
            Line(flow, lines, words, units, height);
        }

        if (alike.Count > MostPlotted)
        {
            flow.Paragraph(
                $"{BenchWords.Count(alike.Count - MostPlotted)} more lines run differently and are not plotted."
            );
        }
    }

    private static string Key(double value, double step) => BenchWords.Number(Math.Round(value / step), "0");

    private static void Line(Flow flow, List<LineProfile> lines, BenchWords words, PlotUnits units, double height)
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
        var table = PlotSheets
            .Numbers()
            .Row("Highest pressure", words.Pressure(points.Max(p => p.Pressure)))
            .Row("Lowest pressure", words.Pressure(points.Min(p => p.Pressure)))
            .Row("Greatest flow", words.Flow(points.Max(p => Math.Abs(p.Flow))));
        if (line.FlushVelocity is { } flush)
        {
            table.Row("Velocity at the end with its flush cap open", words.Velocity(flush));
        }

        Element Both(Box box)
        {
            var (upper, lower) = box.CutTop(box.Height / 2);
            return new Group([pressure.Draw(upper), through.Draw(lower)]);
        }

        flow.Beside($"Along {labels}", "", height * 1.6, Both, table);
    }
}
