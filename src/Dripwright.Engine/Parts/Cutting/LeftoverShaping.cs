namespace Dripwright.Engine.Parts;

/// <summary>Gathers what is left over into one long piece, then into a second, without buying more.</summary>
/// <remarks>
/// One stock is the keeper. Against every other stock in turn, the pieces of both are pooled and the other stock is
/// filled as full as it goes; what is left stays in the keeper. Repeated until nothing moves, for several keepers.
/// </remarks>
internal static class LeftoverShaping
{
    private const int Ranks = 4;
    private const int Keepers = 6;
    private const int MostFillings = 4_000;
    private const long Nodes = 2_000;

    public static List<Batch> Longest(CutModel model, List<Batch> batches)
    {
        var open = Merged(batches);
        var done = new List<Batch>();
        var fillings = 0;
        for (var rank = 0; rank < Ranks && open.Count > 0 && fillings < MostFillings; rank++)
        {
            (Batch Keeper, List<Batch> Others)? best = null;
            // The emptiest of each kind first: a longer kind may keep more in spite of a shorter rest.
            var candidates = open.OrderByDescending(model.Rest)
                .GroupBy(batch => batch.Kind)
                .SelectMany(group => group.Take(Keepers))
                .ToList();
            foreach (var candidate in candidates)
            {
                var tried = Gather(model, open, candidate, ref fillings);
                if (best is null || Kept(model, tried.Keeper) > Kept(model, best.Value.Keeper))
                {
                    best = tried;
                }
            }

            if (best!.Value.Keeper.Pieces.Any(count => count > 0))
            {
                done.Add(best.Value.Keeper);
            }

            open = Merged(best.Value.Others);
        }

        return Merged([.. open, .. done]);
    }

    /// <summary>True when no sharing of the pieces among these stocks keeps a longer rest.</summary>
    public static bool IsLongest(CutModel model, List<Batch> batches)
    {
        if (batches.Count == 0)
        {
            return true;
        }

        var total = batches.Sum(batch => model.Load(batch.Pieces) * batch.Times);
        var used = batches
            .GroupBy(batch => batch.Kind)
            .ToDictionary(group => group.Key, group => group.Sum(batch => batch.Times));
        var fill = used.Keys.ToDictionary(k => k, k => Fullest(model, model.Kinds[k].Capacity));
        var room = used.Sum(pair => fill[pair.Key] * pair.Value);
        var longest = batches.Max(model.Rest);
        return used.Keys.All(k =>
        {
            var least = Math.Max(model.Sizes[^1], total - (room - fill[k]));
            return model.Kinds[k].Room - least * model.Grain <= longest;
        });
    }

    private static long Fullest(CutModel model, long capacity)
    {
        var (_, load, exact) = FullestFill.Of(model.Sizes, model.Demand, capacity, withLargest: false, 50_000);
        return exact ? load : capacity;
    }

    /// <summary>An emptied bought stock is not bought at all, which beats any leftover.</summary>
    private static long Kept(CutModel model, Batch keeper) =>
        Array.Exists(keeper.Pieces, count => count > 0) ? model.Rest(keeper) : long.MaxValue;

    private static (Batch Keeper, List<Batch> Others) Gather(
        CutModel model,
        List<Batch> open,
        Batch candidate,
        ref int fillings
    )
    {
        var keeper = (int[])candidate.Pieces.Clone();
        var others = new List<Batch>(open);
        var at = others.IndexOf(candidate);
        others[at] = candidate with { Times = candidate.Times - 1 };
        for (var moved = true; moved && fillings < MostFillings; )
        {
            moved = false;
            for (var o = 0; o < others.Count && fillings < MostFillings; o++)
            {
                var other = others[o];
                if (other.Times == 0 || model.Rest(other) < model.Grain)
                {
                    continue;
                }

                fillings++;
                var fuller = Exchange(model, keeper, other);
                if (fuller is null)
                {
                    continue;
                }

                for (var i = 0; i < keeper.Length; i++)
                {
                    keeper[i] += other.Pieces[i] - fuller[i];
                }

                others[o] = other with { Times = other.Times - 1 };
                others.Add(new(other.Kind, fuller, 1));
                moved = true;
            }
        }

        return (new(candidate.Kind, keeper, 1), others);
    }

    /// <summary>A fuller content of <paramref name="other"/> from its own pieces and the keeper's; null if none.</summary>
    private static int[]? Exchange(CutModel model, int[] keeper, Batch other)
    {
        var at = Enumerable.Range(0, keeper.Length).Where(i => keeper[i] + other.Pieces[i] > 0).ToArray();
        var sizes = Array.ConvertAll(at, i => model.Sizes[i]);
        var pool = Array.ConvertAll(at, i => keeper[i] + other.Pieces[i]);
        var capacity = model.Kinds[other.Kind].Capacity;
        var (pieces, load, _) = FullestFill.Of(sizes, pool, capacity, withLargest: false, Nodes);
        if (load <= model.Load(other.Pieces))
        {
            return null;
        }

        var fuller = new int[keeper.Length];
        for (var a = 0; a < at.Length; a++)
        {
            fuller[at[a]] = pieces[a];
        }

        return fuller;
    }

    private static List<Batch> Merged(List<Batch> batches) =>
        [
            .. batches
                .Where(batch => batch.Times > 0)
                .GroupBy(batch => batch.Kind + ":" + string.Join(',', batch.Pieces), StringComparer.Ordinal)
                .Select(group => group.First() with { Times = group.Sum(batch => batch.Times) }),
        ];
}
