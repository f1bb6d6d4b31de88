using BenchmarkDotNet.Attributes;
using CSparse;
using CSparse.Double.Factorization;
using CSparse.Storage;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Strength;
using Dripwright.Engine.Strength.Checks;
using Dripwright.Engine.Strength.Frame;
using Dripwright.Engine.Strength.Loads;

namespace Dripwright.Bench;

/// <summary>
/// The stand of a row of N pots. Ours beside a general sparse Cholesky factorisation (CSparse.NET) on the same stiffness
/// values.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
public class StandBench
{
    private StandFrame _frame = null!;
    private FrameLoading _loading = null!;
    private FrameSolver _solver = null!;
    private FrameSolution _solution = null!;
    private CoordinateStorage<double> _entries = null!;
    private double[] _right = null!;

    [Params(10, 100, 1000)]
    public int Pots { get; set; }

    [GlobalSetup]
    public void Build()
    {
        _frame = Frame(Pots);
        _loading = StandLoads.Of(_frame, StandCase.Of(false, 2)[0]).Loading;
        _solver = new FrameSolver(_frame.Model);
        _solution = (FrameSolution)_solver.Solve(_loading);
        (_entries, _right) = Entries(_frame, _loading);
        double[] theirs = Sparse();
        if (Math.Abs(theirs[^1] - Last(_frame, _solution)) > 1e-6 * Math.Abs(theirs[^1]))
        {
            throw new InvalidOperationException("The two solvers do not agree.");
        }
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

    /// <summary>A general sparse Cholesky: from entries to displacements.</summary>
    [Benchmark(Baseline = true)]
    public double[] Sparse()
    {
        var matrix = CSparse.Converter.ToCompressedColumnStorage(_entries);
        var x = new double[_right.Length];
        SparseCholesky
            .Create((CSparse.Double.SparseMatrix)matrix, ColumnOrdering.MinimumDegreeAtPlusA)
            .Solve(_right, x);
        return x;
    }

    internal static StandFrame Frame(int pots)
    {
        string json = FormattableString.Invariant($$"""{ "rows": [ { "pots": {{pots}} } ] }""");
        Rig rig = RigReader.Read(json, "bench", PartsCatalogue.Default).Rig!;
        return StandFrame.Of(
            RigLayout.Of(rig, RigParts.Of(rig, PartsCatalogue.Default)),
            new StandOptions { Bracing = Bracing.Both }
        )[0];
    }

    /// <summary>The free rows' entries and loads.</summary>
    internal static (CoordinateStorage<double> Entries, double[] Right) Entries(StandFrame frame, FrameLoading loading)
    {
        FrameModel model = frame.Model;
        var matrix = new FrameMatrix(model);
        var row = new int[6 * model.Nodes.Count];
        int free = 0;
        for (int i = 0; i < row.Length; i++)
        {
            row[i] = ((int)model.Nodes[i / 6].Held >> (i % 6) & 1) == 1 ? -1 : free++;
        }

        var entries = new CoordinateStorage<double>(free, free, 144 * model.Elements.Count);
        var room = new double[144];
        for (int e = 0; e < model.Elements.Count; e++)
        {
            matrix.Elements[e].ToRoom(matrix.Elements[e].Elastic, room);
            for (int i = 0; i < 12; i++)
            {
                for (int j = 0; j < 12; j++)
                {
                    int a = row[Row(model.Elements[e], i)];
                    int b = row[Row(model.Elements[e], j)];
                    if (a >= 0 && b >= 0)
                    {
                        entries.At(a, b, room[(12 * i) + j]);
                    }
                }
            }
        }

        double[] loads = new ElementLoads(model, matrix.Elements, loading).Rows(new bool[row.Length]);
        return (entries, [.. Enumerable.Range(0, row.Length).Where(i => row[i] >= 0).Select(i => loads[i])]);
    }

    internal static double Last(StandFrame frame, FrameSolution solution)
    {
        int last = (6 * frame.Model.Nodes.Count) - 1;
        while (((int)frame.Model.Nodes[last / 6].Held >> (last % 6) & 1) == 1)
        {
            last--;
        }

        var (shift, turn) = (solution.Shift(last / 6), solution.Turn(last / 6));
        return ((double[])[shift.X, shift.Y, shift.Z, turn.X, turn.Y, turn.Z])[last % 6];
    }

    private static int Row(FrameElement element, int i) => i < 6 ? (6 * element.From) + i : (6 * element.To) + i - 6;
}
