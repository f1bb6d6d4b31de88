using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Judges what the emitters get.</summary>
internal sealed class FeedRules(Rig rig, RigLayout layout, FeedPlan feed, Judgement judge)
{
    /// <summary>[Pa] A millimetre of water: less than this under the air's pressure is the solver's rounding.</summary>
    private const double AirPressure = 10;

    private const int MostNamed = 4;

    private readonly bool _anyDry = feed.Dry.Any();

    private bool Pumped => layout.Parts.Pump is not null;

    // [N/m³] Of the rig's own water.
    private double SpecificWeight => WaterProperties.SpecificWeight(rig.Reservoir.WaterTemperature - 273.15);

    public void Judge()
    {
        if (!feed.Solved)
        {
            judge.Add(
                "feed-unsolved",
                [Place.FeedLines],
                ["feed"],
                Phrase.Of("finding.feed-unsolved.what", feed.Trouble),
                Phrase.Of("finding.feed-unsolved.value"),
                Phrase.Of("finding.feed-unsolved.limit"),
                Phrase.Of("finding.feed-unsolved.remedy")
            );
            return;
        }

        new PressureRules(layout, judge).Judge();
        if (feed.TotalFlow <= 0)
        {
            NoWater();
            return;
        }

        // Pots that get nothing have a finding of their own; how uneven the row is then says nothing more.
        if (!_anyDry)
        {
            Uniformity();
        }

        UnderRange();
        OverRange();
        Primed();
        new FeedLineRules(rig, layout, feed, judge).Judge();
        new BreakHoleRules(rig, layout, feed, judge).Judge();
        new PotFeedRules(rig, layout, feed, judge).Judge();
    }

    private void NoWater()
    {
        var lift = Math.Max(0, -feed.StaticHead);
        var shutOff = layout.Parts.Pump is { } pump ? pump.Curve[0].Head : 0;
        string why;
        IReadOnlyList<Cure> cures = [];
        if (layout.Rows.All(r => r.Emitters.All(e => e.Open <= 0)))
        {
            why = "shut";
        }
        else
        {
            (var cause, cures) = new WaterTrials(rig, layout, judge.Proposes).Find();
            why =
                cause == DryCause.Throttle ? "throttle"
                : cause == DryCause.Bypass ? "bypass"
                : Pumped ? "pump"
                : "gravity";
        }

        judge.Add(
            "no-water",
            [Place.FeedLines],
            why switch
            {
                "shut" => ["feed.valveOpen"],
                "throttle" => ["feed.throttle"],
                "bypass" => ["feed.bypass"],
                "pump" => layout.Parts.Pump!.IsOwn
                    ? ["pump.shutOffHead", "pump.openFlow", "pump.curve", "feed.lineHeight", "reservoir.base"]
                    : ["pump.model", "feed.lineHeight", "reservoir.base"],
                _ => ["reservoir.base", "feed.lineHeight"],
            },
            Phrase.Of($"finding.no-water.{(why is "pump" or "gravity" ? "lift" : why)}.what"),
            Phrase.Of("finding.no-water.value", Measured.Head(lift)),
            Limit.AtMost(Measured.Head(shutOff)),
            Phrase.Of($"finding.no-water.{why}.remedy"),
            cures
        );
    }

    private void Uniformity()
    {
        var value = feed.Uniformity[0].Value;
        var poor = RuleBook.Limit("uniformity-poor");
        var fair = RuleBook.Limit("uniformity-fair");
        if (value >= fair || feed.Causes is not { } causes)
        {
            return;
        }

        var make = causes.Manufacture >= Math.Max(causes.Pressure, causes.Height);
        var height = !make && causes.Height > causes.Pressure;
        var told = Measured.Share(value);
        judge.Add(
            value < poor ? "uniformity-poor" : "uniformity-fair",
            [Place.FeedLines],
            make ? ["feed.emitter", "feed.emittersPerPot"]
                : height ? ["rows[0].floorLevel", "feed.emitter"]
                : ["feed.entry", "feed.line", "feed.emitter"],
            make ? Phrase.Of("finding.uniformity.make.what", told)
                : height ? Phrase.Of("finding.uniformity.height.what", told)
                : Phrase.Of("finding.uniformity.pressure.what", told),
            Phrase.Of(told),
            Limit.AtLeast(Measured.Share(value < poor ? poor : fair)),
            make ? Phrase.Of("finding.uniformity.make.remedy")
                : height ? Phrase.Of("finding.uniformity.height.remedy")
                : Phrase.Of("finding.uniformity.pressure.remedy")
        );
    }

