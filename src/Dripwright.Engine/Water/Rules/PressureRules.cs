using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>Judges whether pipes, hose and fittings bear what the pump can press: with every emitter shut, all its lift.</summary>
internal sealed class PressureRules(RigLayout layout, Judgement judge)
{
    public void Judge()
    {
        var feeds = layout.Runs.Where(r => r.Service is RunService.Header or RunService.Feed or RunService.Bypass);
        var over = feeds
            .Select(run => (Run: run, Most: MostIn(run), Bears: Bears(run)))
            .Where(r => r.Most > r.Bears)
            .ToList();
        if (over.Count == 0)
        {
            return;
        }

        var worst = over.MaxBy(r => r.Most / r.Bears);
        judge.Add(
            "pressure-over-rating",
            [.. over.Select(r => Place.OfRun(r.Run.Label, r.Run.Row))],
            layout.Parts.Pump is { } pump
                ? [pump.IsOwn ? "pump.shutOffHead" : "pump.model", "feed.line", "feed.header.pipe"]
                : ["reservoir.base", "feed.line", "feed.header.pipe"],
            Phrase.Of("finding.pressure-over-rating.what"),
            Phrase.Of(Measured.Pressure(worst.Most)),
            Limit.AtMost(Measured.Pressure(worst.Bears)),
            Phrase.Of("finding.pressure-over-rating.remedy")
        );
    }

    /// <summary>[Pa] Gauge pressure at its lowest point outside the water, nothing flowing.</summary>
    private double MostIn(PipeRun run)
    {
        var celsius = layout.Resolved.Rig.Reservoir.WaterTemperature - 273.15;
        var lift = layout.Parts.Pump?.Curve[0].Head ?? 0;
        var lowest = run.Path.Min(p => p.Z);
        // What stands in the reservoir has the same water outside.
        var low = lift > 0 && run.Service != RunService.Feed ? Math.Max(lowest, layout.Tank.Full) : lowest;
        return WaterProperties.SpecificWeight(celsius) * (layout.Tank.Full + lift - low);
    }

    /// <summary>[Pa] What its weakest known part bears; no bound where none is known.</summary>
    private static double Bears(PipeRun run) =>
        run
            .Fittings.Select(f => f.Type.PressureRating)
            .Append(run.Pipe.PressureRating)
            .OfType<double>()
            .DefaultIfEmpty(double.PositiveInfinity)
            .Min();
}
