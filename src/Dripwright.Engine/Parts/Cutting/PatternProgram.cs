using System.Numerics;
using Lp = Google.OrTools.LinearSolver;
using Sat = Google.OrTools.Sat;

namespace Dripwright.Engine.Parts;

/// <summary>The cutting job as a program over cutting patterns: linear first, then whole numbers.</summary>
/// <remarks>
/// Column generation after Gilmore and Gomory, Operations Research 9, 1961 and 11, 1963 (from memory): the linear
/// program over the patterns known so far prices the pieces, and a knapsack finds the pattern worth adding. Its
/// solution is rounded by diving: take what is whole, fill the rest stock by stock, else fix the largest share and
/// solve again. What remains open goes to <see cref="WholePatterns"/>.
/// </remarks>
internal sealed class PatternProgram : IDisposable
{
    private const int MostSizes = 100;
    private const int MostRounds = 400;
    private const long Nodes = 50_000;
    private const int MostSteps = 20;
    private const double Tolerance = 1e-7;

    private readonly CutModel _model;
    private readonly PurchaseBound _bound;
    private readonly Lp.Solver _solver;
    private readonly Lp.Constraint[] _demandRows;
    private readonly Lp.Constraint?[] _stockRows;
    private readonly List<CutPattern> _patterns = [];
    private readonly List<Lp.Variable> _shares = [];
    private readonly HashSet<string> _known = [];
    private readonly double _costUnit;
    private long[]? _worths;

    private PatternProgram(CutModel model, PurchaseBound bound)
    {
        _model = model;
        _bound = bound;
        _costUnit = Math.Max(
            1,
            model.Kinds.Where(kind => kind.Bought && !kind.Missing).Select(kind => kind.Cost).DefaultIfEmpty(1).Max()
        );
        _solver = Lp.Solver.CreateSolver("GLOP");
        _solver.Objective().SetMinimization();
        _demandRows = Array.ConvertAll(model.Demand, d => _solver.MakeConstraint(d, double.PositiveInfinity));
        _stockRows = Array.ConvertAll(
            model.Kinds,
            kind => kind.Bought ? null : _solver.MakeConstraint(double.NegativeInfinity, kind.Available)
        );
    }

    /// <summary>Improves <paramref name="best"/> until the bound is met or the limits are reached.</summary>
    public static (List<Batch> Best, CutMethod Method) Improve(CutModel model, PurchaseBound bound, List<Batch> best)
    {
        if (model.Sizes.Length > MostSizes)
        {
            return (best, CutMethod.Filling);
        }

        using var program = new PatternProgram(model, bound);
        program.Seed(best);
        var rounded = program.Dive(best);
        if (model.Cost(rounded) <= bound.Value)
        {
            return (rounded, CutMethod.RoundedPatterns);
        }

        if (PurchaseBranching.Climb(model, bound, rounded) is { } cheaper)
        {
            return (cheaper, CutMethod.IntegerPatterns);
        }

        if (model.Cost(rounded) <= bound.Value)
        {
            return (rounded, CutMethod.IntegerPatterns);
        }

        return program.SolveWhole(rounded) is { } whole
            ? (whole, CutMethod.IntegerPatterns)
            : (rounded, CutMethod.RoundedPatterns);
    }

    /// <inheritdoc/>
    public void Dispose() => _solver.Dispose();

    private void Seed(List<Batch> batches)
    {
        foreach (var batch in batches)
        {
            Add(new(batch.Kind, batch.Pieces));
        }

        for (var i = 0; i < _model.Sizes.Length; i++)
        {
            for (var k = 0; k < _model.Kinds.Length; k++)
            {
                var kind = _model.Kinds[k];
                if (kind.Available > 0 && kind.Capacity >= _model.Sizes[i])
                {
                    var pieces = new int[_model.Sizes.Length];
                    pieces[i] = (int)Math.Min(_model.Demand[i], kind.Capacity / _model.Sizes[i]);
                    Add(new(k, pieces));
                }
            }
        }
    }

    private bool Add(CutPattern pattern)
    {
        if (!_known.Add(pattern.Kind + ":" + string.Join(',', pattern.Pieces)))
        {
            return false;
        }

        var share = _solver.MakeNumVar(0, double.PositiveInfinity, "");
        _solver.Objective().SetCoefficient(share, _model.Kinds[pattern.Kind].Cost / _costUnit);
        for (var i = 0; i < pattern.Pieces.Length; i++)
        {
            if (pattern.Pieces[i] > 0)
            {
                _demandRows[i].SetCoefficient(share, pattern.Pieces[i]);
            }
        }

        _stockRows[pattern.Kind]?.SetCoefficient(share, 1);
        _patterns.Add(pattern);
        _shares.Add(share);
        return true;
    }

