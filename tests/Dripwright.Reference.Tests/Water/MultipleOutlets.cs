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

    [Theory]
    [InlineData(1.75)]
    [InlineData(1.852)]
    [InlineData(2.0)]
    public void The_energy_line_of_a_long_lateral_follows_Wu_and_Gitlin(double m)
    {
        // Wu & Gitlin, Hawaii Agr. Exp. Stn. Tech. Bull. 96, 1974 (formula from memory): the part of the loss that is used
        // at the relative distance i is 1 - (1 - i)^(m+1); half-way 0.8513, 0.8615 and 0.8750 for these exponents.
        const int Outlets = 400;
        var (solution, nodes) = Lateral(Outlets, m, 0.5);
        var whole = solution.Heads[nodes[0]] - solution.Heads[nodes[^1]];
        for (var j = 1; j < nodes.Length; j += 37)
        {
            var distance = (j - 0.5) / Outlets;
            var used = (solution.Heads[nodes[0]] - solution.Heads[nodes[j]]) / whole;
            Assert.Equal(1 - Math.Pow(1 - distance, m + 1), used, 1e-4);
        }
    }

    private static double Factor(int outlets, double m, double firstSpacing)
    {
        var (solution, nodes) = Lateral(outlets, m, firstSpacing);
        return (solution.Heads[nodes[0]] - solution.Heads[nodes[^1]]) / (outlets - 1 + firstSpacing);
    }

    private static (NetworkSolution Solution, int[] Nodes) Lateral(int outlets, double m, double firstSpacing)
    {
        var network = new Network(1e-6);
        var nodes = new int[outlets + 1];
        nodes[0] = network.AddFixedHead(10);
        for (var i = 0; i < outlets; i++)
        {
            nodes[i + 1] = network.AddJunction(0, 1.0 / outlets);
            network.AddLink(nodes[i], nodes[i + 1], new Segment(i == 0 ? firstSpacing : 1, m));
        }

        var solution = new NetworkSolver(network).Solve();
        Assert.True(solution.Converged, solution.Reason);
        return (solution, nodes);
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
