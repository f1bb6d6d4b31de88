using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Water;

/// <summary>Judges the feed.</summary>
internal sealed class FeedRules(Rig rig, RigLayout layout, FeedPlan feed, Judgement judge)
{
    private const string Line = "feed line";

    /// <summary>[Pa] A millimetre of water: less than this under the air's pressure is the solver's rounding.</summary>
    private const double AirPressure = 10;

    // [N/m³] Of the rig's own water.
    private double SpecificWeight => WaterProperties.SpecificWeight(rig.Reservoir.WaterTemperature - 273.15);

    /// <summary>[-] Of the open flow: below it next to all of the pump's power becomes heat. Common practice.</summary>
    private const double NearShutOff = 0.1;

    public void Judge()
    {
        if (!feed.Solved)
        {
            judge.Add(
                "feed-unsolved",
                Line,
                "feed",
                $"The flows could not be found: {feed.Trouble}.",
                "not solved",
                "solved",
                "Look for a valve, a length or a pump curve in that part that cannot be right."
            );
            return;
        }

        if (feed.TotalFlow <= 0)
        {
            NoWater();
            return;
        }

        Uniformity();
        PressureRange();
        Primed();
        PumpPoint();
        Velocities();
        Scatter();
        Strainer();
        Pots();
        Stop();
    }

    private void NoWater()
    {
        double lift = -feed.StaticHead;
        double shutOff = layout.Parts.Pump is { } pump ? pump.Curve[0].Head : 0;
        bool closed = layout.Rows.All(r => r.Emitters.All(e => e.Open <= 0));
        judge.Add(
            "no-water",
            Line,
            closed ? "feed.valveOpen" : "pump.model",
            closed
                ? "Every emitter is shut, so no water comes."
                : "No emitter gives water: the lift is more than the source gives.",
            $"{judge.Words.Length(Math.Max(0, lift))} lift",
            $"{judge.Words.Length(shutOff)} at most",
            closed
                ? "Open the emitters' valves, or plant the pots."
                : "Lower the line, raise the reservoir, or take a pump with a greater shut-off head."
        );
    }

    private void Uniformity()
    {
        UniformityMeasure design = feed.Uniformity[0];
        double poor = RuleBook.Limit("uniformity-poor");
        double fair = RuleBook.Limit("uniformity-fair");
        if (design.Value >= fair || feed.Causes is not { } causes)
        {
            return;
        }

        bool make = causes.Manufacture >= Math.Max(causes.Pressure, causes.Height);
        bool height = !make && causes.Height > causes.Pressure;
        string cure =
            make ? "Take emitters that are made more alike (a lower coefficient of variation), or two or more per pot."
            : height
                ? "Bring the rows to one height, or take pressure-compensating emitters with a pump that opens them."
            : "Feed the line from its middle or from both ends, take a wider line, or emitters of lower flow.";
        string cause =
            make ? "how the emitters are made"
            : height ? "height"
            : "pressure lost along the line";
        judge.Add(
            design.Value < poor ? "uniformity-poor" : "uniformity-fair",
            Line,
            make ? "feed.emitter"
                : height ? "rows[0].floorLevel"
                : "feed.entry",
            $"Design emission uniformity is {judge.Words.Share(design.Value)}; most of the difference comes from {cause}.",
            judge.Words.Share(design.Value),
            $"at least {judge.Words.Share(design.Value < poor ? poor : fair)}",
            cure
        );
    }

    private void Primed()
    {
        foreach (LineProfile line in feed.Lines)
        {
            double lowest = line.Points.Min(p => p.Pressure);
            if (lowest < -AirPressure)
            {
                judge.Add(
                    "line-unprimed",
                    $"row {QuantityWords.Count(line.Row)}, {line.Run}",
                    "feed.lineHeight",
                    "The feed line lies higher than the water is pushed: it draws air there and does not stay full, so the "
                        + "flows behind that place cannot be relied on.",
                    $"{judge.Words.Length(-lowest / SpecificWeight)} too high",
                    "under pressure all along",
                    "Lower the line, or take a source that pushes higher."
                );
            }
        }
    }

