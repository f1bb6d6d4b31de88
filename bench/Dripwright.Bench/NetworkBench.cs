using BenchmarkDotNet.Attributes;
using Dripwright.Engine.Water;
using MathNet.Numerics.LinearAlgebra;

namespace Dripwright.Bench;

/// <summary>
/// One row of N outlets, each behind a microtube, on a pumped line. Ours beside Newton on the same node equations with a
/// dense LU from a general library, which grows with N³.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
public class NetworkBench
{
    private const double Viscosity = 1.0e-6;
    private static readonly EmitterLaw s_law = EmitterLaw.FromRating(2e-3 / 3600, 10, 0.5);
    private static readonly Pipe s_tube = new(0.5, 0.003, 0, 3);
    private Network _network = null!;
    private NetworkSolver _solver = null!;
    private NetworkSolver _warm = null!;
    private double _change;

    [Params(10, 100, 300)]
    public int Outlets { get; set; }

    [GlobalSetup]
    public void Build()
    {
        _network = Line(Outlets);
        _solver = new NetworkSolver(_network);
        _warm = new NetworkSolver(_network);
        _warm.TrySolve();
        _warm.StartFromHere();
        var dense = Dense();
        if (Math.Abs(dense - _solver.Solve().TotalFlow) > 1e-9 * dense)
        {
            throw new InvalidOperationException("The two methods do not agree.");
        }
    }

    /// <summary>From the description to the answer: analysis, solve, report.</summary>
    [Benchmark]
    public NetworkSolution Whole() => new NetworkSolver(_network).Solve();

    /// <summary>Solve again with the analysis kept, from scratch.</summary>
    [Benchmark]
    public bool Again() => _solver.TrySolve();

    /// <summary>Solve a slightly changed network from the last answer: one draw of a Monte-Carlo.</summary>
    [Benchmark]
    public bool OneDraw()
    {
        _change = _change > 0.1 ? 0 : _change + 0.01;
        for (var e = 0; e < Outlets; e++)
        {
            _warm.SetMultiplier(e, 0.95 + 0.1 * (e % 7) / 7 + _change);
        }

        return _warm.TrySolve();
    }

    /// <summary>Newton on heads and flows together, dense LU.</summary>
    [Benchmark(Baseline = true)]
    public double Dense()
    {
        var n = Outlets;
        const double Scale = 1e3;
        var laws = _network.Links.Select(l => l.Law).ToArray();
        var tube = new PipeLaw(s_tube, Viscosity);
        // Unknowns: n pipe flows [L/s], n junction heads, n heads behind the tubes.
        var x = Vector<double>.Build.Dense(
            3 * n,
            i =>
                i < n ? Scale * 4e-7 * (n - i)
                : i < 2 * n ? 8
                : 7.9
        );
        var jacobian = Matrix<double>.Build.Dense(3 * n, 3 * n);
        var f = Vector<double>.Build.Dense(3 * n);
        for (var iteration = 0; iteration < 60; iteration++)
        {
            jacobian.Clear();
            f.Clear();
            for (var i = 0; i < n; i++)
            {
                var loss = laws[i].At(x[i] / Scale);
                f[i] = (i == 0 ? 0.3 : x[n + i - 1]) - x[n + i] - loss.Head;
                jacobian[i, i] = -loss.Slope / Scale;
                jacobian[i, n + i] = -1;
                f[n + i] = x[i];
                jacobian[n + i, i] = 1;
                if (i > 0)
                {
                    jacobian[i, n + i - 1] = 1;
                    f[n + i - 1] -= x[i];
                    jacobian[n + i - 1, i] = -1;
                }
            }

            for (var i = 0; i < n; i++)
            {
                var (flow, slope) = s_law.At(x[2 * n + i] - 0.6);
                var loss = tube.At(flow);
                f[n + i] -= flow * Scale;
                jacobian[n + i, 2 * n + i] = -slope * Scale;
                f[2 * n + i] = x[n + i] - x[2 * n + i] - loss.Head;
                jacobian[2 * n + i, n + i] = 1;
                jacobian[2 * n + i, 2 * n + i] = -1 - loss.Slope * slope;
            }

            if (f.InfinityNorm() < 1e-11)
            {
                break;
            }

            x -= jacobian.LU().Solve(f);
        }

        return x[0] / Scale;
    }

    internal static Network Line(int outlets)
    {
        var network = new Network(Viscosity);
        var last = network.AddFixedHead(0.3);
        // The line is sized with the row, as a grower would: about 0.6 m/s at its head.
        var bore = Math.Max(0.013, Math.Sqrt(outlets * 5e-7 / 0.6 * 4 / Math.PI));
        for (var i = 0; i < outlets; i++)
        {
            var node = network.AddJunction(0.5);
            _ =
                i == 0
                    ? network.AddPump(
                        last,
                        node,
                        PumpCurve.FromShutOffAndOpenFlow(10, outlets * 1.2e-6),
                        new PumpSetting(true, false, bore, 10)
                    )
                    : network.AddPipe(last, node, new Pipe(0.15, bore, 1.5e-6, 0.2));
            network.AddEmitter(node, new Emitter(s_law, 0.6, i, Branch: s_tube));
            last = node;
        }

        return network;
    }
}

/// <summary>The same rows where a dense method takes too long: how the solve grows with the row.</summary>
[ShortRunJob]
[MemoryDiagnoser]
public class LongRowBench
{
    private Network _network = null!;
    private NetworkSolver _solver = null!;

    [Params(1000, 5000, 10_000)]
    public int Outlets { get; set; }

    [GlobalSetup]
    public void Build()
    {
        _network = NetworkBench.Line(Outlets);
        _solver = new NetworkSolver(_network);
    }

    /// <summary>From the description to the answer: analysis, solve, report.</summary>
    [Benchmark]
    public NetworkSolution Whole() => new NetworkSolver(_network).Solve();

    /// <summary>Solve again with the analysis kept, from scratch.</summary>
    [Benchmark]
    public bool Again() => _solver.TrySolve();
}
