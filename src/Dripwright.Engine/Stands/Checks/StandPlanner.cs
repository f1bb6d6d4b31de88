using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>From a layout to the strength of its stands.</summary>
/// <remarks>
/// Every combination is solved twice: in first order for the multiple at which it buckles, and in second order with axial
/// forces times 1.6 for forces and shifts (AISC 360 C2.1), so columns count with their own length, K = 1.
/// Method page: docs/methods/stand-checks.md
/// </remarks>
public static class StandPlanner
{
    private const double AxialFactor = 1.6;
    private const double WaterDensity = 998.2; // kg/m³ at 20 °C

    /// <summary>Computes all stands of a layout.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="options">Options; the defaults where null.</param>
    /// <exception cref="OperationCanceledException">The options' stop was asked for.</exception>
    public static StandPlan Of(RigLayout layout, StandOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(layout);
        options ??= new StandOptions();
        return new StandPlan([.. StandFrame.Of(layout, options).Select(Check)], Reservoir(layout));
    }

    /// <summary>Computes one stand.</summary>
    /// <param name="frame">The stand as a frame.</param>
    public static RowStand Check(StandFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var solver = new FrameSolver(frame.Model);
        var loads = Combinations(frame);
        var stand = Stand(
            frame,
            Cases(frame, solver, loads, new FrameOptions { Friction = frame.Options.Friction })
        ) with
        {
            LightTies = LightTies(frame, solver),
        };
        return frame.Options.Bounds ? Bounded(stand, solver, loads) : stand;
    }

    // How far the verdict hangs on friction: judged again on feet that slip freely and on feet that cannot slip. Where no foot
    // moved, it cannot have slipped either.
    private static RowStand Bounded(RowStand stand, FrameSolver solver, List<(StandLoads, FrameLoading)> loads)
    {
        RowStand With(FrameOptions law) => Stand(stand.Frame, Cases(stand.Frame, solver, loads, law));
        var moved = stand.Cases.Any(c => c.Solution is not { FootShifts.Count: 0 });
        return stand with
        {
            HoldsOnRollers = With(new FrameOptions { Rollers = true }).Holds,
            HoldsStuck = moved ? With(new FrameOptions()).Holds : stand.Holds,
        };
    }

    // Ties are asked for most when next to nothing stands on the feet.
    private static List<(StandCase, double)> LightTies(StandFrame frame, FrameSolver solver)
    {
        List<(StandCase, double)> forces = [];
        foreach (var light in (StandCase[])[StandCase.DryLean, StandCase.BareLean])
        {
            if (
                frame.Ties.Count > 0
                && frame.Options.Leaning
                && solver.Solve(
                    StandLoads.Of(frame, light).Loading,
                    new FrameOptions { Friction = frame.Options.Friction },
                    StandLoads.Of(frame, new StandCase("at-rest", light.Pots)).Loading
                )
                    is FrameSolution s
            )
            {
                forces.Add((light, frame.Ties.Max(n => (s.Reaction(n).Force with { Z = 0 }).Length)));
            }
        }

        return forces;
    }

    private static RowStand Stand(StandFrame frame, List<CaseResult> cases)
    {
        var row = frame.Row;
        var empty = StandLoads.Of(frame, new StandCase("empty", PotsFull.None));
        var (front, back) = FeetLines(frame);
        var top = frame.Model.Nodes[frame.NodeAt(frame.Rails[0].Tubes[0].Member.From)].At.Z - row.Floor;
        var full = cases[0];
        var footprint = (frame.FrameStations[^1] - frame.FrameStations[0]) * Math.Max(back - front, row.Depth);
        return new RowStand
        {
            Frame = frame,
            Cases = cases,
            DryLean = frame.Options.Leaning
                ? (
                    StandCase.DryLean,
                    TipOver.Worst(StandLoads.Of(frame, StandCase.DryLean).Acting, front, back, row.Floor)
                )
                : null,
            EmptyTippingForce = TipOver.TippingForce(empty.Weight, back - front, top),
            Floor = FloorLoad.InLivingRoom(
                "the row with all pots soaked",
                full.Loads.Weight / StandardGravity.Value,
                footprint
            ),
        };
    }

