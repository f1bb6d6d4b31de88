using BenchmarkDotNet.Attributes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;

namespace Dripwright.Bench;

/// <summary>The stand of a row of N pots, braced: how its cost grows.</summary>
[ShortRunJob]
[MemoryDiagnoser]
public class StandBench
{
    private StandFrame _frame = null!;
    private FrameLoading _loading = null!;
    private FrameSolver _solver = null!;
    private FrameSolution _solution = null!;

    [Params(10, 100, 1000)]
    public int Pots { get; set; }

    [GlobalSetup]
    public void Build()
    {
        _frame = Frame(Pots);
        _loading = StandLoads.Of(_frame, StandCase.Of(false, 2)[0]).Loading;
        _solver = new FrameSolver(_frame.Model);
        _solution = (FrameSolution)_solver.Solve(_loading);
    }

    /// <summary>From the frame to displacements and forces: analysis, factorisation, solution, reactions.</summary>
    [Benchmark]
    public FrameOutcome Whole() => new FrameSolver(_frame.Model).Solve(_loading);

    /// <summary>One more loading with the analysis and the factors kept.</summary>
    [Benchmark]
    public FrameOutcome Again() => _solver.Solve(_loading);

    /// <summary>Second order.</summary>
    [Benchmark]
    public FrameOutcome SecondOrder() => _solver.Solve(_loading, new FrameOptions { SecondOrder = true });

    /// <summary>Buckling factor, proven.</summary>
    [Benchmark]
    public FrameBuckling? Buckling() => _solver.Buckling(_solution);

    /// <summary>Every combination with every check.</summary>
    [Benchmark]
    public RowStand Plan() => StandPlanner.Check(_frame);

    internal static StandFrame Frame(int pots)
    {
        var json = FormattableString.Invariant($$"""{ "rows": [ { "pots": {{pots}} } ] }""");
        var rig = RigReader.Read(json, "bench", PartsCatalogue.Default).Resolved!;
        return StandFrame.Of(RigLayout.Of(rig), new StandOptions { Bracing = Bracing.Both })[0];
    }
}
