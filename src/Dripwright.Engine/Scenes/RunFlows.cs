namespace Dripwright.Engine.Scenes;

/// <summary>What each run of pipe carries where it carries most.</summary>
public static class RunFlows
{
    /// <summary>[m³/s] The greatest flow in each run, by its label.</summary>
    /// <param name="plan">The plan.</param>
    public static IReadOnlyDictionary<string, double> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var flows = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var run in plan.Feed.Runs)
        {
            Note(run.Run, run.Flow);
        }

        foreach (var line in plan.Feed.Lines)
        {
            foreach (var point in line.Points)
            {
                Note(line.Run, point.Flow);
            }
        }

        foreach (var run in plan.Drain.Runs)
        {
            Note(run.Label, run.Flow);
        }

        return flows;

        void Note(string run, double flow) => flows[run] = Math.Max(flows.GetValueOrDefault(run), Math.Abs(flow));
    }
}
