namespace Dripwright.Engine.Parts;

/// <summary>Plans made by filling stock after stock, in several orders; equal stocks are filled at one stroke.</summary>
internal static class StockFilling
{
    private const long Nodes = 20_000;

    /// <summary>The cheapest of several fillings of <paramref name="demand"/>; null when pieces on hand run out.</summary>
    public static List<Batch>? Best(CutModel model, int[] demand, int[] available)
    {
        List<Batch>? best = null;
        var hasOnHand = model.Kinds.Where((kind, k) => !kind.Bought && available[k] > 0).Any();
        var bought = Enumerable
            .Range(0, model.Kinds.Length)
            .Where(k => model.Kinds[k].Bought && available[k] > 0)
            .ToArray();
        foreach (var order in hasOnHand ? new[] { 1, -1, 0 } : [0])
        {
            foreach (var full in new[] { false, true })
            {
                best = Better(model, best, Fill(model, demand, available, order, full, bought));
                if (bought.Length > 1)
                {
                    foreach (var only in bought)
                    {
                        best = Better(model, best, Fill(model, demand, available, order, full, [only]));
                    }
                }
            }
        }

        return best;
    }

    /// <summary>Less cost, then less length bought, then the longer single leftover.</summary>
    public static List<Batch>? Better(CutModel model, List<Batch>? a, List<Batch>? b)
    {
        if (a is null || b is null)
        {
            return a ?? b;
        }

        var order = model.Cost(a).CompareTo(model.Cost(b));
        order = order != 0 ? order : model.BoughtLength(a).CompareTo(model.BoughtLength(b));
        order = order != 0 ? order : Longest(model, b).CompareTo(Longest(model, a));
        return order <= 0 ? a : b;
    }

    private static long Longest(CutModel model, List<Batch> batches) =>
        batches.Select(model.Rest).DefaultIfEmpty(0).Max();

    private static List<Batch>? Fill(
        CutModel model,
        int[] demand,
        int[] available,
        int onHandOrder,
        bool full,
        int[] bought
    )
    {
        var left = (int[])demand.Clone();
        var batches = new List<Batch>();
        if (onHandOrder != 0)
        {
            var onHand = Enumerable.Range(0, model.Kinds.Length).Where(k => !model.Kinds[k].Bought && available[k] > 0);
            foreach (var k in onHandOrder > 0 ? onHand : onHand.Reverse())
            {
                var stocks = available[k];
                while (stocks > 0)
                {
                    var pieces = Pattern(model, left, model.Kinds[k].Capacity, full, withLargest: false);
                    if (!Use(batches, left, k, pieces, ref stocks))
                    {
                        break;
                    }
                }
            }
        }

        while (Array.Exists(left, count => count > 0))
        {
            var (k, pieces) = Cheapest(model, left, full, bought);
            var stocks = StockKind.Unlimited;
            if (k < 0 || !Use(batches, left, k, pieces, ref stocks))
            {
                return null;
            }
        }

        return Downsize(model, batches, bought);
    }

    /// <summary>The kind whose filling costs least per length of piece.</summary>
    private static (int Kind, int[] Pieces) Cheapest(CutModel model, int[] left, bool full, int[] bought)
    {
        var largest = model.Sizes[Array.FindIndex(left, count => count > 0)];
        var chosen = (Kind: -1, Pieces: Array.Empty<int>());
        var (bestCost, bestLoad) = (0L, 1L);
        foreach (var k in bought.Where(k => model.Kinds[k].Capacity >= largest))
        {
            var pieces = Pattern(model, left, model.Kinds[k].Capacity, full, withLargest: true);
            var load = model.Load(pieces);
            var cost = model.Kinds[k].Cost;
            if (chosen.Kind < 0 || (Int128)cost * bestLoad < (Int128)bestCost * load)
            {
                chosen = (k, pieces);
                (bestCost, bestLoad) = (cost, load);
            }
        }

        return chosen;
    }

    private static int[] Pattern(CutModel model, int[] left, long capacity, bool full, bool withLargest)
    {
        if (full)
        {
            return FullestFill.Of(model.Sizes, left, capacity, withLargest, Nodes).Pieces;
        }

        var pieces = new int[left.Length];
        for (var i = 0; i < left.Length && capacity > 0; i++)
        {
            pieces[i] = (int)Math.Min(left[i], capacity / model.Sizes[i]);
            capacity -= pieces[i] * model.Sizes[i];
        }

        return pieces;
    }

    private static bool Use(List<Batch> batches, int[] left, int kind, int[] pieces, ref int stocks)
    {
        var times = stocks;
        var any = false;
        for (var i = 0; i < pieces.Length; i++)
        {
            if (pieces[i] > 0)
            {
                any = true;
                times = Math.Min(times, left[i] / pieces[i]);
            }
        }

        if (!any)
        {
            return false;
        }

        for (var i = 0; i < pieces.Length; i++)
        {
            left[i] -= times * pieces[i];
        }

        stocks -= times;
        batches.Add(new(kind, pieces, times));
        return true;
    }

    /// <summary>Buys the cheapest kind that still holds what was put into each stock.</summary>
    private static List<Batch> Downsize(CutModel model, List<Batch> batches, int[] bought)
    {
        for (var b = 0; b < batches.Count; b++)
        {
            if (!model.Kinds[batches[b].Kind].Bought)
            {
                continue;
            }

            var load = model.Load(batches[b].Pieces);
            foreach (var k in bought)
            {
                if (model.Kinds[k].Capacity >= load && model.Kinds[k].Cost < model.Kinds[batches[b].Kind].Cost)
                {
                    batches[b] = batches[b] with { Kind = k };
                }
            }
        }

        return batches;
    }
}
