using BenchmarkDotNet.Attributes;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Nutrients.Recipe.Fitting;
using Dripwright.Engine.Phrases;
using Google.OrTools.LinearSolver;

namespace Dripwright.Bench;

/// <summary>
/// One recipe, and its fit alone beside a general solver. GLOP has no squares, so each row's square is cut from below by
/// tangents, added until bound and value meet within a millionth: the plain way to such a fit with a linear solver.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
public class RecipeBench
{
    private static readonly string[] s_usual =
    [
        "calcium-nitrate-15.5",
        "potassium-nitrate",
        "monopotassium-phosphate",
        "potassium-sulfate",
        "magnesium-sulfate-7h2o",
        "ammonium-nitrate",
        "nitric-acid-60",
        "fe-dtpa-11",
        "manganese-sulfate-1h2o",
        "zinc-sulfate-7h2o",
        "boric-acid",
        "copper-sulfate-5h2o",
        "sodium-molybdate-2h2o",
    ];

    private RecipeJob _job = null!;
    private FitProblem _fit = null!;

    /// <summary>The usual thirteen salts, or all that the catalogue has.</summary>
    [Params("usual", "all")]
    public string Salts { get; set; } = "usual";

    /// <summary>Hard well water and a recirculating tomato.</summary>
    [GlobalSetup]
    public void Choose()
    {
        var catalogue = SaltCatalogue.Default;
        _job = new RecipeJob
        {
            Water = new WaterSupply(
                Phrase.Plain("well"),
                Composition.Of((Constituent.Calcium, 1.5), (Constituent.Magnesium, 0.5), (Constituent.Sodium, 0.5)),
                4
            ),
            Target = TargetCatalogue.Default["tomato-closed"],
            Salts =
            [
                .. (Salts == "usual" ? catalogue.Of(s_usual) : catalogue.Salts.Values).Select(salt => new SaltAtHand(
                    salt
                )),
            ],
        };
        _fit = new RecipeModel(_job with { AcidDemand = 0 }).FitOnly(new double[_job.Salts.Count]);
    }

    /// <summary>Acid, fit, price, rounding and findings.</summary>
    [Benchmark]
    public double Recipe() => RecipePlanner.Plan(_job).Misfit;

    /// <summary>The fit alone, ours; the sum of squares, to see that both find the same.</summary>
    [Benchmark(Baseline = true)]
    public double Fit()
    {
        var x = ActiveSet.Solve(_fit).X;
        var sum = 0.0;
        for (var i = 0; i < _fit.Rows.Length; i++)
        {
            var miss = -_fit.Wanted[i];
            for (var j = 0; j < x.Length; j++)
            {
                miss += _fit.Rows[i][j] * x[j];
            }
            sum += miss * miss;
        }
        return sum;
    }

    /// <summary>The fit alone, by tangents and GLOP.</summary>
    [Benchmark]
    public double Tangents()
    {
        using var solver = Solver.CreateSolver("GLOP");
        var x = _fit.Most.Select(most => solver.MakeNumVar(0, most, "")).ToArray();
        var misses = new List<Variable>();
        var squares = new List<Variable>();
        var objective = solver.Objective();
        for (var i = 0; i < _fit.Rows.Length; i++)
        {
            var miss = solver.MakeNumVar(double.NegativeInfinity, double.PositiveInfinity, "");
            var square = solver.MakeNumVar(0, double.PositiveInfinity, "");
            var row = solver.MakeConstraint(-_fit.Wanted[i], -_fit.Wanted[i], "");
            row.SetCoefficient(miss, 1);
            for (var j = 0; j < x.Length; j++)
            {
                row.SetCoefficient(x[j], -_fit.Rows[i][j]);
            }
            misses.Add(miss);
            squares.Add(square);
            objective.SetCoefficient(square, 1);
        }
        Limit(solver, x, _fit.Limited, _fit.Limits, least: false);
        Limit(solver, x, _fit.Kept, new double[_fit.Kept.Length], least: true);
        objective.SetMinimization();
        for (var round = 0; round < 500; round++)
        {
            solver.Solve();
            // Read all before the first cut: a changed model has no solution.
            var bound = objective.Value();
            double[] found = [.. misses.Select(miss => miss.SolutionValue())];
            double[] below = [.. squares.Select(square => square.SolutionValue())];
            var gap = 0.0;
            for (var i = 0; i < found.Length; i++)
            {
                var at = found[i];
                var under = at * at - below[i];
                gap += under;
                if (under > 1e-8)
                {
                    // s ≥ 2 r₀ r - r₀²
                    var cut = solver.MakeConstraint(-at * at, double.PositiveInfinity, "");
                    cut.SetCoefficient(squares[i], 1);
                    cut.SetCoefficient(misses[i], -2 * at);
                }
            }
            if (gap < 1e-6)
            {
                return bound;
            }
        }
        return double.NaN;
    }

    private static void Limit(Solver solver, Variable[] x, double[][] rows, double[] limits, bool least)
    {
        for (var i = 0; i < rows.Length; i++)
        {
            var row = solver.MakeConstraint(least ? limits[i] : double.NegativeInfinity, limits[i], "");
            for (var j = 0; j < x.Length; j++)
            {
                row.SetCoefficient(x[j], rows[i][j]);
            }
        }
    }
}
