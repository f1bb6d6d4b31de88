using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Recipe.Fitting;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>A recipe's job as numbers, and its answer: acid first, then the fit, then the price.</summary>
internal sealed class RecipeModel
{
    // [-] What a trace counts for that cannot be had without main elements.
    private const double Alongside = 0.02;

    private readonly RecipeJob _job;
    private readonly double[] _lengths;
    private readonly double[][] _rows;
    private readonly double[] _wanted;
    private readonly double[] _acid;
    private readonly double _acidLength;
    private readonly double[][] _limited;
    private readonly double[] _limits;
    private readonly double[] _most;

    public RecipeModel(RecipeJob job)
    {
        this._job = job;
        AtHand =
        [
            .. job.Salts.DistinctBy(hand => hand.Salt.Key).OrderBy(hand => hand.Salt.Key, StringComparer.Ordinal),
        ];
        Asked =
        [
            .. job
                .Target.Wanted.Where(pair => job.Weights[pair.Key] > 0)
                .Select(pair => pair.Key)
                .Where(key => !(job.Target.NitrogenIsSum && key == Constituent.AmmoniumNitrogen))
                .Order(),
        ];
        var weights = Asked.Select(key => WeightOf(key) / FitWeights.ScaleOf(key, job.Target.Wanted[key])).ToArray();
        _wanted = [.. Asked.Select((key, i) => weights[i] * (job.Target.Wanted[key] - Of(job.Water.Composition, key)))];
        _rows = [.. Asked.Select((key, i) => Columns(salt => weights[i] * Of(salt.Brings, key)))];
        _lengths = Lengths();
        _acid = Columns(AcidOf);
        (_limited, _limits) = Limits();
        _most =
        [
            .. AtHand.Select(
                (hand, j) => hand.Most is { } kilograms ? kilograms / job.Volume * _lengths[j] : double.PositiveInfinity
            ),
        ];
        foreach (var row in _rows)
        {
            WeighingScale(row);
        }
        WeighingScale(_acid);
        _acidLength = Length(_acid);
        Divide(_acid, _acidLength);
        for (var i = 0; i < _limited.Length; i++)
        {
            WeighingScale(_limited[i]);
            var length = Length(_limited[i]);
            Divide(_limited[i], length);
            _limits[i] /= length;
        }
    }

    public IReadOnlyList<SaltAtHand> AtHand { get; }

    /// <summary>Elements that the fit minds.</summary>
    public IReadOnlyList<Constituent> Asked { get; }

    /// <summary>True where every step found its best.</summary>
    public bool Optimal { get; private set; } = true;

    private double WeightOf(Constituent key) =>
        _job.Weights[key] * (Charges.IsTrace(key) && AtHand.Any(hand => IsMixed(hand.Salt, key)) ? Alongside : 1);

    private static bool IsMixed(Salt salt, Constituent trace) =>
        salt.Brings[trace] > 0
        && (
            salt.Brings[Constituent.NitrateNitrogen] > 0
            || salt.Brings[Constituent.Phosphorus] > 0
            || salt.Brings[Constituent.Potassium] > 0
            || salt.Brings[Constituent.Calcium] > 0
        );

    /// <summary>[kg/m³] Amounts of the salts at hand that fit best, the cheapest of them.</summary>
    public double[] Solve()
    {
        var x = new double[AtHand.Count];
        if (x.Length == 0)
        {
            return x;
        }
        var kept = Array.Empty<double[]>();
        if (_acidLength > 0)
        {
            kept = [_acid];
            x = Run(Problem(x) with { Rows = [_acid], Wanted = [_job.Demand / _acidLength] });
        }
        x = Run(Problem(x) with { Rows = _rows, Wanted = _wanted, Kept = kept });
        x = Run(
            Problem(x) with
            {
                Kept = [.. kept, .. _rows.Select(Unit).Where(row => row.Length > 0)],
                Costs = Prices(),
            }
        );
        return [.. x.Select((amount, j) => amount <= 1e-12 ? 0 : amount / _lengths[j])];
    }

    /// <summary>[-] Σ (weight · miss)² of amounts.</summary>
    public double Misfit(double[] amounts)
    {
        var sum = 0.0;
        for (var i = 0; i < _rows.Length; i++)
        {
            var miss = -_wanted[i];
            for (var j = 0; j < amounts.Length; j++)
            {
                miss += _rows[i][j] * amounts[j] * _lengths[j];
            }
            sum += miss * miss;
        }
        return sum;
    }