    // Every combination with the loads that rest on the stand before the others come.
    private static List<(StandLoads Loads, FrameLoading Resting)> Combinations(StandFrame frame)
    {
        var staggered = frame.Row.Spec.Arrangement == Arrangement.Staggered;
        var resting = new Dictionary<PotsFull, FrameLoading>();
        List<(StandLoads, FrameLoading)> all = [];
        foreach (var combination in StandCase.Of(staggered, frame.Row.Modules))
        {
            if (combination.Lean != LeanPlace.None && !frame.Options.Leaning)
            {
                continue;
            }

            var pots = combination.Pots;
            if (!resting.TryGetValue(pots, out var there))
            {
                there = resting[pots] = StandLoads.Of(frame, new StandCase("at-rest", pots)).Loading;
            }

            all.Add((StandLoads.Of(frame, combination), there));
        }

        return all;
    }

    private static List<CaseResult> Cases(
        StandFrame frame,
        FrameSolver solver,
        List<(StandLoads Loads, FrameLoading Resting)> combinations,
        FrameOptions law
    )
    {
        var firsts = combinations.Select(c => (c.Loads, First: solver.Solve(c.Loads.Loading, law, c.Resting))).ToList();
        var proof = Proven(solver, [.. firsts.Select(f => f.First)]);
        frame.Options.Stop.ThrowIfCancellationRequested();
        var seconds = new Queue<FrameOutcome>(
            solver.SecondOrder(
                [.. firsts.Select(f => f.First).OfType<FrameSolution>()],
                law with
                {
                    AxialFactor = AxialFactor,
                },
                proof
            )
        );
        List<CaseResult> cases = [];
        double? lowest = frame.Options.EveryBuckling ? null : RowStand.BucklingOfInterest;
        foreach (var (loads, first) in firsts)
        {
            frame.Options.Stop.ThrowIfCancellationRequested();
            var outcome = first is FrameSolution ? seconds.Dequeue() : first;
            double? margin = null;
            if (outcome is FrameFault && first is FrameSolution start)
            {
                (outcome, margin) = AsLoaded(solver, start, law, outcome);
            }

            var result = Judged(frame, solver, loads, first, outcome, lowest, proof) with { Margin = margin };
            lowest = frame.Options.EveryBuckling ? null : result.Buckling?.Factor ?? lowest;
            cases.Add(result);
        }

        return cases;
    }

    // What gives way with the effect that the design must bear may stand as it is loaded: then it is judged as it stands, and
    // how much more effect brings it down is told.
    private static (FrameOutcome Outcome, double? Margin) AsLoaded(
        FrameSolver solver,
        FrameSolution first,
        FrameOptions law,
        FrameOutcome given
    )
    {
        FrameOutcome With(double factor) => solver.SecondOrder([first], law with { AxialFactor = factor })[0];
        if (With(1) is not FrameSolution stands)
        {
            return (given, null);
        }

        var (low, high) = (1.0, AxialFactor);
        while (high - low > 0.05)
        {
            var middle = (low + high) / 2;
            (low, high) = With(middle) is FrameSolution ? (middle, high) : (low, middle);
        }

        return (stands, low);
    }

    // The least axial force of every element in any combination, times the multiple of interest, where the frame is stable
    // even with all of them at once, a little less still for what the second order changes: it is then stable in each
    // combination alone, as far as the feet that slip and lift in it allow. Null where that is not so.
    private static StabilityProof? Proven(FrameSolver solver, FrameOutcome[] firsts)
    {
        FrameSolution[] solved = [.. firsts.OfType<FrameSolution>()];
        if (solved.Length < firsts.Length)
        {
            return null;
        }

        var slack = 0.01 * solved.Max(s => s.Tensions.Max(Math.Abs));
        double[] least =
        [
            .. Enumerable
                .Range(0, solver.Model.Elements.Count)
                .Select(e => (RowStand.BucklingOfInterest * Math.Min(0, solved.Min(s => s.Tensions[e]))) - slack),
        ];
        return solver.Prove(least, solved);
    }