    /// <summary>Solves the linear program, adding patterns while any helps; false when it has no solution.</summary>
    private bool SolveLinear()
    {
        for (var round = 0; round < MostRounds; round++)
        {
            if (_solver.Solve() != Lp.Solver.ResultStatus.OPTIMAL)
            {
                return false;
            }

            // All prices are read before any pattern is added: a changed program has no solution to read.
            var prices = Array.ConvertAll(_demandRows, row => Math.Max(0, row.DualValue()));
            var rents = Array.ConvertAll(_stockRows, row => row?.DualValue() ?? 0);
            var worths = Array.ConvertAll(prices, price => (long)(price * PurchaseBound.Scale * 1000));
            _worths ??= worths;
            var search = new DearestFill(_model.Sizes, worths, _model.Demand);
            var added = false;
            for (var k = 0; k < _model.Kinds.Length; k++)
            {
                var kind = _model.Kinds[k];
                if (kind.Available == 0)
                {
                    continue;
                }

                search.Search(kind.Capacity, Nodes);
                var pattern = search.Full;
                var worth = 0.0;
                for (var i = 0; i < pattern.Length; i++)
                {
                    worth += pattern[i] * prices[i];
                }

                if (worth > kind.Cost / _costUnit - rents[k] + Tolerance)
                {
                    added |= Add(new(k, pattern));
                }
            }

            if (!added)
            {
                _worths = worths;
                return true;
            }
        }

        // Patterns were added in the last round: solve once more, so that there is a solution to read.
        return _solver.Solve() == Lp.Solver.ResultStatus.OPTIMAL;
    }

    private List<Batch> Dive(List<Batch> best)
    {
        var left = (int[])_model.Demand.Clone();
        var available = Array.ConvertAll(_model.Kinds, kind => kind.Available);
        var taken = new List<Batch>();
        long[]? rootWorths = null;
        while (Array.Exists(left, count => count > 0))
        {
            for (var i = 0; i < left.Length; i++)
            {
                _demandRows[i].SetLb(left[i]);
            }

            for (var k = 0; k < available.Length; k++)
            {
                _stockRows[k]?.SetUb(available[k]);
            }

            if (!SolveLinear())
            {
                break;
            }

            if (rootWorths is null)
            {
                rootWorths = _worths;
                _bound.Try(_worths!);
                if (_model.Cost(best) <= _bound.Value)
                {
                    break;
                }
            }

            Take(taken, left, available);
            if (StockFilling.Best(_model, left, available) is { } rest)
            {
                best = StockFilling.Better(_model, best, [.. taken, .. rest])!;
            }

            if (_model.Cost(best) <= _bound.Value || _model.Cost(taken) >= _model.Cost(best))
            {
                break;
            }
        }

        _worths = rootWorths;
        return best;
    }

    /// <summary>Takes the whole part of each share, or one of the largest share when none is whole.</summary>
    private void Take(List<Batch> taken, int[] left, int[] available)
    {
        var shares = _shares.ConvertAll(share => share.SolutionValue());
        var any = false;
        var order = Enumerable.Range(0, shares.Count).OrderByDescending(p => Math.Round(shares[p], 6)).ThenBy(p => p);
        foreach (var p in order)
        {
            var whole = (int)Math.Floor(shares[p] + Tolerance);
            if (whole == 0 && any)
            {
                break;
            }

            // The largest share of all goes in even when it is not whole, or the dive would not move.
            for (var n = Math.Max(1, whole); n > 0; )
            {
                var pieces = _patterns[p].Pieces.Zip(left, Math.Min).ToArray();
                var times = Math.Min(n, available[_patterns[p].Kind]);
                for (var i = 0; i < pieces.Length; i++)
                {
                    times = pieces[i] > 0 ? Math.Min(times, left[i] / pieces[i]) : times;
                }

                if (times == 0 || !Array.Exists(pieces, count => count > 0))
                {
                    break;
                }

                for (var i = 0; i < pieces.Length; i++)
                {
                    left[i] -= times * pieces[i];
                }

                if (available[_patterns[p].Kind] != StockKind.Unlimited)
                {
                    available[_patterns[p].Kind] -= times;
                }

                taken.Add(new(_patterns[p].Kind, pieces, times));
                any = true;
                n -= times;
            }
        }
    }

    /// <summary>Asks for whole numbers at the bound, then at the next sum that can be paid, and so on: close above the
    /// bound few patterns are left. Null when nothing cheaper was found.</summary>
    private List<Batch>? SolveWhole(List<Batch> best)
    {
        if (_worths is null)
        {
            return null;
        }

        var (worths, holds) = _bound.Fit(_worths);
        var raw = _bound.Raw(worths, holds);
        for (var step = 0; step < MostSteps && _model.Effort.Left > 0 && _bound.Value < _model.Cost(best); step++)
        {
            var target = _bound.Value;
            var slack = (BigInteger)target * PurchaseBound.Scale - raw;
            if (CutPatternList.Of(_model, worths, holds, slack) is not { } complete)
            {
                break;
            }

            var (status, found) = WholePatterns.Solve(_model, _bound, complete, target);
            if (found is not null)
            {
                return found;
            }

            if (status != Sat.CpSolverStatus.Infeasible)
            {
                break;
            }

            _bound.Prove(_bound.NextPayable(target));
        }

        if (_bound.Value >= _model.Cost(best))
        {
            return null;
        }

        // The bound stays open; the patterns of the linear program may still hold something cheaper.
        return _model.Effort.Left > 0
            ? WholePatterns.Solve(_model, _bound, _patterns, _model.Cost(best) - 1).Found
            : null;
    }
}
