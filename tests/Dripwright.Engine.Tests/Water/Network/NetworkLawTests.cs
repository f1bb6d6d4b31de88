using CsCheck;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

/// <summary>Laws that hold for every network, tried on random trees and loops.</summary>
public class NetworkLawTests
{
    private static readonly Gen<NetworkSketch> s_trees =
        from seed in Gen.Int[0, 1_000_000]
        from size in Gen.Int[1, 60]
        select NetworkSketch.Random(seed, size, 0);

    private static readonly Gen<NetworkSketch> s_loops =
        from seed in Gen.Int[0, 1_000_000]
        from size in Gen.Int[2, 60]
        from loops in Gen.Int[1, 25]
        select NetworkSketch.Random(seed, size, loops);

    private static readonly Gen<NetworkSketch> s_any = Gen.OneOf(s_trees, s_loops);

    [Fact]
    public void Trees_conserve_mass_and_energy() => s_trees.Holds(s => Check(s), iter: 1000);

    [Fact]
    public void Loops_conserve_mass_and_energy() => s_loops.Holds(s => Check(s), iter: 1000);

    [Fact]
    public void A_stronger_pump_never_lowers_the_total_flow() =>
        s_any
            .Where(s => s.Pump is not null)
            .Holds(
                s =>
                {
                    var weak = Solve(s);
                    var strong = Solve(s with { Pump = s.Pump!.AtSpeed(1.1) });
                    return strong.TotalFlow >= weak.TotalFlow * (1 - 1e-9) - 1e-15;
                },
                iter: 300
            );

    [Fact]
    public void Raising_an_outlet_never_raises_its_flow() =>
        s_any
            .Where(s => s.Emitters.Length > 0)
            .Holds(
                s =>
                {
                    var before = Solve(s);
                    var raised = ((int, Emitter)[])s.Emitters.Clone();
                    var (node, emitter) = raised[0];
                    raised[0] = (node, emitter with { OutletElevation = emitter.OutletElevation + 0.1 });
                    var after = Solve(s with { Emitters = raised });
                    return after.EmitterFlows[0] <= before.EmitterFlows[0] * (1 + 1e-9) + 1e-15;
                },
                iter: 300
            );

    [Fact]
    public void Numbering_the_nodes_otherwise_changes_nothing() =>
        s_any.Holds(
            s =>
            {
                var plain = Solve(s);
                var order = Enumerable.Range(0, s.Elevations.Length).ToArray();
                new Random(7).Shuffle(order);
                var other = new NetworkSolver(s.Build(order, reservoirLast: true)).Solve();
                for (var e = 0; e < s.Emitters.Length; e++)
                {
                    Assert.Equal(plain.EmitterFlows[e], other.EmitterFlows[e], 1e-8 * plain.TotalFlow + 1e-16);
                }
            },
            iter: 300
        );

    [Fact]
    public void Nothing_flows_into_an_emitter_and_nothing_back_through_a_check_valve() =>
        s_any.Holds(
            s =>
            {
                var solution = Solve(s);
                Assert.All(solution.EmitterFlows, q => Assert.True(q >= 0));
                if (s.Pump is not null && s.PumpHasCheckValve)
                {
                    Assert.True(solution.LinkFlows[0] >= -1e-11 * solution.TotalFlow - 1e-15);
                }
            },
            iter: 300
        );

    [Fact]
    public void Two_mirrored_rows_on_a_tee_flow_alike()
    {
        Gen.Int[1, 1_000_000]
            .Holds(
                seed =>
                {
                    var row = NetworkSketch.Random(seed, 15, 2);
                    var n = row.Elevations.Length;
                    var link = new Pipe(1, 0.016, 0, 1);
                    var both = row with
                    {
                        Elevations = [0.5, .. row.Elevations, .. row.Elevations],
                        Pipes =
                        [
                            (0, 1, link),
                            .. row.Pipes.Select(p => (p.From + 1, p.To + 1, p.Pipe)),
                            (0, n + 1, link),
                            .. row.Pipes.Select(p => (p.From + n + 1, p.To + n + 1, p.Pipe)),
                        ],
                        Emitters =
                        [
                            .. row.Emitters.Select(e => (e.Node + 1, e.Emitter)),
                            .. row.Emitters.Select(e => (e.Node + n + 1, e.Emitter)),
                        ],
                    };
                    var solution = Solve(both);
                    for (var e = 0; e < row.Emitters.Length; e++)
                    {
                        Assert.Equal(
                            solution.EmitterFlows[e],
                            solution.EmitterFlows[e + row.Emitters.Length],
                            1e-8 * solution.TotalFlow + 1e-16
                        );
                    }
                },
                iter: 200
            );
    }

    [Fact]
    public void Starting_from_a_kept_answer_gives_the_same_answer() =>
        s_any
            .Where(s => s.Emitters.Length > 1)
            .Holds(
                s =>
                {
                    var solver = new NetworkSolver(s.Build());
                    solver.Solve();
                    solver.StartFromHere();
                    solver.SetMultiplier(0, 0.3);
                    var warm = solver.Solve();
                    var fresh = new NetworkSolver(s.Build());
                    fresh.SetMultiplier(0, 0.3);
                    var cold = fresh.Solve();
                    Assert.True(warm.Converged && cold.Converged, warm.Reason + cold.Reason);
                    for (var e = 0; e < s.Emitters.Length; e++)
                    {
                        Assert.Equal(cold.EmitterFlows[e], warm.EmitterFlows[e], 1e-8 * cold.TotalFlow + 1e-16);
                    }
                },
                iter: 200
            );

    private static NetworkSolution Solve(NetworkSketch sketch)
    {
        var solution = new NetworkSolver(sketch.Build()).Solve();
        Assert.True(solution.Converged, solution.Reason);
        return solution;
    }

    private static void Check(NetworkSketch sketch)
    {
        var solution = Solve(sketch);
        Assert.True(solution.MassResidual < 1e-9, FormattableString.Invariant($"mass {solution.MassResidual}"));
        Assert.True(solution.EnergyResidual < 1e-6, FormattableString.Invariant($"energy {solution.EnergyResidual}"));
        Assert.True(solution.Iterations < 60, FormattableString.Invariant($"{solution.Iterations} steps"));
        Assert.All(solution.Heads, h => Assert.True(double.IsFinite(h)));
    }
}
