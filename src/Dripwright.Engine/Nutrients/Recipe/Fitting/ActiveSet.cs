namespace Dripwright.Engine.Nutrients.Recipe.Fitting;

/// <summary>
/// Primal active-set method for small bounded least-squares and linear programs: exact up to rounding, deterministic, at home with
/// columns that depend on each other.
/// </summary>
/// <remarks>
/// Each round holds the limits that are touched as equations and solves the rest in their null space by pivoted QR. A round
/// that gains nothing looks at the multipliers: where one has the wrong sign its limit is let go, else the answer is optimal
/// (Karush, Kuhn, Tucker). Ties and rounds without a step go by the lowest number (Bland), so that it cannot go round in circles.
/// After J. Nocedal and S. Wright, Numerical Optimization, 2nd ed., algorithm 16.3, with least squares by QR in place of
/// the Hessian (from memory). Method page: docs/methods/recipe.md
/// </remarks>
internal sealed class ActiveSet
{
    private const double Tolerance = 1e-11;

    private readonly FitProblem problem;
    private readonly int n;
    private readonly double[] x;
    private readonly Held[] held;
    private readonly List<int> touched = [];
    private readonly double scale;
    private readonly double longestRow;
    private readonly double longestLimit;
    private bool careful;

    private enum Held
    {
        Free,
        AtNought,
        AtMost,
    }

    private ActiveSet(FitProblem problem)
    {
        this.problem = problem;
        n = problem.Unknowns;
        x = (double[])problem.Start.Clone();
        held = new Held[n];
        for (var j = 0; j < n; j++)
        {
            held[j] =
                x[j] <= 0 ? Held.AtNought
                : x[j] >= problem.Most[j] ? Held.AtMost
                : Held.Free;
        }
        longestRow = Longest(problem.Rows);
        longestLimit = Longest(problem.Kept.Concat(problem.Limited));
        scale = Math.Max(
            1,
            Math.Max(Math.Sqrt(problem.Wanted.Sum(b => b * b)), problem.Costs is { } costs ? costs.Max(Math.Abs) : 0)
        );
    }

    private static double Longest(IEnumerable<double[]> rows) =>
        rows.Select(row => Math.Sqrt(Dot(row, row))).DefaultIfEmpty(0).Max();

    public static FitSolution Solve(FitProblem problem) => new ActiveSet(problem).Run();

    private FitSolution Run()
    {
        var most = 200 + 40 * (n + problem.Limited.Length);
        for (var step = 0; step < most; step++)
        {
            int[] free = [.. Enumerable.Range(0, n).Where(j => held[j] == Held.Free)];
            var gradient = Gradient();
            var qr = Holding(free);
            if (Direction(free, gradient, qr) is { } direction && Move(free, direction))
            {
                continue;
            }
            if (!LetGo(free, gradient, qr))
            {
                return new FitSolution(x, step, true);
            }
        }
        return new FitSolution(x, most, false);
    }

    private double[] Gradient()
    {
        var gradient = problem.Costs is { } costs ? (double[])costs.Clone() : new double[n];
        for (var i = 0; i < problem.Rows.Length; i++)
        {
            var row = problem.Rows[i];
            var residual = Dot(row, x) - problem.Wanted[i];
            for (var j = 0; j < n; j++)
            {
                gradient[j] += row[j] * residual;
            }
        }
        return gradient;
    }

    private double[] Row(int i) =>
        i < problem.Kept.Length ? problem.Kept[i] : problem.Limited[touched[i - problem.Kept.Length]];

    // The equations that hold, as columns over the free unknowns.
    private PivotedQr Holding(int[] free)
    {
        var columns = new double[problem.Kept.Length + touched.Count][];
        for (var i = 0; i < columns.Length; i++)
        {
            var row = Row(i);
            columns[i] = [.. free.Select(j => row[j])];
        }
        return new PivotedQr(columns, free.Length, longestLimit);
    }

    private double[]? Direction(int[] free, double[] gradient, PivotedQr qr)
    {
        var room = free.Length - qr.Rank;
        if (room == 0)
        {
            return null;
        }
        var inside = problem.Rows.Length > 0 ? Fit(free, qr, room) : Downhill(free, gradient, qr);
        qr.Times(inside);
        var gain = 0.0;
        var size = 0.0;
        for (var f = 0; f < free.Length; f++)
        {
            gain -= gradient[free[f]] * inside[f];
            size = Math.Max(size, Math.Abs(inside[f]));
        }
        return gain > Tolerance * Tolerance * scale * scale && size > 0 ? inside : null;
    }

