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

    private readonly FitProblem _problem;
    private readonly int _n;
    private readonly double[] _x;
    private readonly Held[] _held;
    private readonly List<int> _touched = [];
    private readonly double _scale;
    private readonly double _longestRow;
    private readonly double _longestLimit;
    private bool _careful;

    private enum Held
    {
        Free,
        AtNought,
        AtMost,
    }

    private ActiveSet(FitProblem problem)
    {
        this._problem = problem;
        _n = problem.Unknowns;
        _x = (double[])problem.Start.Clone();
        _held = new Held[_n];
        for (var j = 0; j < _n; j++)
        {
            _held[j] =
                _x[j] <= 0 ? Held.AtNought
                : _x[j] >= problem.Most[j] ? Held.AtMost
                : Held.Free;
        }
        _longestRow = Longest(problem.Rows);
        _longestLimit = Longest(problem.Kept.Concat(problem.Limited));
        _scale = Math.Max(
            1,
            Math.Max(Math.Sqrt(problem.Wanted.Sum(b => b * b)), problem.Costs is { } costs ? costs.Max(Math.Abs) : 0)
        );
    }

    private static double Longest(IEnumerable<double[]> rows) =>
        rows.Select(row => Math.Sqrt(Dot(row, row))).DefaultIfEmpty(0).Max();

    public static FitSolution Solve(FitProblem problem) => new ActiveSet(problem).Run();

    private FitSolution Run()
    {
        var most = 200 + 40 * (_n + _problem.Limited.Length);
        for (var step = 0; step < most; step++)
        {
            int[] free = [.. Enumerable.Range(0, _n).Where(j => _held[j] == Held.Free)];
            var gradient = Gradient();
            var qr = Holding(free);
            if (Direction(free, gradient, qr) is { } direction && Move(free, direction))
            {
                continue;
            }
            if (!LetGo(free, gradient, qr))
            {
                return new FitSolution(_x, step, true);
            }
        }
        return new FitSolution(_x, most, false);
    }

    private double[] Gradient()
    {
        var gradient = _problem.Costs is { } costs ? (double[])costs.Clone() : new double[_n];
        for (var i = 0; i < _problem.Rows.Length; i++)
        {
            var row = _problem.Rows[i];
            var residual = Dot(row, _x) - _problem.Wanted[i];
            for (var j = 0; j < _n; j++)
            {
                gradient[j] += row[j] * residual;
            }
        }
        return gradient;
    }

    private double[] Row(int i) =>
        i < _problem.Kept.Length ? _problem.Kept[i] : _problem.Limited[_touched[i - _problem.Kept.Length]];

    // The equations that hold, as columns over the free unknowns.
    private PivotedQr Holding(int[] free)
    {
        var columns = new double[_problem.Kept.Length + _touched.Count][];
        for (var i = 0; i < columns.Length; i++)
        {
            var row = Row(i);
            columns[i] = [.. free.Select(j => row[j])];
        }
        return new PivotedQr(columns, free.Length, _longestLimit);
    }

    private double[]? Direction(int[] free, double[] gradient, PivotedQr qr)
    {
        var room = free.Length - qr.Rank;
        if (room == 0)
        {
            return null;
        }
        var inside = _problem.Rows.Length > 0 ? Fit(free, qr, room) : Downhill(free, gradient, qr);
        qr.Times(inside);
        var gain = 0.0;
        var size = 0.0;
        for (var f = 0; f < free.Length; f++)
        {
            gain -= gradient[free[f]] * inside[f];
            size = Math.Max(size, Math.Abs(inside[f]));
        }
        return gain > Tolerance * Tolerance * _scale * _scale && size > 0 ? inside : null;
    }

    // Coordinates in Q of the least-squares step: none along the equations, the fit across them.
    private double[] Fit(int[] free, PivotedQr qr, int room)
    {
        var m = _problem.Rows.Length;
        var columns = new double[room][];
        for (var c = 0; c < room; c++)
        {
            columns[c] = new double[m];
        }
        var residual = new double[m];
        var along = new double[free.Length];
        for (var i = 0; i < m; i++)
        {
            var row = _problem.Rows[i];
            for (var f = 0; f < free.Length; f++)
            {
                along[f] = row[free[f]];
            }
            qr.TransposedTimes(along);
            for (var c = 0; c < room; c++)
            {
                columns[c][i] = along[qr.Rank + c];
            }
            residual[i] = _problem.Wanted[i] - Dot(row, _x);
        }
        var fit = new PivotedQr(columns, m, _longestRow);
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
        var far = _problem.Rows.Length > 0 ? 1 : double.PositiveInfinity;
        var noise = Tolerance * direction.Max(Math.Abs);
        var (stop, isRow) = (-1, false);
        for (var f = 0; f < free.Length; f++)
        {
            var j = free[f];
            var reach =
                direction[f] < -noise ? _x[j] / -direction[f]
                : direction[f] > noise ? (_problem.Most[j] - _x[j]) / direction[f]
                : double.PositiveInfinity;
            if (reach < far)
            {
                (far, stop) = (reach, j);
            }
        }
        for (var i = 0; i < _problem.Limited.Length; i++)
        {
            if (_touched.Contains(i))
            {
                continue;
            }
            var row = _problem.Limited[i];
            var rise = 0.0;
            for (var f = 0; f < free.Length; f++)
            {
                rise += row[free[f]] * direction[f];
            }
            if (rise > noise)
            {
                var reach = Math.Max(0, _problem.Limits[i] - Dot(row, _x)) / rise;
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
            _x[j] = Math.Clamp(_x[j] + far * direction[f], 0, _problem.Most[j]);
        }
        _careful &= moved <= Tolerance;
        if (isRow)
        {
            _touched.Add(stop);
        }
        else if (stop >= 0)
        {
            var low = direction[Array.IndexOf(free, stop)] < 0;
            _held[stop] = low ? Held.AtNought : Held.AtMost;
            _x[stop] = low ? 0 : _problem.Most[stop];
        }
        return stop >= 0 || moved > 0;
    }

    /// <summary>Lets go of the limit whose multiplier has the wrong sign; false where there is none.</summary>
    private bool LetGo(int[] free, double[] gradient, PivotedQr qr)
    {
        double[] pull = [.. free.Select(j => -gradient[j])];
        qr.TransposedTimes(pull);
        var multipliers = qr.Back(pull);
        var (worst, which, isRow) = (Tolerance * _scale, -1, false);
        for (var j = 0; j < _n; j++)
        {
            if (_held[j] == Held.Free || _problem.Most[j] <= 0)
            {
                continue;
            }
            var rate = gradient[j];
            for (var i = 0; i < multipliers.Length; i++)
            {
                rate += multipliers[i] * Row(i)[j];
            }
            var wrong = _held[j] == Held.AtNought ? -rate : rate;
            if (wrong > worst && (which < 0 || !_careful))
            {
                (worst, which) = (wrong, j);
            }
        }
        for (var i = 0; i < _touched.Count; i++)
        {
            var wrong = -multipliers[_problem.Kept.Length + i];
            if (wrong > worst && (which < 0 || !_careful))
            {
                (worst, which, isRow) = (wrong, i, true);
            }
        }
        if (which < 0)
        {
            return false;
        }
        // Until something moves again, lets go by number only.
        _careful = true;
        if (isRow)
        {
            _touched.RemoveAt(which);
        }
        else
        {
            _held[which] = Held.Free;
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
