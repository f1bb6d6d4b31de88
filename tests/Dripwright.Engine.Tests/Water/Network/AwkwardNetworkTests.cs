using CsCheck;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

/// <summary>Networks that growers do build, and that break solvers.</summary>
public class AwkwardNetworkTests
{
    private static readonly EmitterLaw s_dripper = EmitterLaw.FromRating(2e-3 / 3600, 10, 0.5);
    private static readonly EmitterLaw s_compensating = EmitterLaw.PressureCompensating(2e-3 / 3600, 10, 0.02, 5, 40);
    private static readonly PumpCurve s_smallPump = PumpCurve.FromShutOffAndOpenFlow(3, 4e-4);
    private static readonly PumpSetting s_running = new(true, false, 0.015, 8);
    private static readonly PumpSetting s_stopped = new(false, false, 0.015, 8);

    [Fact]
    public void One_emitter_alone_flows_as_its_law_says()
    {
        var network = new Network(1e-6);
        var node = network.AddJunction(0);
        network.AddPipe(network.AddFixedHead(10), node, new Pipe(0.1, 0.02, 0));
        network.AddEmitter(node, new Emitter(s_dripper, 0, Tag: 42));
        var solution = Solve(network);
        Assert.Equal(2e-3 / 3600, solution.TotalFlow, 1e-6 * solution.TotalFlow);
    }

    [Theory]
    [InlineData(0.020)]
    [InlineData(0.004)] // far too thin: the last pots get next to nothing
    public void Ten_thousand_emitters_on_one_line(double bore)
    {
        var network = Line(5_000, bore, s_dripper, perPot: 2, PumpCurve.FromShutOffAndOpenFlow(30, 5e-3), s_running);
        var solver = new NetworkSolver(network);
        var solution = solver.Solve();
        Check(solution);
        Assert.Equal(10_000, solution.EmitterFlows.Count);
        Assert.Equal(4_999, solver.FactorEntries);
    }

    [Fact]
    public void A_thousand_compensating_emitters_behind_microtubes_stay_as_small_as_the_line()
    {
        var tube = new Pipe(0.6, 0.003, 0, 4);
        var network = Line(
            1_000,
            0.04,
            s_compensating,
            perPot: 2,
            PumpCurve.FromShutOffAndOpenFlow(25, 5e-3),
            s_running,
            tube
        );
        var solver = new NetworkSolver(network);
        Check(solver.Solve());
        Assert.Equal(999, solver.FactorEntries);
    }

    [Theory]
    [InlineData(1e-7)]
    [InlineData(1e-4)]
    [InlineData(2.8e-3)]
    public void From_a_tenth_of_a_litre_to_ten_cubic_metres_an_hour(double total)
    {
        var law = EmitterLaw.FromRating(total / 20, 10, 0.5);
        var network = Line(20, 0.06, law, 1, PumpCurve.FromShutOffAndOpenFlow(15, 6e-3), s_running);
        Check(Solve(network));
    }

    [Fact]
    public void Three_psi_do_not_open_compensating_emitters_and_the_answer_says_so()
    {
        var network = Line(10, 0.016, s_compensating, 2, s_smallPump, s_running);
        var solution = Solve(network);
        Assert.All(solution.EmitterHeads, h => Assert.Equal(EmitterRange.BelowOpening, s_compensating.RangeAt(h)));
        Assert.True(solution.TotalFlow < 20 * 2e-3 / 3600);
    }

    [Fact]
    public void A_pump_too_weak_to_lift_gives_nothing_and_says_why()
    {
        var network = new Network(1e-6);
        var line = network.AddJunction(4);
        network.AddPump(network.AddFixedHead(0), line, s_smallPump, s_running);
        network.AddEmitter(line, new Emitter(s_dripper, 4.2));
        var solution = Solve(network);
        Assert.Equal(0, solution.TotalFlow);
        Assert.Equal("Nothing flows: the head reaches 3.00 m and the lowest outlet stands at 4.20 m.", solution.Reason);
        Assert.Equal(3, solution.Heads[0], 1e-9);
    }

