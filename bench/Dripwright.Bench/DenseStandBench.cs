using BenchmarkDotNet.Attributes;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;
using MathNet.Numerics.LinearAlgebra;

namespace Dripwright.Bench;

/// <summary>
/// One loading of a stand of N pots. Ours, from the frame to displacements and forces, beside a dense LU from a general
/// library that gets the stiffness matrix ready made and gives displacements only.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
public class DenseStandBench
{
    private StandFrame _frame = null!;
    private FrameLoading _loading = null!;
    private Matrix<double> _stiffness = null!;
    private Vector<double> _right = null!;

    [Params(10, 50)]
    public int Pots { get; set; }

    [GlobalSetup]
    public void Build()
    {
        _frame = StandBench.Frame(Pots);
        _loading = StandLoads.Of(_frame, StandCase.Of(false, 2)[0]).Loading;
        var model = _frame.Model;
        var matrix = new FrameMatrix(model);
        var rows = 6 * model.Nodes.Count;
        int[] free = [.. Enumerable.Range(0, rows).Where(i => ((int)model.Nodes[i / 6].Held >> (i % 6) & 1) == 0)];
        _stiffness = Matrix<double>.Build.Dense(free.Length, free.Length);
        for (var j = 0; j < free.Length; j++)
        {
            var unit = new double[rows];
            var column = new double[rows];
            unit[free[j]] = 1;
            matrix.AddElastic(unit, column);
            for (var i = 0; i < free.Length; i++)
            {
                _stiffness[i, j] = column[free[i]];
            }
        }

        var loads = new ElementLoads(model, matrix.Elements, _loading).Rows(new bool[rows]);
        _right = Vector<double>.Build.Dense(free.Length, i => loads[free[i]]);
        var solution = (FrameSolution)Ours();
        var theirs = Dense();
        var up = Array.IndexOf(free, free.First(i => i % 6 == 2));
        if (Math.Abs(theirs[up] - solution.Shift(free[up] / 6).Z) > 1e-6 * theirs.AbsoluteMaximum())
        {
            throw new InvalidOperationException("The two solvers do not agree.");
        }
    }

    [Benchmark]
    public FrameOutcome Ours() => new FrameSolver(_frame.Model).Solve(_loading);

    [Benchmark(Baseline = true)]
    public Vector<double> Dense() => _stiffness.LU().Solve(_right);
}
