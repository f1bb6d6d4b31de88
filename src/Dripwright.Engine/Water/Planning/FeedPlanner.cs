using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Computes the feed of a rig that has been laid out.</summary>
/// <remarks>
/// Flows hold for the reservoir at its full level with clean emitters all alike; the total at the lowest level is told
/// beside them. Emitters at empty pots are shut.
/// </remarks>
internal sealed class FeedPlanner(Rig rig, RigLayout layout)
{
    /// <summary>Rows for which flushing is computed: every one would cost a solve each, and the first and last are the extremes.</summary>
    private const int MostFlushSolves = 6;

    private const int CurvePoints = 24;
    private const int SystemPoints = 8;

    private readonly FeedModel _model = new(rig, layout);

    public FeedPlan Plan()
    {
        var solver = new NetworkSolver(_model.Network);
        var solution = solver.Solve();
        var emitters = EmittersOf(solution);
        var pots = PotsOf(emitters);
        List<PotFlow> planted = [.. pots.Where(p => p.Planted)];
        var emitted = emitters.Sum(e => e.Flow);
        var flows = planted.Exists(p => p.Flow > 0) && solution.Converged;
        var uniformity = flows ? UniformityOf(emitters) : [];
        return new FeedPlan
        {
            Solved = solution.Converged,
            Trouble = solution.Converged ? Phrase.None : TroubleOf(solution),
            OperatingPoint = WorkingPointOf(solution),
            PumpCurve = PumpCurveOf(),
            SystemCurve = SystemCurveOf(solver),
            StaticHead = StaticHead(),
            Emitters = emitters,
            Pots = pots,
            Runs = RunsOf(solution),
            Lines = LinesOf(solution, FlushVelocities(solver)),
            TotalFlow = emitted,
            TotalFlowAtLowest = FlowAtLowest(solver),
            BreakHole = BreakHoleOf(solver, solution),
            BypassFlow = _model.Bypass >= 0 ? Math.Max(0, solution.LinkFlows[_model.Bypass]) : 0,
            Uniformity = uniformity,
            Weakest = flows ? planted.MinBy(p => p.Flow) : null,
            Strongest = flows ? planted.MaxBy(p => p.Flow) : null,
            Causes = flows ? CausesOf(solution) : null,
            EmptyPots = EmptyPotsOf(solver, pots),
            Worn = [.. FeedWear.Of(_model, solver, pots, layout.Parts.Strainer?.Loss ?? 0)],
            Stop = new StopPlanner(rig, layout).Plan(),
            MassResidual = solution.MassResidual,
            EnergyResidual = solution.EnergyResidual,
            Iterations = solution.Iterations,
        };
    }

    /// <summary>Draws of a feed that was solved; null where no planted pot gets water.</summary>
    /// <param name="feed">The feed.</param>
    /// <param name="layout">Its rig.</param>
    /// <param name="wanted">How many draws, from which seed, with which clogging; its emitters are found here.</param>
    /// <param name="stop">Asks to stop.</param>
    public static ScatterResult? Draws(FeedPlan feed, RigLayout layout, ScatterModel wanted, CancellationToken stop)
    {
        if (feed.Weakest is null)
        {
            return null;
        }

        Dictionary<(int, int), int> pots = [];
        List<ScatterEmitter> all = [];
        // A pot with fewer emitters on purpose is no weak pot: each is held against as many as it has.
        var open = feed.Emitters.Where(e => e.Open > 0).CountBy(e => (e.Row, e.Pot)).ToDictionary();
        var mean = open.Values.Average();
        foreach (var e in feed.Emitters.Where(e => e.Open > 0))
        {
            if (!pots.TryGetValue((e.Row, e.Pot), out var pot))
            {
                pot = pots.Count;
                pots[(e.Row, e.Pot)] = pot;
            }

            var flow = e.Flow * mean / open[(e.Row, e.Pot)];
            all.Add(new ScatterEmitter(flow, pot, layout.Parts.Emitter.Exponent, layout.Parts.Emitter.Variation));
        }

        return Scatter.Run(wanted with { Emitters = all }, stop);
    }

