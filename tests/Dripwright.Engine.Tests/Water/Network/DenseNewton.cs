using Dripwright.Engine.Water;
using MathNet.Numerics.LinearAlgebra;

namespace Dripwright.Engine.Tests.Water;

/// <summary>
/// The same equations solved another way: every emitter on its own, microtubes as pipes with a node of their own, all heads
/// and flows in one dense system, factorised by a general library. Slow, and independent of the solver it checks.
/// </summary>
internal static class DenseNewton
{
    /// <summary>Flow of each single emitter of the sketch, or null if this method does not get there.</summary>
    public static double[]? EmitterFlows(NetworkSketch sketch)
    {
        var links = new List<(int From, int To, ILinkLaw Law)>();
        var emitters = new List<(int Node, Emitter Emitter, int Index)>();
        var n = sketch.Elevations.Length;
        var pumpLaw = sketch.Pump is null
            ? (ILinkLaw)new PipeLaw(new Pipe(1, 0.02, 1.5e-6, 1.5), NetworkSketch.Viscosity)
            : new PumpLaw(sketch.Pump, new PumpSetting(sketch.PumpRuns, false, 0.02, 10));
        links.Add((-1, 0, pumpLaw));
        links.AddRange(
            sketch.Pipes.Select(p => (p.From, p.To, (ILinkLaw)new PipeLaw(p.Pipe, NetworkSketch.Viscosity)))
        );
        for (var i = 0; i < sketch.Emitters.Length; i++)
        {
            var (node, emitter) = sketch.Emitters[i];
            for (var copy = 0; copy < emitter.Count; copy++)
            {
                var at = node;
                if (emitter.Branch is { } branch)
                {
                    at = n++;
                    links.Add((node, at, new PipeLaw(branch, NetworkSketch.Viscosity)));
                }

                emitters.Add((at, emitter, i));
            }
        }

        return Solve(n, links, emitters, sketch);
    }

    private static double[]? Solve(
        int n,
        List<(int From, int To, ILinkLaw Law)> links,
        List<(int Node, Emitter Emitter, int Index)> emitters,
        NetworkSketch sketch
    )
    {
        // Flows in litres a second and heads in metres, so that rows and columns are of like size.
        const double Scale = 1e3;
        var size = links.Count + n;
        var x = Vector<double>.Build.Dense(size, i => i < links.Count ? 0.01 : sketch.Surface + 1);
        var jacobian = Matrix<double>.Build.Dense(size, size);

        Vector<double> Residual(Vector<double> at, Matrix<double>? slopes)
        {
            slopes?.Clear();
            var f = Vector<double>.Build.Dense(size);
            double Head(int node) => node < 0 ? sketch.Surface : at[links.Count + node];
            for (var l = 0; l < links.Count; l++)
            {
                var (from, to, law) = links[l];
                var loss = law.At(at[l] / Scale);
                f[l] = Head(from) - Head(to) - loss.Head;
                if (from >= 0)
                {
                    f[links.Count + from] -= at[l];
                }

                f[links.Count + to] += at[l];
                if (slopes is not null)
                {
                    slopes[l, l] = -loss.Slope / Scale;
                    slopes[l, links.Count + to] = -1;
                    slopes[links.Count + to, l] = 1;
                    if (from >= 0)
                    {
                        slopes[l, links.Count + from] = 1;
                        slopes[links.Count + from, l] = -1;
                    }
                }
            }

            foreach (var (node, emitter, _) in emitters)
            {
                var (flow, slope) = emitter.Law.At(Head(node) - emitter.OutletElevation);
                f[links.Count + node] -= emitter.Multiplier * flow * Scale;
                if (slopes is not null)
                {
                    slopes[links.Count + node, links.Count + node] -= emitter.Multiplier * slope * Scale;
                }
            }

            return f;
        }

        for (var iteration = 0; iteration < 300; iteration++)
        {
            var f = Residual(x, jacobian);
            var norm = f.L2Norm();
            if (norm < 1e-12)
            {
                break;
            }

            var step = jacobian.LU().Solve(f);
            var part = 1.0;
            while (part > 1e-8 && !(Residual(x - part * step, null).L2Norm() < norm))
            {
                part *= 0.5;
            }

            if (part <= 1e-8)
            {
                break;
            }

            x -= part * step;
        }

        if (!(Residual(x, null).L2Norm() < 1e-9))
        {
            return null;
        }

        var flows = new double[sketch.Emitters.Length];
        foreach (var (node, emitter, index) in emitters)
        {
            flows[index] = emitter.Multiplier * emitter.Law.Flow(x[links.Count + node] - emitter.OutletElevation);
        }

        return flows;
    }
}
