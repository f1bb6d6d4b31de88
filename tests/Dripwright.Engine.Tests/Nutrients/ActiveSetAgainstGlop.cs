using CsCheck;
using Dripwright.Engine.Nutrients.Recipe.Fitting;
using Google.OrTools.LinearSolver;

namespace Dripwright.Engine.Tests.Nutrients;

/// <summary>
/// A fit is convex, so it is best exactly when the linear program of its gradient finds nothing better than it. GLOP solves that
/// program; it also solves the second stage, the cheapest among equals, outright.
/// </summary>
public sealed class ActiveSetAgainstGlop
{
    private const double Width = 1e-7;

    private static readonly Gen<FitProblem> s_problems = Gen.Int[0, int.MaxValue].Select(Made);

    // Columns that repeat and rows that depend, as salts at hand have. Numbers are whole eighths or ninetieths, so that columns depend on
    // each other wholly or clearly not: near dependence makes amounts of 1e9, on which no two solvers agree.
    private static FitProblem Made(int seed)
    {
        var random = new Random(seed);
        double Next() => Math.Round((random.NextDouble() * 2 - 1) * 90) / 90;
        double Mostly() => Next() is var v && v > 0.4 ? Math.Round(8 * v) / 8 : 0;
        var (n, m, limits) = (random.Next(1, 21), random.Next(1, 15), random.Next(0, 4));
        double[][] Table(int rows, Func<double> next) =>
            [.. Enumerable.Range(0, rows).Select(_ => Enumerable.Range(0, n).Select(_ => next()).ToArray())];
        var rows = Table(m, Mostly);
        for (var j = 1; j < n; j++)
        {
            // A third of the columns are another one, stretched, or a mix of two.
            if (Next() > 0.33)
            {
                foreach (var row in rows)
                {
                    row[j] = j > 2 && j % 2 == 0 ? (row[j - 1] + row[j - 2]) / 2 : row[j - 1] * 1.5;
                }
            }
        }
        return new FitProblem
        {
            Unknowns = n,
            Rows = rows,
            Wanted = [.. Enumerable.Range(0, m).Select(_ => Next())],
            Limited = Table(limits, Next),
            Limits = [.. Enumerable.Range(0, limits).Select(_ => Next() is var v && v > 0 ? v : 0)],
            Most = [.. Enumerable.Range(0, n).Select(_ => Next() is var v && v > 0.5 ? v : double.PositiveInfinity)],
            Start = new double[n],
        };
    }

    [Fact]
    public void No_better_fit_is_found_by_a_maintained_solver() =>
        s_problems.Holds(
            problem =>
            {
                var found = ActiveSet.Solve(problem);
                Assert.True(found.Optimal);
                Holds(problem, found.X);
                var gradient = new double[problem.Unknowns];
                foreach (var (row, wanted) in problem.Rows.Zip(problem.Wanted))
                {
                    var miss = Dot(row, found.X) - wanted;
                    for (var j = 0; j < gradient.Length; j++)
                    {
                        gradient[j] += row[j] * miss;
                    }
                }
                // What is zero but for rounding must not let the program run off without bound.
                var clean = gradient.Select(g => Math.Abs(g) < 1e-9 ? 0 : g).ToArray();
                var best = Least(problem, clean, found.X, keepFit: false);
                Assert.True(Dot(clean, found.X) <= best + 1e-6);
            },
            iter: 1000
        );

    [Fact]
    public void The_cheapest_among_equals_costs_what_a_maintained_solver_finds() =>
        Gen.Select(s_problems, Gen.Double[0.01, 1].Array[20])
            .Holds(
                (problem, prices) =>
                {
                    var fit = ActiveSet.Solve(problem);
                    var costs = prices[..problem.Unknowns];
                    var cheap = ActiveSet.Solve(
                        problem with
                        {
                            Rows = [],
                            Wanted = [],
                            Kept = problem.Rows,
                            Costs = costs,
                            Start = fit.X,
                        }
                    );
                    Assert.True(cheap.Optimal);
                    Holds(problem, cheap.X);
                    foreach (var row in problem.Rows)
                    {
                        Assert.Equal(Dot(row, fit.X), Dot(row, cheap.X), 1e-8);
                    }
                    var best = Least(problem, costs, cheap.X, keepFit: true);
                    Assert.Equal(best, Dot(costs, cheap.X), 1e-6 * (1 + best));
                },
                iter: 1000
            );

    private static void Holds(FitProblem problem, double[] x)
    {
        for (var j = 0; j < x.Length; j++)
        {
            Assert.InRange(x[j], 0, problem.Most[j]);
        }
        foreach (var (row, limit) in problem.Limited.Zip(problem.Limits))
        {
            Assert.True(Dot(row, x) <= limit + 1e-9);
        }
    }

    /// <summary>The least cost near an answer: as all is convex, what is best nearby is best everywhere.</summary>
    private static double Least(FitProblem problem, double[] costs, double[] near, bool keepFit)
    {
        var told = "";
        // GLOP gives up on a few of these ("abnormal"); CLP, another maintained solver, then decides.
        foreach (var name in new[] { "GLOP", "CLP" })
        {
            using var solver = Solver.CreateSolver(name);
            var x = problem.Most.Select((most, j) => solver.MakeNumVar(0, Math.Min(most, near[j] + 10), "")).ToArray();
            foreach (var (row, limit) in problem.Limited.Zip(problem.Limits))
            {
                Constrain(solver, x, row, double.NegativeInfinity, limit);
            }
            List<Constraint> equations = [];
            if (keepFit)
            {
                foreach (var row in problem.Rows)
                {
                    var kept = Dot(row, near);
                    // An equation to the last digit a solver might call impossible.
                    equations.Add(Constrain(solver, x, row, kept - Width, kept + Width));
                }
            }
            var objective = solver.Objective();
            for (var j = 0; j < x.Length; j++)
            {
                objective.SetCoefficient(x[j], costs[j]);
            }
            objective.SetMinimization();
            var status = solver.Solve();
            if (status == Solver.ResultStatus.OPTIMAL)
            {
                // Widened equations save their width times their multiplier, which may be thousands where columns nearly agree.
                return objective.Value() + equations.Sum(equation => Width * Math.Abs(equation.DualValue()));
            }
            told += $"{name}: {status}. ";
        }
        Assert.Fail(told);
        return double.NaN;
    }

    private static Constraint Constrain(Solver solver, Variable[] x, double[] row, double least, double most)
    {
        var constraint = solver.MakeConstraint(least, most, "");
        for (var j = 0; j < x.Length; j++)
        {
            constraint.SetCoefficient(x[j], row[j]);
        }

        return constraint;
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
}