    private Phrase TroubleOf(NetworkSolution solution)
    {
        var place = Place.FeedLines.Name;
        foreach ((var link, var index) in _model.Supply)
        {
            if (index == solution.WorstLink)
            {
                place = Place.OfRun(link.Run.Label, link.Run.Row).Name;
            }
        }

        foreach (var leg in _model.Legs)
        {
            if (leg.Links.Contains(solution.WorstLink))
            {
                place = Place.OfRun(leg.Run.Label, leg.Run.Row).Name;
            }
        }

        return Phrase.Of("water.unsolved", place, solution.Iterations);
    }

    private List<EmitterFlow> EmittersOf(NetworkSolution solution)
    {
        List<EmitterFlow> flows = new(_model.Emitters.Count);
        for (var i = 0; i < _model.Emitters.Count; i++)
        {
            var e = _model.Emitters[i];
            flows.Add(
                new EmitterFlow(
                    e.Row.Number,
                    e.Place.Pot,
                    e.Place.Index,
                    e.Place.Open,
                    solution.EmitterFlows[i],
                    Math.Max(0, solution.EmitterHeads[i]) * _model.SpecificWeight
                )
            );
        }

        return [.. flows.OrderBy(f => f.Row).ThenBy(f => f.Pot).ThenBy(f => f.Index)];
    }

    private List<PotFlow> PotsOf(List<EmitterFlow> emitters)
    {
        var at = emitters.ToLookup(e => (e.Row, e.Pot));
        return
        [
            .. layout.Rows.SelectMany(row =>
                row.Pots.Select(pot =>
                {
                    var here = at[(row.Number, pot.Number)];
                    var pressure = here.Any() ? here.Average(e => e.Pressure) : 0;
                    return new PotFlow(row.Number, pot.Number, pot.Planted, here.Sum(e => e.Flow), pressure);
                })
            ),
        ];
    }

    private IReadOnlyList<UniformityMeasure> UniformityOf(List<EmitterFlow> emitters)
    {
        List<double> flows = [.. emitters.Where(e => e.Open > 0).Select(e => e.Flow)];
        var variation = layout.Parts.Emitter.Variation;
        var perPot = layout.Rows.SelectMany(r => r.Pots).Where(p => p.Planted && p.Emitters > 0).Min(p => p.Emitters);
        var row = RowUniformity.Of(flows, variation, perPot);
        // Statistical uniformity counts the making too: independent causes add as squares.
        var hydraulic = 1 - (row.Statistical ?? 1);
        var statistical = 1 - Math.Sqrt((hydraulic * hydraulic) + (variation * variation / perPot));
        return
        [
            new UniformityMeasure(
                Phrase.Of("uniformity.design"),
                row.DesignEmission,
                row.DesignEmissionClass,
                "Keller & Karmeli 1974; classes after ASABE EP458 (from memory)"
            ),
            new UniformityMeasure(
                Phrase.Of("uniformity.low-quarter"),
                row.LowQuarter,
                row.LowQuarterClass,
                "classes after ASABE EP458 (from memory)"
            ),
            new UniformityMeasure(
                Phrase.Of("uniformity.christiansen"),
                row.Christiansen,
                row.ChristiansenClass,
                "Christiansen 1942; classes by its relation to the low quarter"
            ),
            new UniformityMeasure(
                Phrase.Of("uniformity.statistical"),
                statistical,
                UniformityClasses.OfStatistical(statistical),
                "Bralts & Kesner 1983; classes after ASABE EP458 (from memory)"
            ),
        ];
    }

    private SpreadShares CausesOf(NetworkSolution solution)
    {
        List<double> heads = [];
        List<double> heights = [];
        for (var i = 0; i < _model.Emitters.Count; i++)
        {
            if (_model.Emitters[i].Place.Open > 0)
            {
                heads.Add(Math.Max(0, solution.EmitterHeads[i]));
                heights.Add(_model.Emitters[i].Place.Outlet);
            }
        }

        return Spread.SplitByHead(
            heads,
            heights,
            (_, head) => _model.Law.Flow(Math.Max(0, head)),
            layout.Parts.Emitter.Variation
        );
    }

