using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Scenes;

/// <summary>A stretch of a run in which the water has one speed.</summary>
/// <param name="From">[m] Station of its start.</param>
/// <param name="To">[m] Station of its end.</param>
/// <param name="Speed">[m/s] Positive towards greater stations.</param>
internal readonly record struct RunStretch(double From, double To, double Speed);

/// <summary>How fast the water runs along each run, as the plan has computed it.</summary>
internal sealed class RunSpeeds(Plan plan)
{
    /// <summary>The run from end to end in stretches.</summary>
    public IReadOnlyList<RunStretch> Of(PipeRun run)
    {
        var line = plan.Feed.Lines.FirstOrDefault(known => known.Run == run.Label);
        if (line is { Points.Count: > 1 })
        {
            var bore = Math.PI / 4 * run.Pipe.InsideDiameter * run.Pipe.InsideDiameter;
            return Closed(run, line.Points.Select(point => (point.Station, Speed: point.Flow / bore)));
        }

        var drains = plan.Drain.Runs.Where(drain => drain.Label == run.Label).ToList();
        if (drains.Count > 0)
        {
            return Closed(run, drains.SelectMany(Drained).OrderBy(at => at.Station));
        }

        // A header's or return's stations count the way the water goes.
        var speed = plan.Feed.Runs.Where(known => known.Run == run.Label).Select(known => known.Velocity);
        return [new(run.Start, run.End, speed.DefaultIfEmpty(0).Max())];
    }

    // From high end to low end; where that is from right to left, what runs left of a point is the point's own.
    private static IEnumerable<(double Station, double Speed)> Drained(Water.DrainRunPlan drain)
    {
        var surface = drain.Surface;
        var rises = surface[^1].Station >= surface[0].Station;
        return surface.Select(
            (point, i) => (point.Station, rises ? point.Velocity : -surface[Math.Max(i - 1, 0)].Velocity)
        );
    }

    // Each point's speed holds to the next; pipe beyond the outermost points has the nearest one's.
    private static List<RunStretch> Closed(PipeRun run, IEnumerable<(double Station, double Speed)> points)
    {
        List<RunStretch> stretches = [];
        var (from, speed) = (run.Start, (double?)null);
        foreach (var point in points)
        {
            var at = Math.Clamp(point.Station, from, run.End);
            if (at - from > 1e-6)
            {
                stretches.Add(new(from, at, speed ?? point.Speed));
                from = at;
            }

            speed = point.Speed;
        }

        if (run.End - from > 1e-6)
        {
            stretches.Add(new(from, run.End, speed ?? 0));
        }

        return stretches;
    }
}
