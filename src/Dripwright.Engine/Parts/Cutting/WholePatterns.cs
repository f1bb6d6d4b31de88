using System.Globalization;
using Sat = Google.OrTools.Sat;

namespace Dripwright.Engine.Parts;

/// <summary>Whole numbers of given cutting patterns, by a constraint solver.</summary>
/// <remarks>One worker, a fixed seed and a limit in the solver's own deterministic time, never in seconds: the same job
/// gives the same plan on a slow machine.</remarks>
internal static class WholePatterns
{
    private const string SolverSettings = "num_workers:1,random_seed:1,max_deterministic_time:";

    /// <summary>A plan that costs <paramref name="target"/> at most, or the solver's verdict that there is none.</summary>
    /// <remarks>At the bound any plan will do; above it the cheapest is asked for.</remarks>
    public static (Sat.CpSolverStatus Status, List<Batch>? Found) Solve(
        CutModel model,
        PurchaseBound bound,
        List<CutPattern> patterns,
        long target
    )
    {
        if (patterns.Count == 0)
        {
            return (Sat.CpSolverStatus.Infeasible, null);
        }

        var program = new Sat.CpModel();
        var numbers = patterns.ConvertAll(pattern =>
        {
            var kind = model.Kinds[pattern.Kind];
            var most = pattern
                .Pieces.Select((count, i) => count == 0 ? 0 : (model.Demand[i] + count - 1) / count)
                .Max();
            return program.NewIntVar(0, Math.Min(most, kind.Available), "");
        });

        for (var i = 0; i < model.Sizes.Length; i++)
        {
            var terms = Enumerable.Range(0, numbers.Count).Where(p => patterns[p].Pieces[i] > 0).ToArray();
            program.AddLinearConstraint(
                Sat.LinearExpr.WeightedSum(terms.Select(p => numbers[p]), terms.Select(p => patterns[p].Pieces[i])),
                model.Demand[i],
                int.MaxValue
            );
        }

        for (var k = 0; k < model.Kinds.Length; k++)
        {
            if (!model.Kinds[k].Bought && model.Kinds[k].Available > 0)
            {
                var terms = Enumerable.Range(0, numbers.Count).Where(p => patterns[p].Kind == k);
                program.AddLinearConstraint(
                    Sat.LinearExpr.Sum(terms.Select(p => numbers[p])),
                    0,
                    model.Kinds[k].Available
                );
            }
        }

        var unit = bound.Unit;
        var cost = Sat.LinearExpr.WeightedSum(
            numbers,
            patterns.ConvertAll(pattern => model.Kinds[pattern.Kind].Cost / unit)
        );
        program.AddLinearConstraint(cost, 0, target / unit);
        if (target > bound.Value)
        {
            program.Minimize(cost);
        }

        using var solver = new Sat.CpSolver
        {
            StringParameters = SolverSettings + model.Effort.Left.ToString("0.######", CultureInfo.InvariantCulture),
        };
        var status = solver.Solve(program);
        model.Effort.Left -= solver.Response!.DeterministicTime;
        return status is Sat.CpSolverStatus.Optimal or Sat.CpSolverStatus.Feasible
            ? (status, Trimmed(model, patterns, [.. numbers.Select(number => (int)solver.Value(number))]))
            : (status, null);
    }

    /// <summary>Takes surplus pieces out again.</summary>
    private static List<Batch> Trimmed(CutModel model, List<CutPattern> patterns, int[] numbers)
    {
        var surplus = Array.ConvertAll(model.Demand, d => -d);
        for (var p = 0; p < numbers.Length; p++)
        {
            for (var i = 0; i < surplus.Length; i++)
            {
                surplus[i] += numbers[p] * patterns[p].Pieces[i];
            }
        }

        var batches = new List<Batch>();
        for (var p = 0; p < numbers.Length; p++)
        {
            for (var n = numbers[p]; n > 0; )
            {
                var pieces = (int[])patterns[p].Pieces.Clone();
                var touched = false;
                for (var i = 0; i < pieces.Length; i++)
                {
                    var extra = Math.Min(pieces[i], surplus[i]);
                    touched |= extra > 0;
                    pieces[i] -= extra;
                    surplus[i] -= extra;
                }

                var times = touched ? 1 : n;
                n -= times;
                if (Array.Exists(pieces, count => count > 0))
                {
                    batches.Add(new(patterns[p].Kind, pieces, times));
                }
            }
        }

        return batches;
    }
}