    private void PressureRange()
    {
        EmitterType emitter = layout.Parts.Emitter;
        List<EmitterFlow> open = [.. feed.Emitters.Where(e => e.Open > 0)];
        List<EmitterFlow> under = [.. open.Where(e => e.Pressure < emitter.MinPressure * (1 - 1e-9))];
        List<EmitterFlow> over = [.. open.Where(e => e.Pressure > emitter.MaxPressure * (1 + 1e-9))];
        if (under.Count > 0)
        {
            double lowest = under.Min(e => e.Pressure);
            double missing = (emitter.MinPressure - lowest) / SpecificWeight;
            bool compensating = emitter.Kind == EmitterKind.PressureCompensating;
            string what = compensating
                ? $"The pressure-compensating emitters get only {judge.Words.Pressure(lowest)} and do not open as they should"
                : $"{QuantityWords.Count(under.Count)} of {QuantityWords.Count(open.Count)} emitters get less pressure than they are made for";
            string source = layout.Parts.Pump is null
                ? $"Raise the reservoir by about {judge.Words.Length(missing)}"
                : $"Take a pump that gives about {judge.Words.Length(missing)} more head at this flow";
            judge.Add(
                "emitter-under-range",
                Where(under),
                compensating ? "pump.model" : "feed.emitter",
                $"{what}; the plan counts what they really give, not the label's rating.",
                judge.Words.Pressure(lowest),
                $"at least {judge.Words.Pressure(emitter.MinPressure)}",
                compensating
                    ? $"{source}, or take emitters that do not compensate and work at low pressure."
                    : $"{source}, or accept the lower flow and water longer."
            );
        }

        if (over.Count > 0)
        {
            judge.Add(
                "emitter-over-range",
                Where(over),
                "feed.throttle",
                "The emitters get more pressure than they are made for: tubes may pop off.",
                judge.Words.Pressure(over.Max(e => e.Pressure)),
                $"at most {judge.Words.Pressure(emitter.MaxPressure)}",
                "Throttle, open a bypass, or take a smaller pump."
            );
        }

        if (emitter.Variation > RuleBook.Limit("emitters-unlike"))
        {
            judge.Add(
                "emitters-unlike",
                Line,
                "feed.emitter",
                $"These emitters differ much from one another as made: {UniformityClasses.OfEmitters(emitter.Variation).ToString().ToLowerInvariant()}.",
                $"{judge.Words.Share(emitter.Variation)} variation",
                $"at most {judge.Words.Share(RuleBook.Limit("emitters-unlike"))}",
                "Measure each one in the catch test and sort them, or take a kind with less variation."
            );
        }
    }

    private static string Where(List<EmitterFlow> emitters)
    {
        IEnumerable<string> rows = emitters
            .GroupBy(e => e.Row)
            .Select(g =>
                $"row {QuantityWords.Count(g.Key)}, pots {QuantityWords.Numbers(g.Select(e => e.Pot).Distinct())}"
            );
        return string.Join("; ", rows.Take(4));
    }

    private void PumpPoint()
    {
        if (feed.OperatingPoint is not { } point || feed.PumpCurve.Count == 0)
        {
            return;
        }

        double openFlow = feed.PumpCurve[^1].Flow;
        double share = point.Flow / openFlow;
        if (share is > 1 + 1e-9 or < 0)
        {
            judge.Add(
                "pump-off-curve",
                "pump",
                "pump.model",
                "The pump is driven off its curve: what it does there is not known.",
                judge.Words.Flow(point.Flow),
                $"0 to {judge.Words.Flow(openFlow)}",
                "Throttle it, or take a pump whose curve reaches this far."
            );
        }
        else if (share > RuleBook.Limit("pump-near-open-flow"))
        {
            judge.Add(
                "pump-near-open-flow",
                "pump",
                "feed.throttle",
                "The pump runs almost without back pressure: little pressure is left for the emitters.",
                judge.Words.Flow(point.Flow),
                $"at most {judge.Words.Share(RuleBook.Limit("pump-near-open-flow"))} of {judge.Words.Flow(openFlow)}",
                "Close the bypass a little, take emitters of lower flow, or a stronger pump."
            );
        }
        else if (share < NearShutOff && point.WarmingPerDay > RuleBook.Limit("pump-near-shut-off"))
        {
            judge.Add(
                "pump-near-shut-off",
                "pump",
                "pump.model",
                $"The pump runs almost shut off, at {judge.Words.Flow(point.Flow)} of {judge.Words.Flow(openFlow)}: its power warms the water instead of moving it.",
                Warming(point.WarmingPerDay),
                $"at most {Warming(RuleBook.Limit("pump-near-shut-off"))}",
                "Take a smaller pump, run it less, or take a larger reservoir."
            );
        }
    }

    private string Warming(double kelvin) =>
        rig.Units == UnitSystem.Us
            ? $"{QuantityWords.Number(kelvin * 1.8)} °F a day"
            : $"{QuantityWords.Number(kelvin)} °C a day";

    private void Velocities()
    {
        double most = RuleBook.Limit("velocity-high");
        foreach (RunFlow run in feed.Runs.Where(r => r.Velocity > most && r.To != "tank"))
        {
            bool header = run.From != "entry";
            judge.Add(
                "velocity-high",
                $"run {run.Run}",
                header ? "feed.header.pipe" : "feed.line",
                "The water runs fast here and loses much pressure.",
                judge.Words.Velocity(run.Velocity),
                $"at most {judge.Words.Velocity(most)}",
                "Take the next wider pipe."
            );
        }

        double least = RuleBook.Limit("flush-slow");
        List<LineProfile> slow = [.. feed.Lines.Where(l => l.FlushVelocity < least)];
        if (slow.Count > 0)
        {
            judge.Add(
                "flush-slow",
                $"run {string.Join(", ", slow.Select(l => l.Run))}",
                "feed.line",
                "With its flush cap open the line runs too slowly to carry dirt out.",
                judge.Words.Velocity(slow.Min(l => l.FlushVelocity!.Value)),
                $"at least {judge.Words.Velocity(least)}",
                "Flush one row at a time with the others shut, or flush from the tap with a hose."
            );
        }
    }