    // Where a lowest multiple is given, the multiple is looked for only if this combination buckles at less; a frame proven
    // in all combinations at once buckles at more than the multiple of interest.
    private static CaseResult Judged(
        StandFrame frame,
        FrameSolver solver,
        StandLoads loads,
        FrameOutcome first,
        FrameOutcome outcome,
        double? lowest,
        StabilityProof? proof
    )
    {
        var (front, back) = FeetLines(frame);
        var tip = TipOver.Worst(loads.Acting, front, back, frame.Row.Floor);
        return new CaseResult
        {
            Loads = loads,
            Outcome = outcome,
            Buckling =
                first is FrameSolution linear
                && !(lowest is { } factor && (Covered(proof, linear) || solver.StandsAt(linear, factor)))
                    ? solver.Buckling(linear)
                    : null,
            Uses = outcome is FrameSolution solution ? Uses(frame, solution) : [],
            Drain = outcome is FrameSolution settled ? DrainSettling.Of(frame, settled) : null,
            Tip = tip,
        };
    }

    private static bool Covered(StabilityProof? proof, FrameSolution linear) =>
        proof?.Covers([.. linear.Tensions.Select(n => RowStand.BucklingOfInterest * n)], linear) == true;

    private static TubeUse[] Uses(StandFrame frame, FrameSolution solution)
    {
        var uses = new TubeUse[frame.Tubes.Count];
        for (var t = 0; t < uses.Length; t++)
        {
            uses[t] = Use(frame, solution, t);
        }

        return uses;
    }

    private static TubeUse Use(StandFrame frame, FrameSolution solution, int index)
    {
        var tube = frame.Tubes[index];
        var section = frame.Tube.Properties;
        var compression = AllowableStrength.Compression(section, frame.Steel, tube.Span);
        double bending = 0;
        double shear = 0;
        double axial = 0;
        double moment = 0;
        double sag = 0;
        var start = solution.Shift(frame.Model.Elements[tube.Elements[0]].From);
        var end = solution.Shift(frame.Model.Elements[tube.Elements[^1]].To);
        double done = 0;
        foreach (var e in tube.Elements)
        {
            foreach (var x in solution.Stations(e))
            {
                var (f, shift) = solution.PlaceAt(e, x);
                bending = Math.Max(bending, AllowableStrength.CombinedUnder(section, frame.Steel, f, compression));
                shear = Math.Max(shear, AllowableStrength.Shear(section, frame.Steel, f));
                axial = Math.Abs(f.Axial) > Math.Abs(axial) ? f.Axial : axial;
                moment = Math.Max(moment, f.Bending);
                var share = (done + x) / tube.Span;
                var off = shift - ((1 - share) * start) - (share * end);
                sag = Math.Max(sag, off.Length);
            }

            done += frame.Model.LengthOf(e);
        }

        double jointMoment = 0;
        double pull = 0;
        void Joint(int element, bool atEnd)
        {
            var f = solution.JointForces(element, atEnd);
            jointMoment = Math.Max(jointMoment, f.Bending);
            pull = Math.Max(pull, f.Axial);
        }

        if (tube.SocketAtStart)
        {
            Joint(tube.Elements[0], false);
        }

        if (tube.SocketAtEnd)
        {
            Joint(tube.Elements[^1], true);
        }

        var joint = frame.Options.Joint;
        return new TubeUse(
            index,
            bending,
            shear,
            jointMoment / joint.SlipMoment,
            pull / joint.PullOut,
            axial,
            moment,
            sag
        );
    }

    private static (double Front, double Back) FeetLines(StandFrame frame) =>
        (frame.Feet.Min(n => frame.Model.Nodes[n].At.Y), frame.Feet.Max(n => frame.Model.Nodes[n].At.Y));

    private static FloorLoad Reservoir(RigLayout layout)
    {
        var tank = layout.Tank;
        var area = (tank.Right - tank.Left) * (tank.Back - tank.Front);
        var volume = layout.Parts.Tank.Inside.Capacity;
        return FloorLoad.InLivingRoom("the full reservoir", volume * WaterDensity, area);
    }
}