    private void Primed()
    {
        foreach (var line in feed.Lines)
        {
            var lowest = line.Points.Min(p => p.Pressure);
            if (lowest < -AirPressure)
            {
                judge.Add(
                    "line-unprimed",
                    [Place.OfRun(line.Run, line.Row)],
                    ["feed.lineHeight", Pumped ? "pump.model" : "reservoir.base"],
                    Phrase.Of("finding.line-unprimed.what"),
                    Phrase.Of("finding.line-unprimed.value", Measured.Length(-lowest / SpecificWeight)),
                    Phrase.Of("finding.line-unprimed.limit"),
                    Pumped
                        ? Phrase.Of("finding.line-unprimed.pump.remedy")
                        : Phrase.Of("finding.line-unprimed.gravity.remedy")
                );
            }
        }
    }

    private void UnderRange()
    {
        var emitter = layout.Parts.Emitter;
        List<EmitterFlow> open = [.. feed.Emitters.Where(e => e.Open > 0)];
        // An emitter that gives nothing has a finding of its own.
        List<EmitterFlow> under = [.. open.Where(e => e.Flow > 0 && e.Pressure < emitter.MinPressure * (1 - 1e-9))];
        if (under.Count == 0)
        {
            return;
        }

        var lowest = under.Min(e => e.Pressure);
        var missing = Measured.Head((emitter.MinPressure - lowest) / SpecificWeight);
        var compensating = emitter.Kind == EmitterKind.PressureCompensating;
        var source = Pumped ? "pump.model" : "reservoir.base";
        judge.Add(
            "emitter-under-range",
            Where(under),
            compensating ? [source, "feed.emitter"] : ["feed.emitter", source],
            compensating
                ? Phrase.Of("finding.emitter-under-range.compensating.what", Measured.Pressure(lowest))
                : Phrase.Of("finding.emitter-under-range.plain.what", under.Count, open.Count),
            Phrase.Of(Measured.Pressure(lowest)),
            Limit.AtLeast(Measured.Pressure(emitter.MinPressure)),
            (compensating, Pumped) switch
            {
                (true, true) => Phrase.Of("finding.emitter-under-range.compensating.pump.remedy", missing),
                (true, false) => Phrase.Of("finding.emitter-under-range.compensating.gravity.remedy", missing),
                (false, true) => Phrase.Of("finding.emitter-under-range.plain.pump.remedy", missing),
                (false, false) => Phrase.Of("finding.emitter-under-range.plain.gravity.remedy", missing),
            }
        );
    }

    private void OverRange()
    {
        var emitter = layout.Parts.Emitter;
        List<EmitterFlow> over =
        [
            .. feed.Emitters.Where(e => e.Open > 0 && e.Pressure > emitter.MaxPressure * (1 + 1e-9)),
        ];
        if (over.Count > 0)
        {
            judge.Add(
                "emitter-over-range",
                Where(over),
                Pumped ? ["feed.throttle", "feed.bypass", "pump.model"] : ["feed.throttle", "reservoir.base"],
                Phrase.Of("finding.emitter-over-range.what"),
                Phrase.Of(Measured.Pressure(over.Max(e => e.Pressure))),
                Limit.AtMost(Measured.Pressure(emitter.MaxPressure)),
                Pumped
                    ? Phrase.Of("finding.emitter-over-range.pump.remedy")
                    : Phrase.Of("finding.emitter-over-range.gravity.remedy")
            );
        }
    }

    private static List<Place> Where(List<EmitterFlow> emitters) =>
        [
            .. emitters
                .GroupBy(e => e.Row)
                .Take(MostNamed)
                .Select(g => Place.OfPots(g.Key, [.. g.Select(e => e.Pot).Distinct()])),
        ];
}