    [Fact]
    public void All_emitters_closed_leaves_the_line_at_shut_off_head()
    {
        var network = new Network(1e-6);
        var line = network.AddJunction(1);
        network.AddPump(network.AddFixedHead(0.3), line, s_smallPump, s_running);
        network.AddEmitter(line, new Emitter(s_dripper, 1, Multiplier: 0));
        var solution = Solve(network);
        Assert.Equal(3.3, solution.Heads[0], 1e-9);
        Assert.Equal("Nothing flows: every emitter is closed.", solution.Reason);
    }

    [Fact]
    public void A_closed_valve_cuts_off_what_lies_behind_it_and_only_that()
    {
        var network = new Network(1e-6);
        var a = network.AddJunction(0);
        var b = network.AddJunction(0);
        var c = network.AddJunction(0.2);
        network.AddPipe(network.AddFixedHead(2), a, new Pipe(1, 0.02, 0));
        var valve = network.AddValve(a, b, 0.02, 2, isOpen: false);
        network.AddPipe(b, c, new Pipe(1, 0.02, 0));
        network.AddEmitter(a, new Emitter(s_dripper, 0));
        network.AddEmitter(c, new Emitter(s_dripper, 0.3));
        var solver = new NetworkSolver(network);
        var shut = solver.Solve();
        Check(shut);
        Assert.Equal([b, c], shut.IsolatedNodes);
        Assert.Equal(0, shut.EmitterFlows[1]);
        Assert.True(shut.EmitterFlows[0] > 0);
        // Behind the valve water stands where the lowest outlet would let it drain to.
        Assert.Equal(0.3, shut.Heads[c]);
        solver.SetOpen(valve, true);
        var open = solver.Solve();
        Check(open);
        Assert.Empty(open.IsolatedNodes);
        Assert.True(open.EmitterFlows[1] > 0);
    }