    private OperatingPoint? WorkingPointOf(NetworkSolution solution)
    {
        if (layout.Parts.Pump is not { } pump || _model.Curve is not { } curve)
        {
            return null;
        }

        var flow = solution.LinkFlows[_model.Source];
        var head = -_model.SourceLaw.At(flow).Head;
        var hours = layout.Resolved.Clock.HoursPerDay;
        var energy = pump.Power * hours * 3600;
        var tank = layout.Parts.Tank;
        var mass =
            tank.Inside.VolumeAt(tank.LevelIn(layout.Tank.Full - layout.Tank.Floor))
            * _model.SpecificWeight
            / StandardGravity.Value;
        return new OperatingPoint(
            flow,
            head,
            pump.Power,
            _model.SpecificWeight * Math.Max(0, flow) * Math.Max(0, head),
            hours,
            energy / 3.6e6,
            mass > 0 ? energy / (mass * 4186) : 0
        );
    }

    private List<CurvePoint> PumpCurveOf()
    {
        if (_model.Curve is not { } curve)
        {
            return [];
        }

        return
        [
            .. Enumerable
                .Range(0, CurvePoints + 1)
                .Select(i => curve.LargestFlow * i / CurvePoints)
                .Select(q => new CurvePoint(q, curve.Head(Math.Min(q, curve.LargestFlow)))),
        ];
    }

    /// <summary>Heads the rig asks for, found by putting steady heads in the pump's place.</summary>
    private List<CurvePoint> SystemCurveOf(NetworkSolver solver)
    {
        List<CurvePoint> points = [];
        if (_model.Curve is not { } curve)
        {
            return points;
        }

        for (var i = 0; i <= SystemPoints; i++)
        {
            var head = curve.ShutOffHead * i / SystemPoints;
            solver.SetLaw(_model.Source, new SteadyHead(head));
            if (solver.TrySolve() && solver.LinkFlows[_model.Source] > 1e-12)
            {
                points.Add(new CurvePoint(solver.LinkFlows[_model.Source], head));
            }
        }

        solver.SetLaw(_model.Source, _model.SourceLaw);
        return points;
    }

    private double FlowAtLowest(NetworkSolver solver)
    {
        var drop = layout.Tank.Full - layout.Tank.Lowest;
        solver.SetLaw(_model.Source, new Lowered(_model.SourceLaw, Math.Max(0, drop)));
        solver.TrySolve();
        double total = 0;
        for (var i = 0; i < _model.Emitters.Count; i++)
        {
            total += solver.EmitterFlows[i];
        }

        solver.SetLaw(_model.Source, _model.SourceLaw);
        return total;
    }

    /// <summary>What the siphon-breaking hole spouts, and what the emitters would give without it.</summary>
    private BreakHoleEffect? BreakHoleOf(NetworkSolver solver, NetworkSolution solution)
    {
        if (_model.BreakHole < 0)
        {
            return null;
        }

        solver.SetMultiplier(_model.BreakHole, 0);
        solver.TrySolve();
        double without = 0;
        for (var i = 0; i < _model.Emitters.Count; i++)
        {
            without += solver.EmitterFlows[i];
        }

        solver.SetMultiplier(_model.BreakHole, 1);
        return new BreakHoleEffect(solution.EmitterFlows[_model.BreakHole], without);
    }

    private double StaticHead()
    {
        var outlets = _model.Emitters.Count > 0 ? _model.Emitters.Average(e => e.Place.Outlet) : layout.Tank.Full;
        return layout.Tank.Full - outlets;
    }

    private List<RunFlow> RunsOf(NetworkSolution solution)
    {
        List<RunFlow> runs = [];
        foreach ((var link, var index) in _model.Supply)
        {
            var flow = solution.LinkFlows[index];
            var loss =
                link.To == "tank" ? 0 : solution.Heads[_model.Point(link.From)] - solution.Heads[_model.Point(link.To)];
            runs.Add(
                new RunFlow(
                    link.Run.Label,
                    link.From,
                    link.To,
                    flow,
                    Math.Abs(flow) / FeedModel.Area(link.Run.Pipe),
                    loss
                )
            );
        }

        foreach (var leg in _model.Legs)
        {
            var fastest = -1;
            for (var i = 0; i < leg.Links.Length; i++)
            {
                if (
                    fastest < 0
                    || Math.Abs(solution.LinkFlows[leg.Links[i]]) > Math.Abs(solution.LinkFlows[leg.Links[fastest]])
                )
                {
                    fastest = i;
                }
            }

            if (fastest >= 0)
            {
                var flow = Math.Abs(solution.LinkFlows[leg.Links[fastest]]);
                var highest = leg.Nodes.Max(n => solution.Heads[n]);
                var lowest = leg.Nodes.Min(n => solution.Heads[n]);
                runs.Add(
                    new RunFlow(
                        leg.Run.Label,
                        "entry",
                        "end",
                        flow,
                        flow / FeedModel.Area(leg.Run.Pipe),
                        highest - lowest
                    )
                );
            }
        }

        return runs;
    }

