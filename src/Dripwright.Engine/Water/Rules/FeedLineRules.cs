using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Judges the pump's operating point, how fast the water runs, and what it does when the pump stops.</summary>
internal sealed class FeedLineRules(Rig rig, RigLayout layout, FeedPlan feed, Judgement judge)
{
    /// <summary>[-] Of the open flow: below it next to all of the pump's power becomes heat. Common practice.</summary>
    private const double NearShutOff = 0.1;

    /// <summary>[m³] A cupful is what any line loses; more than that lands in the low pots at every stop.</summary>
    private const double Cupful = 0.0005;

    /// <summary>[m] Less than this at a curve's end is the rounding of its drawing.</summary>
    private const double LeastHead = 1e-6;

    public void Judge()
    {
        PumpPoint();
        Velocities();
        Flushing();
        Stop();
    }

    private void PumpPoint()
    {
        if (feed.OperatingPoint is not { } point || feed.PumpCurve.Count == 0)
        {
            return;
        }

        var openFlow = feed.PumpCurve[^1].Flow;
        var share = point.Flow / openFlow;
        var flow = Measured.Flow(point.Flow);
        if (feed.PumpCurve[^1].Head > LeastHead && share >= 0)
        {
            // A leaflet seldom goes as far as the open flow: how near that is, nobody knows.
            if (share > 1 + 1e-9)
            {
                judge.Add(
                    "pump-past-leaflet",
                    [Place.Pump],
                    ["pump.curve"],
                    Phrase.Of("finding.pump-past-leaflet.what"),
                    Phrase.Of(flow),
                    Limit.AtMost(Measured.Flow(openFlow)),
                    Phrase.Of("finding.pump-past-leaflet.remedy")
                );
            }
        }
        else if (share is > 1 + 1e-9 or < 0)
        {
            judge.Add(
                "pump-off-curve",
                [Place.Pump],
                ["pump.model", "feed.throttle"],
                Phrase.Of("finding.pump-off-curve.what"),
                Phrase.Of(flow),
                Phrase.Of("finding.pump-off-curve.limit", Measured.Flow(openFlow)),
                Phrase.Of("finding.pump-off-curve.remedy")
            );
        }
        else if (share > RuleBook.Limit("pump-near-open-flow"))
        {
            var bypassed = rig.Feed.Bypass > 0;
            judge.Add(
                "pump-near-open-flow",
                [Place.Pump],
                bypassed ? ["feed.bypass", "feed.emitter", "pump.model"] : ["feed.emitter", "pump.model"],
                Phrase.Of("finding.pump-near-open-flow.what"),
                Phrase.Of(flow),
                Phrase.Of(
                    "finding.pump-near-open-flow.limit",
                    Measured.Share(RuleBook.Limit("pump-near-open-flow")),
                    Measured.Flow(openFlow)
                ),
                bypassed
                    ? Phrase.Of("finding.pump-near-open-flow.bypass.remedy")
                    : Phrase.Of("finding.pump-near-open-flow.remedy")
            );
        }
        else if (share < NearShutOff && point.WarmingPerDay > RuleBook.Limit("pump-near-shut-off"))
        {
            judge.Add(
                "pump-near-shut-off",
                [Place.Pump],
                ["pump.model", "timer", "reservoir.tank"],
                Phrase.Of("finding.pump-near-shut-off.what", flow, Measured.Flow(openFlow)),
                Phrase.Of(Measured.Warming(point.WarmingPerDay)),
                Limit.AtMost(Measured.Warming(RuleBook.Limit("pump-near-shut-off"))),
                Phrase.Of("finding.pump-near-shut-off.remedy")
            );
        }
    }

    private void Velocities()
    {
        var most = RuleBook.Limit("velocity-high");
        var runs = layout.Runs.ToDictionary(r => r.Label);
        foreach (var run in feed.Runs.Where(r => r.Velocity > most && r.To != "tank"))
        {
            judge.Add(
                "velocity-high",
                [Place.OfRun(run.Run, runs[run.Run].Row)],
                [run.From == "entry" ? "feed.line" : "feed.header.pipe"],
                Phrase.Of("finding.velocity-high.what"),
                Phrase.Of(Measured.Velocity(run.Velocity)),
                Limit.AtMost(Measured.Velocity(most)),
                Phrase.Of("finding.velocity-high.remedy")
            );
        }
    }

    private void Flushing()
    {
        var least = RuleBook.Limit("flush-slow");
        List<LineProfile> slow = [.. feed.Lines.Where(l => l.FlushVelocity < least).OrderBy(l => l.FlushVelocity)];
        if (slow.Count > 0)
        {
            judge.Add(
                "flush-slow",
                [.. slow.Select(l => Place.OfRun(l.Run, l.Row))],
                ["feed.line"],
                Phrase.Of("finding.flush-slow.what"),
                Phrase.Of(Measured.Velocity(slow[0].FlushVelocity!.Value)),
                Limit.AtLeast(Measured.Velocity(least)),
                Phrase.Of("finding.flush-slow.remedy")
            );
        }
    }

    // A header that lies nowhere above the water has no place for one, so it is laid before it is offered.
    private bool HasPlaceForHole() =>
        !rig.Feed.SiphonBreak
        && RigLayout.TryOf(rig with { Feed = rig.Feed with { SiphonBreak = true } }, layout.Parts.Catalogue)
            is { BreakHole: not null };

    private void Stop()
    {
        if (feed.Stop.Siphons)
        {
            // A hole that the rig says but for which the header has no place breaks no siphon.
            judge.Add(
                "tank-siphons",
                [Place.Reservoir],
                ["feed.siphonBreak", "feed.outletHeight"],
                Phrase.Of("finding.tank-siphons.what"),
                Phrase.Of("finding.tank-siphons.value"),
                Phrase.Of("finding.tank-siphons.limit"),
                Phrase.Of("finding.tank-siphons.remedy"),
                HasPlaceForHole() ? RigCure.Offered(RigCure.Yes("feed.siphonBreak")) : []
            );
        }

        if (feed.Stop.ThroughEmitters > Cupful)
        {
            judge.Add(
                "low-row-runs-off",
                [.. feed.Stop.LowRows.Select(Place.OfRow)],
                ["feed.outletHeight", "feed.emitter"],
                Phrase.Of("finding.low-row-runs-off.what"),
                Phrase.Of(Measured.Volume(feed.Stop.ThroughEmitters)),
                Limit.AtMost(Measured.Volume(Cupful)),
                Phrase.Of("finding.low-row-runs-off.remedy")
            );
        }
    }
}
