namespace Dripwright.Engine.Water;

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
/// </remarks>
internal static class Bracket
{
    private const int MostSteps = 200;
    private const double Fine = 1e-13;

    public static double Root<T>(in T function, double left, double right)
        where T : struct, IOneNumber
    {
        var a = right;
        var b = left;
        var fa = function.At(a);
        var fb = function.At(b);
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
