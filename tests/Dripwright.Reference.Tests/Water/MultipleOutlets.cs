using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water;

/// <summary>Loss in a lateral with equal outlets against the loss of the whole flow: Christiansen's F and its kin.</summary>
public class MultipleOutlets
{
    [Theory]
    [InlineData(2, 0.64, 0.52)]
    [InlineData(4, 0.49, 0.41)]
    [InlineData(5, 0.46, 0.40)]
    [InlineData(6, 0.44, 0.39)]
    [InlineData(8, 0.42, 0.38)]
    [InlineData(10, 0.40, 0.37)]
    public void Summing_the_solved_segments_gives_the_handbook_factors(int outlets, double full, double half)
    {
        // NRCS National Engineering Handbook, sprinkler chapter (rows from memory), m 1.85: ± 0.01.
        Assert.Equal(full, Factor(outlets, 1.852, 1), 0.01);
        Assert.Equal(half, Factor(outlets, 1.852, 0.5), 0.01);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(40)]
    public void The_solved_lateral_equals_the_exact_sum(int outlets)
    {
        foreach (var m in new[] { 1.75, 1.852, 2.0 })
        {
            // F = Σ kᵐ / Nᵐ⁺¹, an identity.
            var exact = Enumerable.Range(1, outlets).Sum(k => Math.Pow(k, m)) / Math.Pow(outlets, m + 1);
            Assert.Equal(exact, Factor(outlets, m, 1), 1e-9);
        }
    }

    private static double Factor(int outlets, double m, double firstSpacing)
    {
        var network = new Network(1e-6);
        var last = network.AddFixedHead(10);
        for (var i = 0; i < outlets; i++)
        {
            var next = network.AddJunction(0, 1.0 / outlets);
            network.AddLink(last, next, new Segment(i == 0 ? firstSpacing : 1, m));
            last = next;
        }

        var solution = new NetworkSolver(network).Solve();
        Assert.True(solution.Converged, solution.Reason);
        return (solution.Heads[0] - solution.Heads[last]) / (outlets - 1 + firstSpacing);
    }

    private sealed class Segment(double length, double m) : ILinkLaw
    {
        public HeadLoss At(double flow)
        {
            var power = Math.Pow(Math.Abs(flow), m - 1);
            return new HeadLoss(length * flow * power, length * m * power);
        }
    }
}