    [Fact]
    public void A_set_draw_that_no_source_can_reach_is_named()
    {
        var network = new Network(1e-6);
        network.AddFixedHead(1);
        network.AddJunction(0, 1e-4);
        var solution = new NetworkSolver(network).Solve();
        Assert.False(solution.Converged);
        Assert.Contains("Node 1 has a set draw of 0.0001 m³/s", solution.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stopped_pump_without_check_valve_lets_a_low_row_run_on()
    {
        // Surface at 0.8 m, one row at 0.2 m, one at 1.5 m: the low one siphons through the pump, the high one stays dry.
        var solution = Solve(LowAndHighRow(s_stopped, 0.8));
        Assert.True(solution.EmitterFlows[0] > 0);
        Assert.Equal(0, solution.EmitterFlows[1]);
        Assert.True(solution.LinkFlows[0] > 0);
    }

    [Fact]
    public void A_low_reservoir_leaves_both_rows_dry_when_the_pump_stops()
    {
        var open = Solve(LowAndHighRow(s_stopped, -0.5));
        Assert.Equal(0, open.TotalFlow);
        var held = Solve(LowAndHighRow(s_stopped with { HasCheckValve = true }, -0.5));
        Assert.Equal(0, held.TotalFlow);
        Assert.Equal(0, held.LinkFlows[0]);
    }

    [Fact]
    public void A_check_valve_shuts_against_a_higher_tank_and_opens_toward_a_lower_one()
    {
        NetworkSolution With(double upper)
        {
            var network = new Network(1e-6);
            var low = network.AddFixedHead(1);
            var high = network.AddFixedHead(upper);
            var a = network.AddJunction(0);
            var b = network.AddJunction(0);
            network.AddCheckValve(low, a, 0.02, 2);
            network.AddPipe(a, b, new Pipe(2, 0.02, 0));
            network.AddPipe(b, high, new Pipe(2, 0.02, 0));
            return Solve(network);
        }

        var against = With(2);
        Assert.Equal([0], against.ShutCheckValves);
        Assert.Equal(0, against.LinkFlows[1], 1e-15);
        Assert.Equal(2, against.Heads[2], 1e-9);
        var along = With(0.5);
        Assert.Empty(along.ShutCheckValves);
        Assert.True(along.LinkFlows[0] > 0);
    }

    [Fact]
    public void Many_check_valves_and_closed_valves_anywhere_always_come_to_rest() =>
        (
            from seed in Gen.Int[0, 1_000_000]
            from size in Gen.Int[2, 40]
            from loops in Gen.Int[0, 20]
            select (seed, size, loops)
        ).Holds(
            t =>
            {
                var network = NetworkSketch.Random(t.seed, t.size, t.loops).Build();
                var random = new Random(t.seed);
                var second = network.AddFixedHead(3 * random.NextDouble());
                for (var i = 0; i < t.size / 2; i++)
                {
                    var a = random.Next(network.NodeCount);
                    var b = (a + 1 + random.Next(network.NodeCount - 1)) % network.NodeCount;
                    _ = random.Next(3) switch
                    {
                        0 => network.AddValve(a, b, 0.01, 3, isOpen: false),
                        1 => network.AddValve(a, b, 0.01, a == 0 || b == 0 || a == second || b == second ? 2 : 0),
                        _ => network.AddCheckValve(a, b, 0.01, 3 * random.NextDouble()),
                    };
                }

                var solver = new NetworkSolver(network);
                for (var l = 1; l < network.LinkCount; l += 5)
                {
                    solver.SetOpen(l, false);
                }

                var solution = solver.Solve();
                Check(solution);
                for (var l = 0; l < network.LinkCount; l++)
                {
                    // A twentieth of a millilitre an hour is allowed for rounding.
                    Assert.True(!network.Links[l].HasCheckValve || solution.LinkFlows[l] > -1.4e-11);
                }
            },
            iter: 1000
        );

    [Fact]
    public void A_level_line_fed_at_both_ends_and_a_closed_ring_are_symmetric()
    {
        var network = new Network(1e-6);
        var left = network.AddFixedHead(3);
        var right = network.AddFixedHead(3);
        var last = left;
        for (var i = 0; i < 21; i++)
        {
            var node = network.AddJunction(0);
            network.AddPipe(last, node, new Pipe(0.3, 0.008, 0));
            network.AddEmitter(node, new Emitter(s_dripper, 0));
            last = node;
        }

        network.AddPipe(last, right, new Pipe(0.3, 0.008, 0));
        var solution = Solve(network);
        for (var i = 0; i < 10; i++)
        {
            Assert.Equal(solution.EmitterFlows[i], solution.EmitterFlows[20 - i], 1e-10 * solution.TotalFlow);
        }
    }

    [Fact]
    public void A_pump_that_water_falls_through_is_named()
    {
        var network = new Network(1e-6);
        var upper = network.AddFixedHead(20);
        var lower = network.AddFixedHead(0);
        network.AddPump(upper, lower, s_smallPump, s_running);
        var solution = Solve(network);
        Assert.Equal([0], solution.PumpsOutsideCurve);
        Assert.True(solution.LinkFlows[0] > s_smallPump.LargestFlow);
    }

    [Fact]
    public void Without_a_single_source_everything_is_isolated()
    {
        var network = new Network(1e-6);
        var a = network.AddJunction(0.5);
        network.AddPipe(a, network.AddJunction(0.6), new Pipe(1, 0.02, 0));
        var solution = Solve(network);
        Assert.Equal([0, 1], solution.IsolatedNodes);
        Assert.All(solution.Heads, h => Assert.Equal(0.5, h));
    }

    [Fact]
    public void Repeated_solves_allocate_nothing()
    {
        var solver = new NetworkSolver(
            Line(10, 0.016, s_dripper, 2, s_smallPump, s_running, new Pipe(0.5, 0.003, 0, 3))
        );
        solver.TrySolve();
        solver.StartFromHere();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
        {
            solver.SetMultiplier(i % 20, 0.9 + 0.001 * i);
            Assert.True(solver.TrySolve());
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    [Fact]
    public void A_draw_gives_the_same_bits_whatever_was_solved_before()
    {
        double[] Draw(NetworkSolver solver, int seed)
        {
            var random = new Random(seed);
            for (var e = 0; e < 20; e++)
            {
                solver.SetMultiplier(e, random.NextDouble());
            }

            Assert.True(solver.TrySolve());
            return solver.EmitterFlows.ToArray();
        }

        NetworkSolver Fresh() => new(Line(10, 0.016, s_dripper, 2, s_smallPump, s_running, new Pipe(0.5, 0.003, 0, 3)));
        foreach (var kept in new[] { false, true })
        {
            var (one, other) = (Fresh(), Fresh());
            if (kept)
            {
                one.TrySolve();
                one.StartFromHere();
                other.TrySolve();
                other.StartFromHere();
            }

            Draw(one, 1);
            Draw(one, 2);
            Assert.Equal(Draw(other, 3), Draw(one, 3));
        }
    }

    [Fact]
    public void Misuse_is_refused()
    {
        var network = new Network(1e-6);
        var tank = network.AddFixedHead(1);
        var node = network.AddJunction(0);
        Assert.Throws<ArgumentOutOfRangeException>(() => network.AddPipe(node, node, new Pipe(1, 0.02, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => network.AddPipe(node, 7, new Pipe(1, 0.02, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => network.AddEmitter(tank, new Emitter(s_dripper, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => network.AddEmitter(node, new Emitter(s_dripper, 0, Count: 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            network.AddEmitter(node, new Emitter(s_dripper, 0, Multiplier: -1))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => network.AddJunction(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Network(0));
    }

    private static Network LowAndHighRow(PumpSetting setting, double surface)
    {
        var network = new Network(1e-6);
        var manifold = network.AddJunction(0);
        network.AddPump(network.AddFixedHead(surface), manifold, s_smallPump, setting);
        foreach (var height in new[] { 0.2, 1.5 })
        {
            var row = network.AddJunction(height);
            network.AddPipe(manifold, row, new Pipe(3, 0.016, 1.5e-6, 2));
            network.AddEmitter(row, new Emitter(s_dripper, height, Count: 10));
        }

        return network;
    }

    private static Network Line(
        int pots,
        double bore,
        EmitterLaw law,
        int perPot,
        PumpCurve curve,
        PumpSetting setting,
        Pipe? tube = null
    )
    {
        var network = new Network(1e-6);
        var last = network.AddJunction(0.5);
        network.AddPump(network.AddFixedHead(0.3), last, curve, setting);
        for (var i = 0; i < pots; i++)
        {
            var node = i == 0 ? last : network.AddJunction(0.5);
            if (i > 0)
            {
                network.AddPipe(last, node, new Pipe(0.3, bore, 1.5e-6, 0.2));
            }

            for (var e = 0; e < perPot; e++)
            {
                network.AddEmitter(node, new Emitter(law, 0.6, perPot * i + e, Branch: tube));
            }

            last = node;
        }

        return network;
    }

    private static NetworkSolution Solve(Network network)
    {
        var solution = new NetworkSolver(network).Solve();
        Check(solution);
        return solution;
    }

    private static void Check(NetworkSolution solution)
    {
        Assert.True(solution.Converged, solution.Reason);
        Assert.True(solution.MassResidual < 1e-9, FormattableString.Invariant($"mass {solution.MassResidual}"));
        Assert.True(solution.EnergyResidual < 1e-6, FormattableString.Invariant($"energy {solution.EnergyResidual}"));
        Assert.True(solution.Iterations < 80, FormattableString.Invariant($"{solution.Iterations} steps"));
    }
}