    private Dictionary<ModelLeg, double> FlushVelocities(NetworkSolver solver)
    {
        Dictionary<ModelLeg, double> velocities = [];
        List<ModelLeg> legs = [.. _model.Legs.Where(l => l.FlushCap >= 0)];
        IEnumerable<ModelLeg> chosen = legs.Count <= MostFlushSolves ? legs : [legs[0], legs[^1]];
        foreach (var leg in chosen)
        {
            solver.SetMultiplier(leg.FlushCap, 1);
            if (solver.TrySolve() && leg.DeadEndLink >= 0)
            {
                velocities[leg] = Math.Abs(solver.LinkFlows[leg.DeadEndLink]) / FeedModel.Area(leg.Run.Pipe);
            }

            solver.SetMultiplier(leg.FlushCap, 0);
        }

        return velocities;
    }

    private List<LineProfile> LinesOf(NetworkSolution solution, Dictionary<ModelLeg, double> flush)
    {
        List<LineProfile> lines = [];
        foreach (var leg in _model.Legs)
        {
            var height = leg.Run.Path[0].Z;
            List<LinePoint> points = [];
            for (var i = 0; i < leg.Nodes.Length; i++)
            {
                points.Add(
                    new LinePoint(
                        leg.Stations[i],
                        (solution.Heads[leg.Nodes[i]] - height) * _model.SpecificWeight,
                        i < leg.Links.Length ? solution.LinkFlows[leg.Links[i]] : 0
                    )
                );
            }

            var end =
                leg.DeadEndLink >= 0 ? Math.Abs(solution.LinkFlows[leg.DeadEndLink]) / FeedModel.Area(leg.Run.Pipe) : 0;
            lines.Add(
                new LineProfile(
                    leg.Row.Number,
                    leg.Run.Label,
                    points,
                    end,
                    flush.TryGetValue(leg, out var velocity) ? velocity : null
                )
            );
        }

        return lines;
    }

    private EmptyPotEffect? EmptyPotsOf(NetworkSolver solver, List<PotFlow> pots)
    {
        List<int> shut = [];
        for (var i = 0; i < _model.Emitters.Count; i++)
        {
            if (!_model.Emitters[i].Planted)
            {
                shut.Add(i);
            }
        }

        if (shut.Count == 0)
        {
            return null;
        }

        shut.ForEach(i => solver.SetMultiplier(i, 1));
        solver.TrySolve();
        double wasted = 0;
        double planted = 0;
        for (var i = 0; i < _model.Emitters.Count; i++)
        {
            var flow = solver.EmitterFlows[i];
            wasted += _model.Emitters[i].Planted ? 0 : flow;
            planted += _model.Emitters[i].Planted ? flow : 0;
        }

        shut.ForEach(i => solver.SetMultiplier(i, 0));
        var plantedPots = pots.Count(p => p.Planted);
        var shutMean = pots.Where(p => p.Planted).Sum(p => p.Flow) / Math.Max(1, plantedPots);
        var emptyPots = layout.Rows.SelectMany(r => r.Pots).Count(p => !p.Planted && p.Emitters > 0);
        return new EmptyPotEffect(emptyPots, planted / Math.Max(1, plantedPots), shutMean, wasted);
    }

    /// <summary>A source that adds one head whatever the flow; for the system curve.</summary>
    private sealed class SteadyHead(double head) : ILinkLaw
    {
        // A trace of slope keeps the solver's step finite; at a cubic metre an hour it is a quarter of a nanometre.
        public HeadLoss At(double flow) => new(-head + (flow * 1e-6), 1e-6);
    }

    /// <summary>The same source from a water surface that stands lower.</summary>
    private sealed class Lowered(ILinkLaw law, double drop) : ILinkLaw
    {
        public HeadLoss At(double flow)
        {
            var loss = law.At(flow);
            return loss with { Head = loss.Head + drop };
        }
    }
}
