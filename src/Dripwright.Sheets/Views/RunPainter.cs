using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Scenes;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Draws runs of pipe: feed in wide blue, drain in a lighter dashed line, arrows the way the water runs.</summary>
/// <param name="rig">The rig.</param>
/// <param name="project">Where a place in the room falls on the paper.</param>
internal sealed class RunPainter(Rig rig, Func<Vector3, Point> project)
{
    /// <summary>[mm] A stretch must be so long to bear an arrow.</summary>
    private const double RoomForArrow = 9;

    /// <summary>Pen of a run.</summary>
    public static Pen PenOf(PipeRun run) =>
        RunWays.IsVent(run) ? Pen.Hidden
        : run.Service is RunService.Drain or RunService.Return ? Pen.Return
        : Pen.Water;

    /// <summary>The run as a group that can be named and tapped.</summary>
    /// <param name="run">The run.</param>
    /// <param name="fittings">Whether fittings are marked.</param>
    public Group Draw(PipeRun run, bool fittings)
    {
        var pen = PenOf(run);
        var points = Distinct(run.Path.Select(project));
        var elements = new List<Element>
        {
            // A run that goes straight away from the reader shows as a small circle.
            points.Count < 2
                ? new Circle(points[0], 0.9, pen with { Type = LineType.Continuous })
                : new Polyline(points, pen),
        };
        foreach (var way in RunWays.Of(run, rig))
        {
            elements.AddRange(ArrowOn(run, way, pen.Role));
        }

        if (fittings)
        {
            elements.AddRange(run.Fittings.Select(f => Fitting(run, f)));
        }

        return new(elements)
        {
            Id = SceneNames.Run(run.Label),
            Class = "run " + run.Service.ToString().ToLowerInvariant(),
            Title = TitleOf(run),
            Description = run.Pipe.Name,
        };
    }

    /// <summary>What a run is, with its label and row.</summary>
    public static string TitleOf(PipeRun run)
    {
        var what = Words.Of("sheet.run." + Kind(run));
        return run.Row > 0
            ? Words.Of("sheet.run.of-row", what, run.Label, Wording.Count(run.Row))
            : Words.Of("sheet.run.alone", what, run.Label);
    }

    /// <summary>What a run is, within a sentence.</summary>
    public static string WordOf(PipeRun run) => Words.Of("sheet.run.word." + Kind(run));

    private static string Kind(PipeRun run) =>
        run.Service switch
        {
            _ when RunWays.IsVent(run) => "vent",
            RunService.Header => "header",
            RunService.Feed => "feed",
            RunService.Drain => "drain",
            RunService.Bypass => "bypass",
            _ => "return",
        };

    private Rectangle Fitting(PipeRun run, RunFitting fitting)
    {
        var at = project(run.At(Math.Clamp(fitting.Station, run.Start, run.End)));
        return new(new(at.X - 0.9, at.Y - 0.9, 1.8, 1.8), Pen.Thin, Fill.Paper);
    }

    private IEnumerable<Element> ArrowOn(PipeRun run, RunWay way, DrawnRole role)
    {
        var middle = way.From + ((way.To - way.From) * 0.4);
        var tip = project(run.At(middle));
        var before = project(run.At(middle - ((way.To - way.From) * 0.02)));
        var whole = project(run.At(way.To)) - project(run.At(way.From));
        var direction = tip - before;
        if (whole.Length < RoomForArrow || direction.Length < 1e-6)
        {
            return [];
        }

        return [Head(tip, double.RadiansToDegrees(Math.Atan2(direction.Y, direction.X)), role)];
    }

    /// <summary>An arrowhead on a wide line.</summary>
    public static Element Head(Point tip, double direction, DrawnRole role) =>
        Polyline.Polygon(
            [tip, tip + new Point(-3.2, -1.2).Turn(direction), tip + new Point(-3.2, 1.2).Turn(direction)],
            null,
            new(role)
        );

    private static List<Point> Distinct(IEnumerable<Point> points)
    {
        List<Point> kept = [];
        foreach (var point in points)
        {
            if (kept.Count == 0 || (point - kept[^1]).Length > 0.05)
            {
                kept.Add(point);
            }
        }

        return kept;
    }
}