    // Coordinates in Q of the least-squares step: none along the equations, the fit across them.
    private double[] Fit(int[] free, PivotedQr qr, int room)
    {
        var m = problem.Rows.Length;
        var columns = new double[room][];
        for (var c = 0; c < room; c++)
        {
            columns[c] = new double[m];
        }
        var residual = new double[m];
        var along = new double[free.Length];
        for (var i = 0; i < m; i++)
        {
            var row = problem.Rows[i];
            for (var f = 0; f < free.Length; f++)
            {
                along[f] = row[free[f]];
            }
            qr.TransposedTimes(along);
            for (var c = 0; c < room; c++)
            {
                columns[c][i] = along[qr.Rank + c];
            }
            residual[i] = problem.Wanted[i] - Dot(row, x);
        }
        var fit = new PivotedQr(columns, m, longestRow);
        fit.TransposedTimes(residual);
        var inside = new double[free.Length];
        fit.Back(residual).CopyTo(inside, qr.Rank);
        return inside;
    }

    private static double[] Downhill(int[] free, double[] gradient, PivotedQr qr)
    {
        double[] inside = [.. free.Select(j => -gradient[j])];
        qr.TransposedTimes(inside);
        Array.Clear(inside, 0, qr.Rank);
        return inside;
    }

    /// <summary>Goes along the direction until the fit is best or a limit is touched; false where it gets nowhere.</summary>
    private bool Move(int[] free, double[] direction)
    {
        var far = problem.Rows.Length > 0 ? 1 : double.PositiveInfinity;
        var noise = Tolerance * direction.Max(Math.Abs);
        var (stop, isRow) = (-1, false);
        for (var f = 0; f < free.Length; f++)
        {
            var j = free[f];
            var reach =
                direction[f] < -noise ? x[j] / -direction[f]
                : direction[f] > noise ? (problem.Most[j] - x[j]) / direction[f]
                : double.PositiveInfinity;
            if (reach < far)
            {
                (far, stop) = (reach, j);
            }
        }
        for (var i = 0; i < problem.Limited.Length; i++)
        {
            if (touched.Contains(i))
            {
                continue;
            }
            var row = problem.Limited[i];
            var rise = 0.0;
            for (var f = 0; f < free.Length; f++)
            {
                rise += row[free[f]] * direction[f];
            }
            if (rise > noise)
            {
                var reach = Math.Max(0, problem.Limits[i] - Dot(row, x)) / rise;
                if (reach < far)
                {
                    (far, stop, isRow) = (reach, i, true);
                }
            }
        }
        if (double.IsPositiveInfinity(far))
        {
            // A cost that could fall for ever: no program of ours has one, as prices are not negative.
            return false;
        }
        var moved = 0.0;
        for (var f = 0; f < free.Length; f++)
        {
            var j = free[f];
            moved = Math.Max(moved, Math.Abs(far * direction[f]));
            x[j] = Math.Clamp(x[j] + far * direction[f], 0, problem.Most[j]);
        }
        careful &= moved <= Tolerance;
        if (isRow)
        {
            touched.Add(stop);
        }
        else if (stop >= 0)
        {
            var low = direction[Array.IndexOf(free, stop)] < 0;
            held[stop] = low ? Held.AtNought : Held.AtMost;
            x[stop] = low ? 0 : problem.Most[stop];
        }
        return stop >= 0 || moved > 0;
    }

    /// <summary>Lets go of the limit whose multiplier has the wrong sign; false where there is none.</summary>
    private bool LetGo(int[] free, double[] gradient, PivotedQr qr)
    {
        double[] pull = [.. free.Select(j => -gradient[j])];
        qr.TransposedTimes(pull);
        var multipliers = qr.Back(pull);
        var (worst, which, isRow) = (Tolerance * scale, -1, false);
        for (var j = 0; j < n; j++)
        {
            if (held[j] == Held.Free || problem.Most[j] <= 0)
            {
                continue;
            }
            var rate = gradient[j];
            for (var i = 0; i < multipliers.Length; i++)
            {
                rate += multipliers[i] * Row(i)[j];
            }
            var wrong = held[j] == Held.AtNought ? -rate : rate;
            if (wrong > worst && (which < 0 || !careful))
            {
                (worst, which) = (wrong, j);
            }
        }
        for (var i = 0; i < touched.Count; i++)
        {
            var wrong = -multipliers[problem.Kept.Length + i];
            if (wrong > worst && (which < 0 || !careful))
            {
                (worst, which, isRow) = (wrong, i, true);
            }
        }
        if (which < 0)
        {
            return false;
        }
        // Until something moves again, lets go by number only.
        careful = true;
        if (isRow)
        {
            touched.RemoveAt(which);
        }
        else
        {
            held[which] = Held.Free;
        }
        return true;
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
