using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Sheets.Views;

/// <summary>A stretch of a run with the way its water takes.</summary>
/// <param name="From">[m] Station upstream.</param>
/// <param name="To">[m] Station downstream.</param>
internal readonly record struct RunWay(double From, double To);

/// <summary>Which way the water runs.</summary>
internal static class RunWays
{
    /// <summary>The stretches of a run, each with its way; none where no water runs, as in a vent.</summary>
    public static IReadOnlyList<RunWay> Of(PipeRun run, Rig rig) =>
        run.Service switch
        {
            RunService.Header or RunService.Bypass => [new(run.Start, run.End)],
            RunService.Feed => Feed(run, rig),
            _ when IsVent(run) => [],
            _ => Falling(run),
        };

    /// <summary>Whether the run is a vent: it carries air.</summary>
    public static bool IsVent(PipeRun run) => run.Label.StartsWith('V');

    private static RunWay[] Feed(PipeRun run, Rig rig)
    {
        var middle = (run.Start + run.End) / 2;
        var left = rig.Reservoir.At == RowEnd.Left;
        // Cross pieces of a loop: water parts at the entry; where it meets again nobody knows beforehand.
        if (run.Label.EndsWith('n'))
        {
            return [new(middle, run.Start), new(middle, run.End)];
        }

        if (run.Label.EndsWith('f'))
        {
            return [];
        }

        return rig.Feed.Entry switch
        {
            FeedEntry.Middle => [new(middle, run.Start), new(middle, run.End)],
            FeedEntry.BothEnds => [new(run.Start, middle), new(run.End, middle)],
            _ => left ? [new(run.Start, run.End)] : [new(run.End, run.Start)],
        };
    }

    private static List<RunWay> Falling(PipeRun run)
    {
        List<RunWay> ways = [];
        var total = run.Path.Zip(run.Path.Skip(1), (a, b) => a.DistanceTo(b)).Sum();
        var at = run.Start;
        for (var i = 1; i < run.Path.Count; i++)
        {
            var leg = total > 0 ? run.Path[i - 1].DistanceTo(run.Path[i]) / total * (run.End - run.Start) : 0;
            var fall = run.Path[i - 1].Z - run.Path[i].Z;
            // A level drain has no way of its own: it is drawn without an arrow.
            if (Math.Abs(fall) > 1e-9)
            {
                ways.Add(fall > 0 ? new(at, at + leg) : new(at + leg, at));
            }

            at += leg;
        }

        return ways;
    }
}
