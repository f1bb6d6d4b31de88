using System.Runtime.CompilerServices;

namespace Dripwright.Engine.Numerics;

/// <summary>A function of one number, as a struct so that the search below can inline it.</summary>
internal interface IOneNumber
{
    double At(double x);
}

/// <summary>Finds where a function crosses zero between two ends of unlike sign. Always ends.</summary>
/// <remarks>
/// Inverse quadratic steps with bisection as the fall-back. T. R. Chandrupatla, A new hybrid quadratic/bisection
/// algorithm for finding the zero of a nonlinear function, Adv. Eng. Software 28(3), 1997 (from memory).
/// Written here because the drain profile calls it a hundred thousand times and must neither allocate nor fail;
/// the library's root finders take delegates and give up on flat functions.
/// Both searches are compiled fully at once: what the runtime learns from the first calls made them five times slower.
/// </remarks>
internal static class Bracket
{
    private const int MostSteps = 200;
    private const double Fine = 1e-13;

    /// <summary>The zero of a function that only rises or only falls, sought outwards from a guess before the ends are used.</summary>
    /// <remarks>Neighbouring depths differ little, so a narrow bracket is found at once and saves half of the work.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double RootNear<T>(in T function, bool rises, double guess, double reach, double left, double right)
        where T : struct, IOneNumber
    {
        var x = Math.Clamp(guess, left, right);
        var fx = function.At(x);
        var step = fx < 0 == rises ? reach : -reach;
        while (fx != 0)
        {
            var next = Math.Clamp(x + step, left, right);
            var fnext = function.At(next);
            if (Math.Sign(fnext) != Math.Sign(fx))
            {
                return Between(function, x, fx, next, fnext);
            }

            if (next == left || next == right)
            {
                throw new ArgumentOutOfRangeException(nameof(left), left, "The function has one sign at both ends.");
            }

            (x, fx) = (next, fnext);
            step *= 4;
        }

        return x;
    }

    public static double Root<T>(in T function, double left, double right)
        where T : struct, IOneNumber => Between(function, left, function.At(left), right, function.At(right));

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double Between<T>(in T function, double left, double fleft, double right, double fright)
        where T : struct, IOneNumber
    {
        var a = right;
        var b = left;
        var fa = fright;
        var fb = fleft;
        if (fa == 0 || fb == 0)
        {
            return fa == 0 ? a : b;
        }

        if (Math.Sign(fa) == Math.Sign(fb))
        {
            throw new ArgumentOutOfRangeException(nameof(left), left, "The function has one sign at both ends.");
        }

        var part = 0.5;
        for (var step = 0; step < MostSteps; step++)
        {
            var x = a + part * (b - a);
            var fx = function.At(x);
            var (c, fc) = (a, fa);
            if (Math.Sign(fx) != Math.Sign(fa))
            {
                (c, fc) = (b, fb);
                (b, fb) = (a, fa);
            }

            (a, fa) = (x, fx);
            var best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            var least = Fine * Math.Abs(best) / Math.Abs(b - a);
            if (fa == 0 || !(least < 0.5))
            {
                return best;
            }

            part = Math.Clamp(NextPart(a, b, c, fa, fb, fc), least, 1 - least);
        }

        return a;
    }

    private static double NextPart(double a, double b, double c, double fa, double fb, double fc)
    {
        var xi = (a - b) / (c - b);
        var phi = (fa - fb) / (fc - fb);
        return phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
            ? fa / (fb - fa) * (fc / (fb - fc)) + (c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb))
            : 0.5;
    }
}