    private void Scatter()
    {
        if (feed.Scatter is not { } scatter)
        {
            return;
        }

        List<PotFlow> planted = [.. feed.Pots.Where(p => p.Planted)];
        int worst = 0;
        for (int i = 1; i < scatter.ChanceOfBeingWeak.Count; i++)
        {
            worst = scatter.ChanceOfBeingWeak[i] > scatter.ChanceOfBeingWeak[worst] ? i : worst;
        }

        double chance = scatter.ChanceOfBeingWeak[worst];
        if (chance > RuleBook.Limit("weak-pot-likely"))
        {
            judge.Add(
                "weak-pot-likely",
                $"row {QuantityWords.Count(planted[worst].Row)}, pot {QuantityWords.Count(planted[worst].Pot)}",
                "feed.emittersPerPot",
                $"In {judge.Words.Share(chance)} of {QuantityWords.Count(scatter.Draws)} drawn rigs this pot gets under 80 % of the mean, more often than any other.",
                judge.Words.Share(chance),
                $"at most {judge.Words.Share(RuleBook.Limit("weak-pot-likely"))}",
                "Do the catch test before planting and keep spare emitters; more emitters per pot even out."
            );
        }
    }

    private void Strainer()
    {
        double passage = layout.Parts.Emitter.Passage;
        double allowed = passage * RuleBook.Limit("strainer-coarse");
        if (layout.Parts.Strainer is not { } strainer)
        {
            judge.Add(
                "strainer-missing",
                "pump",
                "feed.strainer",
                "There is no strainer: coir fines and scale reach the emitters.",
                "none",
                $"at most {Microns(allowed)} openings",
                "Fit a strainer after the pump or a mesh bag round it, and clean it every week."
            );
        }
        else if (strainer.Opening > allowed * (1 + 1e-9))
        {
            judge.Add(
                "strainer-coarse",
                "strainer",
                "feed.strainer",
                $"The strainer lets through grains that can block the emitters' {Microns(passage)} passage.",
                Microns(strainer.Opening),
                $"at most {Microns(allowed)}",
                "Take a finer strainer, or emitters with a wider passage."
            );
        }
    }

    private static string Microns(double metres) => $"{QuantityWords.Count((int)Math.Round(metres * 1e6))} µm";

    private void Pots()
    {
        List<string> single =
        [
            .. layout
                .Rows.Select(r => (r.Number, Pots: r.Pots.Where(p => p.Planted && p.Emitters < 2).ToList()))
                .Where(r => r.Pots.Count > 0)
                .Select(r =>
                    $"row {QuantityWords.Count(r.Number)}, pots {QuantityWords.Numbers(r.Pots.Select(p => p.Number))}"
                ),
        ];
        if (single.Count > 0)
        {
            judge.Add(
                "one-emitter",
                string.Join("; ", single.Take(4)),
                "feed.emittersPerPot",
                "A pot with a single emitter dries out when that one clogs.",
                "1 emitter",
                "2 emitters",
                "Give each planted pot two emitters of half the flow."
            );
        }

        if (feed.EmptyPots is { } empty)
        {
            judge.Add(
                "empty-pots",
                Line,
                "feed.inlineValves",
                $"{QuantityWords.Count(empty.EmptyPots)} pots stand empty; their emitters are counted as shut. Left open they would take {judge.Words.Flow(empty.WastedOpen)}, and each planted pot would get {judge.Words.Flow(empty.PlantedFlowOpen)} instead of {judge.Words.Flow(empty.PlantedFlowShut)}.",
                judge.Words.Flow(empty.WastedOpen),
                "shut",
                rig.Feed.InlineValves ? "Shut the valves at empty pots." : "Plug the emitters' holes at empty pots."
            );
        }
    }

    private void Stop()
    {
        if (feed.Stop.Siphons)
        {
            judge.Add(
                "tank-siphons",
                "reservoir",
                "feed.siphonBreak",
                "With the pump off the reservoir goes on emptying through emitters that lie below its water.",
                "siphons",
                "must not",
                "Drill an anti-siphon hole in the header just above the highest water, or raise the emitters."
            );
        }

        // A cupful is what any line loses; more than that lands in the low pots at every stop.
        if (feed.Stop.ThroughEmitters > 0.0005)
        {
            judge.Add(
                "low-row-runs-off",
                $"rows {QuantityWords.Numbers(feed.Stop.LowRows)}",
                "feed.checkValve",
                "Each time the pump stops, the lines run out through the lowest emitters.",
                judge.Words.Volume(feed.Stop.ThroughEmitters),
                "next to none",
                "Lift the emitters' outlets to the line, give each height its own line with a valve, or take emitters that close by themselves."
            );
        }
    }
}
