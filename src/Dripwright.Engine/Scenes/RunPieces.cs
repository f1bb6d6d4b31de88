using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Scenes;

/// <summary>Runs of pipe and hose with their fittings and the speed of the water in them.</summary>
internal sealed class RunPieces(Plan plan, SceneDraft draft)
{
    /// <summary>[-] Outside of a fitting over its pipe's.</summary>
    private const double FittingOverPipe = 1.25;

    private readonly IReadOnlyDictionary<string, double> _flows = RunFlows.Of(plan);
    private readonly RunSpeeds _speeds = new(plan);

    public void AddDrains()
    {
        foreach (var run in plan.Layout.Rows.Select(row => row.Drain).Concat(plan.Layout.Returns))
        {
            Add(run, SceneStage.Drain, SceneMatter.Return);
        }
    }

    public void AddFeeds()
    {
        var header = plan.Layout.Supply.Select(link => link.Run).Distinct();
        foreach (var run in header.Concat(plan.Layout.Rows.SelectMany(row => row.Feed)))
        {
            Add(run, SceneStage.Feed, SceneMatter.Feed);
        }
    }

    private void Add(PipeRun run, SceneStage stage, SceneMatter matter)
    {
        var depths = plan.Drain.Runs.Where(drain => drain.Label == run.Label).ToList();
        draft.Begin(
            new(SceneNames.Run(run.Label), SceneKind.Run, stage, run.Label, run.Row, 0)
            {
                Flow = _flows.TryGetValue(run.Label, out var flow) ? flow : null,
                Depth = depths.Count > 0 ? depths.Max(drain => drain.DeepestRatio) : null,
            }
        );
        var radius = run.Pipe.OutsideDiameter / 2;
        var stretches = _speeds.Of(run);
        foreach (var (from, to, speed) in stretches)
        {
            foreach (var (a, b) in run.Legs(from, to))
            {
                draft.Rod(matter, a, b, radius, speed);
            }
        }

        foreach (var fitting in run.Fittings)
        {
            var from = run.At(Math.Clamp(fitting.Station - fitting.Reach, run.Start, run.End));
            var to = run.At(Math.Clamp(fitting.Station + fitting.Reach, run.Start, run.End));
            // At a corner the socket of an elbow lies along each leg.
            var middle = run.At(Math.Clamp(fitting.Station, run.Start, run.End));
            draft.Rod(matter, from, middle, radius * FittingOverPipe);
            draft.Rod(matter, middle, to, radius * FittingOverPipe);
        }
    }
}
