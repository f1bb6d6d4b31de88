using MathNet.Numerics.LinearAlgebra;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>The multiple of its loads at which a frame buckles.</summary>
/// <param name="Factor">[-] Multiple of all loads together.</param>
/// <param name="Mode">[-] Shape it buckles into: shift and turn of every node, the largest shift 1.</param>
/// <param name="Proven">True where the frame was seen to be stable just below the factor and unstable just above it.</param>
public sealed record FrameBuckling(double Factor, IReadOnlyList<(Vector3 Shift, Vector3 Turn)> Mode, bool Proven);

/// <summary>Smallest positive λ with (K + λ·Kg)·φ = 0.</summary>
/// <remarks>
/// Inverse iteration with a small subspace (Bathe, Finite Element Procedures, ch. 11, from memory): several vectors go along
/// because members in tension give negative values that may be nearer. The answer is proven by two factorisations: K + λKg
/// is positive definite below the smallest λ and not above it. Where that fails the same test is used to halve the range.
/// </remarks>
internal static class BucklingSearch
{
    private const int Vectors = 6;
    private const int MostRounds = 60;
    private const double Most = 1e6;

    public static FrameBuckling? Smallest(FrameMatrix matrix, bool[] held, IReadOnlyList<double> tensions)
    {
        double[] tension = [.. tensions];
        double[] press = [.. tension.Select(n => -n)];
        if (!tension.Any(n => n < 0) || !matrix.TryFactor(held, null))
        {
            return null;
        }

        var n = held.Length;
        var count = Math.Min(Vectors, n);
        double[][] x = [.. Enumerable.Range(0, count).Select(i => Start(i, held))];
        // The load of each vector is −Kg·x; solving for it gives the next vector.
        double[][] load = [.. x.Select(v => Product(matrix, press, v, held))];
        double best = 0;
        for (var round = 0; round < MostRounds; round++)
        {
            for (var i = 0; i < x.Length; i++)
            {
                x[i] = (double[])load[i].Clone();
                matrix.Solve(x[i]);
            }

            double[][] pressed = [.. x.Select(v => Product(matrix, press, v, held))];
            (var value, var mix) = Ritz(x, load, pressed);
            x = Mixed(x, mix);
            load = Mixed(pressed, mix);
            var settled = value > 0 && Math.Abs(value - best) <= 1e-8 * value;
            best = value;
            if (settled)
            {
                break;
            }
        }

        var mode = x[0];
        var factor = best > 0 ? 1 / best : double.PositiveInfinity;
        bool stable(double f) => matrix.TryFactor(held, [.. tension.Select(t => f * t)]);
        var proven = factor < Most && stable(factor * (1 - 1e-5)) && !stable(factor * (1 + 1e-5));
        if (!proven)
        {
            (factor, mode) = Halving(matrix, stable);
            if (double.IsPositiveInfinity(factor))
            {
                return null;
            }
        }

        return new FrameBuckling(factor, Shape(mode!), true);
    }

    private static (double Factor, double[]? Mode) Halving(FrameMatrix matrix, Func<double, bool> stable)
    {
        double low = 0;
        double high = 1;
        while (stable(high))
        {
            low = high;
            high *= 4;
            if (high > Most)
            {
                return (double.PositiveInfinity, null);
            }
        }

        while (high - low > 1e-7 * high)
        {
            var middle = (low + high) / 2;
            if (stable(middle))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        stable(high);
        return (high, matrix.FreeMotion());
    }

    // Best combinations of the vectors: the largest value of x'(−Kg)x over x'Kx comes first. Each combination is a list of
    // shares of the vectors; load is K·x and pressed −Kg·x.
    private static (double Value, double[][] Mix) Ritz(double[][] x, double[][] load, double[][] pressed)
    {
        var count = x.Length;
        var k = Matrix<double>.Build.Dense(count, count, (i, j) => (Dot(x[i], load[j]) + Dot(x[j], load[i])) / 2);
        var g = Matrix<double>.Build.Dense(count, count, (i, j) => (Dot(x[i], pressed[j]) + Dot(x[j], pressed[i])) / 2);
        // Whitened by the eigenvectors of the small K; directions in which the vectors have become alike are dropped.
        double[] scale = [.. Enumerable.Range(0, count).Select(i => k[i, i] > 0 ? 1 / Math.Sqrt(k[i, i]) : 0)];
        var scaled = Matrix<double>.Build.Dense(count, count, (i, j) => scale[i] * k[i, j] * scale[j]);
        var evd = scaled.Evd(Symmetricity.Symmetric);
        var top = evd.EigenValues.Max(v => v.Real);
        int[] kept = [.. Enumerable.Range(0, count).Where(i => evd.EigenValues[i].Real > 1e-10 * top)];
        var white = Matrix<double>.Build.Dense(
            count,
            kept.Length,
            (i, j) => scale[i] * evd.EigenVectors[i, kept[j]] / Math.Sqrt(evd.EigenValues[kept[j]].Real)
        );
        var small = white.TransposeThisAndMultiply(g * white);
        var ritz = ((small + small.Transpose()) / 2).Evd(Symmetricity.Symmetric);
        int[] order = [.. Enumerable.Range(0, kept.Length).OrderByDescending(i => ritz.EigenValues[i].Real)];
        var mix = white * ritz.EigenVectors;
        return (ritz.EigenValues[order[0]].Real, [.. order.Select(c => mix.Column(c).ToArray())]);
    }

    private static double[][] Mixed(double[][] vectors, double[][] mix) =>
        [
            .. mix.Select(shares =>
            {
                var sum = new double[vectors[0].Length];
                for (var j = 0; j < shares.Length; j++)
                {
                    var f = shares[j];
                    var v = vectors[j];
                    for (var i = 0; i < sum.Length; i++)
                    {
                        sum[i] += f * v[i];
                    }
                }

                return sum;
            }),
        ];

    private static double[] Product(FrameMatrix matrix, double[] press, double[] x, bool[] held)
    {
        var y = new double[x.Length];
        matrix.AddGeometric(press, x, y);
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = held[i] ? 0 : y[i];
        }

        return y;
    }

    // Smooth and unlike each other, the same every time.
    private static double[] Start(int vector, bool[] held)
    {
        var x = new double[held.Length];
        for (var i = 0; i < x.Length; i++)
        {
            x[i] = held[i] ? 0 : Math.Cos(((vector + 1) * 0.7 * (i + 1)) + (i % 6 == vector ? 2 : 0)) + 0.1;
        }

        return x;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    private static (Vector3 Shift, Vector3 Turn)[] Shape(double[] mode)
    {
        var shape = new (Vector3 Shift, Vector3 Turn)[mode.Length / 6];
        double most = 0;
        for (var i = 0; i < shape.Length; i++)
        {
            shape[i] = (
                new Vector3(mode[6 * i], mode[(6 * i) + 1], mode[(6 * i) + 2]),
                new Vector3(mode[(6 * i) + 3], mode[(6 * i) + 4], mode[(6 * i) + 5])
            );
            most = Math.Max(most, shape[i].Shift.Length);
        }

        var f = most > 0 ? 1 / most : 1;
        return [.. shape.Select(s => (f * s.Shift, f * s.Turn))];
    }
}
