using CsCheck;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

public class DenseCrossCheckTests
{
    [Fact]
    public void A_dense_Newton_without_any_of_our_shortcuts_finds_the_same_flows()
    {
        var compared = 0;
        var tried = 0;
        var networks =
            from seed in Gen.Int[0, 1_000_000]
            from size in Gen.Int[1, 12]
            from loops in Gen.Int[0, 6]
            select NetworkSketch.Random(seed, size, loops) with
            {
                PumpHasCheckValve = false,
            };
        networks.Holds(
            sketch =>
            {
                Interlocked.Increment(ref tried);
                var dense = DenseNewton.EmitterFlows(sketch);
                if (dense is null)
                {
                    return;
                }

                Interlocked.Increment(ref compared);
                var ours = new NetworkSolver(sketch.Build()).Solve();
                Assert.True(ours.Converged, ours.Reason);
                for (var e = 0; e < dense.Length; e++)
                {
                    Assert.Equal(dense[e], ours.EmitterFlows[e], 1e-6 * ours.TotalFlow + 1e-12);
                }
            },
            iter: 300
        );
        // The dense method may miss a few (it has no safeguards); most it must find, or nothing is being checked.
        Assert.True(compared > 0.8 * tried, FormattableString.Invariant($"{compared} of {tried}"));
    }

    [Fact]
    public void The_sparse_factorisation_solves_what_a_dense_one_solves() =>
        (
            from seed in Gen.Int[0, 1_000_000]
            from n in Gen.Int[1, 60]
            from extra in Gen.Int[0, 120]
            select (seed, n, extra)
        ).Holds(
            t =>
            {
                var random = new Random(t.seed);
                var edges = new List<(int, int)>();
                for (var i = 1; i < t.n; i++)
                {
                    edges.Add((i, random.Next(i)));
                }

                for (var i = 0; i < t.extra && t.n > 1; i++)
                {
                    var a = random.Next(t.n);
                    edges.Add((a, (a + 1 + random.Next(t.n - 1)) % t.n));
                }

                edges.Add((-1, 0));
                var ldl = new SparseLdl(t.n, edges);
                var dense = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(t.n, t.n);
                ldl.Clear();
                for (var e = 0; e < edges.Count; e++)
                {
                    var value = Math.Exp(6 * random.NextDouble());
                    var (a, b) = edges[e];
                    ldl.AddDiagonal(b, value);
                    dense[b, b] += value;
                    if (a >= 0)
                    {
                        ldl.AddDiagonal(a, value);
                        dense[a, a] += value;
                        ldl.AddEdge(e, -value);
                        dense[a, b] -= value;
                        dense[b, a] -= value;
                    }
                }

                Assert.True(ldl.TryFactor());
                var right = Enumerable.Range(0, t.n).Select(_ => random.NextDouble() - 0.5).ToArray();
                var expected = dense
                    .Cholesky()
                    .Solve(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.DenseOfArray(right));
                ldl.Solve(right);
                for (var i = 0; i < t.n; i++)
                {
                    Assert.Equal(expected[i], right[i], 1e-8);
                }
            },
            iter: 300
        );

    [Fact]
    public void A_tree_fills_in_nothing()
    {
        var random = new Random(3);
        var edges = Enumerable.Range(1, 9_999).Select(i => (i, random.Next(Math.Max(0, i - 50), i))).ToList();
        Assert.Equal(9_999, new SparseLdl(10_000, edges).LowerEntries);
    }

    [Fact]
    public void A_row_closed_to_a_ladder_fills_in_little()
    {
        // Two lines side by side with a rung at every pot.
        var edges = new List<(int, int)>();
        for (var i = 0; i < 5_000; i++)
        {
            edges.Add((2 * i, 2 * i + 1));
            if (i > 0)
            {
                edges.Add((2 * i - 2, 2 * i));
                edges.Add((2 * i - 1, 2 * i + 1));
            }
        }

        Assert.InRange(new SparseLdl(10_000, edges).LowerEntries, 14_998, 40_000);
    }
}
