namespace Dripwright.Engine.Parts;

/// <summary>Tries every purchase that costs as little as the bound, then the next dearer ones, until one holds all
/// pieces.</summary>
/// <remarks>
/// With several lengths on offer the linear program mixes them in fractions and its bound is weak. Once the number of
/// each length is fixed, the same bound on what is still missing mostly settles at once whether the pieces fit.
/// </remarks>
internal static class PurchaseBranching
{
    private const int MostPurchases = 120;

    /// <summary>A plan at the bound, which is raised on the way; null when it stays open or one length is on offer.</summary>
    public static List<Batch>? Climb(CutModel model, PurchaseBound bound, List<Batch> best)
    {
        var offered = Enumerable
            .Range(0, model.Kinds.Length)
            .Where(k => model.Kinds[k] is { Bought: true, Missing: false, Available: > 0, Cost: > 0 })
            .ToArray();
        if (
            offered.Length < 2
            || model.Kinds.Any(k => k is { Bought: true, Missing: true } or { Bought: true, Cost: 0 })
        )
        {
            return null;
        }

        var total = model.Load(model.Demand);
        var tried = 0;
        while (bound.Value < model.Cost(best))
        {
            foreach (var numbers in Purchases(model, offered, 0, bound.Value, new int[model.Kinds.Length]))
            {
                var room = model.Kinds.Select((kind, k) => kind.Capacity * (kind.Bought ? numbers[k] : kind.Available));
                if (room.Sum() < total)
                {
                    continue;
                }

                if (++tried > MostPurchases || model.Effort.Left <= 0)
                {
                    return null;
                }

                var (batches, missing, least) = CutPlanner.Solve(model.WithPurchase(numbers), out _);
                if (missing == 0)
                {
                    return batches;
                }

                if (least == 0)
                {
                    return null;
                }
            }

            bound.Prove(bound.NextPayable(bound.Value));
        }

        return null;
    }

    /// <summary>All numbers of each length that cost exactly <paramref name="cost"/>.</summary>
    private static IEnumerable<int[]> Purchases(CutModel model, int[] offered, int at, long cost, int[] numbers)
    {
        var each = model.Kinds[offered[at]].Cost;
        if (at == offered.Length - 1)
        {
            if (cost % each == 0)
            {
                numbers[offered[at]] = (int)(cost / each);
                yield return (int[])numbers.Clone();
            }

            yield break;
        }

        for (var n = 0; n * each <= cost; n++)
        {
            numbers[offered[at]] = n;
            foreach (var purchase in Purchases(model, offered, at + 1, cost - n * each, numbers))
            {
                yield return purchase;
            }
        }
    }
}

/// <summary>What the whole-number solver may still spend, in its own deterministic time.</summary>
/// <param name="left">Amount at the start.</param>
internal sealed class SolverEffort(double left)
{
    /// <summary>Amount left.</summary>
    public double Left { get; set; } = left;
}
