using System.Numerics;

namespace Dripwright.Engine.Parts;

/// <summary>A kind of stock as the arithmetic sees it.</summary>
/// <param name="Length">[0.01 mm] Length.</param>
/// <param name="Room">[0.01 mm] Length less trims plus one kerf: what Σ(piece + kerf) may reach.</param>
/// <param name="Capacity">[grain] <paramref name="Room"/> in whole grains of the model.</param>
/// <param name="Cost">Cost of one; 0 for pieces on hand.</param>
/// <param name="Available">How many there are.</param>
/// <param name="Bought">False for pieces on hand.</param>
internal sealed record StockKind(long Length, long Room, long Capacity, long Cost, int Available, bool Bought)
{
    public const int Unlimited = int.MaxValue;

    /// <summary>A stock that does not exist, priced beyond everything: where it is used, pieces are missing.</summary>
    public bool Missing { get; init; }
}

/// <summary>Equal stocks cut alike.</summary>
/// <param name="Kind">Index of the stock kind.</param>
/// <param name="Pieces">Number of pieces of each size.</param>
/// <param name="Times">Number of stocks.</param>
internal sealed record Batch(int Kind, int[] Pieces, int Times);

/// <summary>A cutting job in whole numbers: sizes (kerf included) in falling order, and kinds of stock.</summary>
internal sealed class CutModel
{
    private CutModel(long[] sizes, int[] demand, long grain, StockKind[] kinds)
    {
        Sizes = sizes;
        Demand = demand;
        Grain = grain;
        Kinds = kinds;
    }

    /// <summary>[grain] Piece plus kerf, falling.</summary>
    public long[] Sizes { get; }

    /// <summary>Pieces wanted of each size.</summary>
    public int[] Demand { get; }

    /// <summary>[0.01 mm] Greatest common divisor of the sizes; capacities lose nothing by being rounded down to it.</summary>
    public long Grain { get; }

    public StockKind[] Kinds { get; }

    /// <summary>True when the job buys by price.</summary>
    public bool ByPrice { get; private init; }

    /// <summary>Shared by all models made from one job.</summary>
    public SolverEffort Effort { get; private init; } = new(0.5);

    public const long PriceScale = 10_000;

    public static CutModel From(CutJob job)
    {
        var kerf = CutGrain.Up(job.Kerf);
        var trims = CutGrain.Up(job.FirstEndTrim) + CutGrain.Up(job.FarEndTrim);
        var bySize = new SortedDictionary<long, int>(Comparer<long>.Create((a, b) => b.CompareTo(a)));
        foreach (var piece in job.Wanted)
        {
            var size = CutGrain.Up(piece.Length) + kerf;
            bySize[size] = bySize.GetValueOrDefault(size) + piece.Count;
        }

        var grain = bySize.Keys.Aggregate(0L, (a, b) => (long)BigInteger.GreatestCommonDivisor(a, b));
        grain = Math.Max(1, grain);
        var byPrice = job.Offers.Count > 0 && job.Offers.All(offer => offer.Price is not null);

        var kinds = new List<StockKind>();
        var onHand = job
            .OnHand.Select(stock =>
                (
                    Length: CutGrain.Down(stock.Length),
                    Room: CutGrain.Down(stock.Length) - (stock.AlreadySquare ? 0 : trims) + kerf,
                    stock.Count
                )
            )
            .GroupBy(stock => (stock.Length, stock.Room))
            .OrderBy(group => group.Key.Room)
            .ThenBy(group => group.Key.Length);
        foreach (var group in onHand.Where(group => group.Key.Room > 0))
        {
            kinds.Add(
                new(group.Key.Length, group.Key.Room, group.Key.Room / grain, 0, group.Sum(stock => stock.Count), false)
            );
        }

        var offers = job
            .Offers.Select(offer =>
                (
                    Length: CutGrain.Down(offer.Length),
                    Cost: byPrice ? (long)Math.Round(offer.Price!.Value * PriceScale) : CutGrain.Down(offer.Length)
                )
            )
            .GroupBy(offer => offer.Length)
            .Select(group => group.MinBy(offer => offer.Cost))
            .OrderBy(offer => offer.Length);
        foreach (var (length, cost) in offers.Where(offer => offer.Length - trims + kerf > 0))
        {
            kinds.Add(
                new(length, length - trims + kerf, (length - trims + kerf) / grain, cost, StockKind.Unlimited, true)
            );
        }

        var sizes = bySize.Keys.Select(size => size / grain).ToArray();
        var longestBought = kinds.Where(kind => kind.Bought).Select(kind => kind.Capacity).DefaultIfEmpty(0).Max();
        if (sizes.Length > 0 && sizes[0] > longestBought)
        {
            // Some pieces fit only what is on hand; the stand-in keeps the model solvable and shows what is missing.
            var pieces = bySize.Values.Sum();
            var dear = Math.Max(1, kinds.Select(kind => kind.Cost).DefaultIfEmpty(0).Max()) * (pieces + 1L);
            kinds.Add(
                new(sizes[0] * grain, sizes[0] * grain, sizes[0], dear, StockKind.Unlimited, true) { Missing = true }
            );
        }

        return new(sizes, [.. bySize.Values], grain, [.. kinds]) { ByPrice = byPrice };
    }

    /// <summary>The same pieces without anything on hand; null when that cannot be cut.</summary>
    public CutModel? WithoutOnHand()
    {
        var bought = Kinds.Select(kind => kind.Bought ? kind : kind with { Available = 0 }).ToArray();
        return Array.Exists(bought, kind => kind.Bought && !kind.Missing && kind.Capacity >= Sizes[0])
            ? new(Sizes, Demand, Grain, bought) { ByPrice = ByPrice, Effort = Effort }
            : null;
    }

    /// <summary>The same pieces with a purchase already made; what does not fit is missing and costs one per stand-in.
    /// </summary>
    /// <param name="numbers">Stocks bought of each kind.</param>
    public CutModel WithPurchase(int[] numbers)
    {
        var kinds = Kinds.Select(
            (kind, k) => kind.Bought ? kind with { Bought = false, Cost = 0, Available = numbers[k] } : kind
        );
        var missing = new StockKind(0, 0, Sizes[0], 1, StockKind.Unlimited, true) { Missing = true };
        return new(Sizes, Demand, Grain, [.. kinds, missing]) { Effort = Effort };
    }

    public long Load(int[] pieces)
    {
        long load = 0;
        for (var i = 0; i < pieces.Length; i++)
        {
            load += pieces[i] * Sizes[i];
        }

        return load;
    }

    public long Cost(IEnumerable<Batch> batches) => batches.Sum(batch => Kinds[batch.Kind].Cost * batch.Times);

    public long BoughtLength(IEnumerable<Batch> batches) =>
        batches.Where(batch => Kinds[batch.Kind].Bought).Sum(batch => Kinds[batch.Kind].Length * batch.Times);

    /// <summary>[0.01 mm] What the batch leaves beyond its last cut.</summary>
    public long Rest(Batch batch) => Kinds[batch.Kind].Room - Load(batch.Pieces) * Grain;
}
