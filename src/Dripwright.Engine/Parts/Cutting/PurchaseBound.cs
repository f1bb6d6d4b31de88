using System.Numerics;

namespace Dripwright.Engine.Parts;

/// <summary>What must be bought at least, whoever plans.</summary>
/// <remarks>
/// Give each piece of size i a worth u ≥ 0 and let z be the most worth one stock of a kind can hold. If z ≤ cost for
/// every kind that is bought, then cost ≥ Σ u·demand - Σ(on hand) z·available: weak duality of the pattern program of
/// Gilmore and Gomory, Operations Research 9, 1961 (from memory). Whole numbers throughout: the bound holds whatever
/// the worths come from, a rule of thumb or a linear program's rounded prices. The result is lifted to the next sum
/// that can be paid with the costs of the kinds.
/// </remarks>
internal sealed class PurchaseBound(CutModel model)
{
    /// <summary>Worths are multiples of cost / Scale.</summary>
    public const long Scale = 1_000_000;

    private const long Nodes = 100_000;

    /// <summary>Keeps sums of worths within 64 bits; a worth that is cut down to it is still a worth.</summary>
    private const long MostWorth = 1_000_000_000_000_000;

    private readonly long[] _coins = [.. Costs(model).Select(cost => cost / UnitOf(model))];

    /// <summary>Best bound so far.</summary>
    public long Value { get; private set; }

    /// <summary>Tries the worths that need no linear program, until <paramref name="target"/> is reached.</summary>
    public void TryPlainWorths(long target)
    {
        var largest = model.Kinds.Where(kind => kind.Bought).Select(kind => kind.Capacity).DefaultIfEmpty(0).Max();
        if (largest == 0 || model.Sizes.Length == 0)
        {
            return;
        }

        foreach (var worths in PlainWorths(largest))
        {
            Try(worths);
            if (Value >= target)
            {
                return;
            }
        }
    }

    private IEnumerable<long[]> PlainWorths(long largest)
    {
        yield return model.Sizes;
        // Half-stock rule: pieces above half fill a stock alone, two of exactly half fill it.
        yield return
        [
            .. model.Sizes.Select(size =>
                2 * size > largest ? 2L
                : 2 * size == largest ? 1L
                : 0L
            ),
        ];
        yield return [.. model.Sizes.Select(size => Share(largest / size))];
        // Above a threshold's complement a piece shuts out everything above the threshold (Martello and Toth's L2).
        foreach (var threshold in model.Sizes.Where(size => 2 * size <= largest).Take(50))
        {
            yield return
            [
                .. model.Sizes.Select(size =>
                    size > largest - threshold ? largest
                    : size >= threshold ? size
                    : 0L
                ),
            ];
        }

        // Rounding functions of Fekete and Schepers, Mathematical Programming 91, 2001 (from memory).
        for (var k = 1; k <= 6; k++)
        {
            yield return
            [
                .. model.Sizes.Select(size =>
                    (k + 1) * size % largest == 0 ? size * k : (k + 1) * size / largest * largest
                ),
            ];
        }
    }

    /// <summary>Greatest common divisor of the costs; 1 when nothing costs anything.</summary>
    public long Unit { get; } = UnitOf(model);

    /// <summary>The next sum above <paramref name="cost"/> that can be paid.</summary>
    public long NextPayable(long cost) => LeastPayable(cost / Unit + 1, _coins) * Unit;

    /// <summary>Takes a bound that was proven by exhausting the plans that cost less.</summary>
    public void Prove(long cost) => Value = Math.Max(Value, cost);

    /// <summary>Bound from the worths given; any numbers zero or more will do, they are scaled to fit.</summary>
    public void Try(long[] worths)
    {
        var (scaled, holds) = Fit(worths);
        Value = Math.Max(Value, Payable(Raw(scaled, holds)));
    }

    /// <summary>Worths scaled so that no bought stock holds more than its cost (in units of cost / Scale), and the most
    /// that each kind holds.</summary>
    public (long[] Worths, long[] Holds) Fit(long[] worths)
    {
        var holds = Holds(worths);
        // The kind that is tightest sets the scale: the smallest cost / z.
        BigInteger above = 0;
        BigInteger below = 1;
        for (var k = 0; k < model.Kinds.Length; k++)
        {
            var kind = model.Kinds[k];
            if (!kind.Bought || kind.Available == 0 || holds[k] == 0)
            {
                continue;
            }

            var cost = (BigInteger)kind.Cost * Scale;
            if (above.IsZero && below.IsOne || cost * below < above * holds[k])
            {
                (above, below) = (cost, holds[k]);
            }
        }

        var scaled = Array.ConvertAll(worths, worth => (long)BigInteger.Min(MostWorth, worth * above / below));
        return (scaled, Holds(scaled));
    }

    /// <summary>Σ u·demand - Σ z·available, in units of cost / Scale.</summary>
    public BigInteger Raw(long[] scaled, long[] holds)
    {
        BigInteger raw = 0;
        for (var i = 0; i < scaled.Length; i++)
        {
            raw += (BigInteger)scaled[i] * model.Demand[i];
        }

        for (var k = 0; k < model.Kinds.Length; k++)
        {
            if (!model.Kinds[k].Bought)
            {
                raw -= (BigInteger)holds[k] * model.Kinds[k].Available;
            }
        }

        return raw;
    }

    private static IEnumerable<long> Costs(CutModel model) =>
        model.Kinds.Where(kind => kind.Bought && kind.Available > 0).Select(kind => kind.Cost);

    private static long UnitOf(CutModel model) =>
        Math.Max(1, Costs(model).Aggregate(0L, (a, b) => (long)BigInteger.GreatestCommonDivisor(a, b)));

    private static long Share(long perStock) => perStock == 0 ? Scale : (Scale + perStock - 1) / perStock;

    private long[] Holds(long[] worths)
    {
        var search = new DearestFill(model.Sizes, worths, model.Demand);
        return Array.ConvertAll(
            model.Kinds,
            kind => kind.Available == 0 ? 0 : search.Search(kind.Capacity, Nodes).Worth
        );
    }

    private long Payable(BigInteger raw)
    {
        if (raw <= 0)
        {
            return 0;
        }

        // Floors of the worths cost a few millionths of a stock at most; they must not be lifted away, so plain ceiling.
        var cost = (long)((raw + Scale - 1) / Scale);
        return Array.Exists(_coins, coin => coin > 0) ? LeastPayable((cost + Unit - 1) / Unit, _coins) * Unit : 0;
    }

    /// <summary>Smallest sum of coins that is not below <paramref name="units"/>.</summary>
    private static long LeastPayable(long units, long[] coins)
    {
        var smallest = coins.Where(coin => coin > 0).Min();
        if (smallest == 1 || units > 1_000_000)
        {
            return units;
        }

        var top = units + smallest;
        var payable = new bool[top + 1];
        payable[0] = true;
        for (long sum = 1; sum <= top; sum++)
        {
            foreach (var coin in coins)
            {
                if (coin > 0 && coin <= sum && payable[sum - coin])
                {
                    payable[sum] = true;
                    break;
                }
            }

            if (sum >= units && payable[sum])
            {
                return sum;
            }
        }

        return units;
    }
}