    /// <summary>The problem of the fit alone, from a start that meets the acid; for comparison with other solvers.</summary>
    internal FitProblem FitOnly(double[] start) =>
        Problem(start) with
        {
            Rows = _rows,
            Wanted = _wanted,
            Kept = _acidLength > 0 ? [_acid] : [],
        };

    /// <summary>[mol/kg] H⁺ of a product as the fit counts it.</summary>
    /// <remarks>Trace salts are given in such small amounts that their acidity is left out, or a pinch of borax would need acid.</remarks>
    internal static double AcidOf(Salt salt) => HasTraces(salt) ? 0 : salt.AcidEquivalents;

    internal static bool HasTraces(Salt salt) =>
        Composition.Constituents.Any(key => Charges.IsTrace(key) && salt.Brings[key] > 0);

    private double[] Run(FitProblem problem)
    {
        var solution = ActiveSet.Solve(problem);
        Optimal &= solution.Optimal;
        return solution.X;
    }

    private FitProblem Problem(double[] start) =>
        new()
        {
            Unknowns = AtHand.Count,
            Limited = _limited,
            Limits = _limits,
            Most = _most,
            Start = start,
        };

    private double[] Columns(Func<Salt, double> of) => [.. AtHand.Select(hand => of(hand.Salt))];

    private double Of(Composition composition, Constituent key) =>
        key == Constituent.NitrateNitrogen && _job.Target.NitrogenIsSum
            ? composition[key] + composition[Constituent.AmmoniumNitrogen]
            : composition[key];

    // Each unknown is an amount times the length of its column, so that all columns are of length 1.
    private double[] Lengths()
    {
        var found = new double[AtHand.Count];
        for (var j = 0; j < found.Length; j++)
        {
            var sum = _rows.Sum(row => row[j] * row[j]);
            var brings = Composition.Constituents.Sum(key => Math.Abs(AtHand[j].Salt.Brings[key]));
            found[j] =
                sum > 0 ? Math.Sqrt(sum)
                : brings > 0 ? brings
                : 1;
        }
        return found;
    }

    private (double[][] Rows, double[] Limits) Limits()
    {
        List<double[]> found = [];
        List<double> bounds = [];
        var water = _job.Water.Composition;
        var share = _job.MostAmmoniumShare;
        Add(
            salt =>
                (1 - share) * salt.Brings[Constituent.AmmoniumNitrogen]
                - share * salt.Brings[Constituent.NitrateNitrogen],
            share * water[Constituent.NitrateNitrogen] - (1 - share) * water[Constituent.AmmoniumNitrogen]
        );
        if (_job.MostChloride is { } chloride)
        {
            Add(salt => salt.Brings[Constituent.Chloride], chloride - water[Constituent.Chloride]);
        }
        if (_job.MostSodium is { } sodium)
        {
            // Iron is not taken away for the pinch of sodium in its chelate.
            Add(salt => HasTraces(salt) ? 0 : salt.Brings[Constituent.Sodium], sodium - water[Constituent.Sodium]);
        }
        if (_job.MostSilicon is { } silicon)
        {
            Add(salt => salt.Brings[Constituent.Silicon], silicon - water[Constituent.Silicon]);
        }
        return ([.. found], [.. bounds]);

        // Where the water alone is over, nothing more may be added; that it is over is a finding.
        void Add(Func<Salt, double> of, double bound)
        {
            var row = Columns(of);
            if (row.Any(value => value > 0))
            {
                found.Add(row);
                bounds.Add(Math.Max(0, bound));
            }
        }
    }

    // A salt without a price counts as the dearest that has one, so that it is not chosen for seeming free. Without any price the
    // least mass is taken.
    private double[] Prices()
    {
        var dearest = AtHand.Max(hand => hand.Salt.PricePerKilogram ?? 0);
        var prices = Columns(salt => (double)(salt.PricePerKilogram ?? (dearest > 0 ? dearest : 1)));
        WeighingScale(prices);
        var greatest = prices.Max();
        Divide(prices, greatest);
        return prices;
    }

    private void WeighingScale(double[] row)
    {
        for (var j = 0; j < row.Length; j++)
        {
            row[j] /= _lengths[j];
        }
    }

    private static double Length(double[] row) => Math.Sqrt(row.Sum(value => value * value));

    private static void Divide(double[] row, double by)
    {
        for (var j = 0; j < row.Length && by > 0; j++)
        {
            row[j] /= by;
        }
    }

    private static double[] Unit(double[] row)
    {
        var length = Length(row);
        return length > 0 ? [.. row.Select(value => value / length)] : [];
    }
}
