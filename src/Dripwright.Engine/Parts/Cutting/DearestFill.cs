namespace Dripwright.Engine.Parts;

/// <summary>The filling of one stock that is worth most when each piece has a worth (bounded knapsack).</summary>
/// <remarks>Depth first with the fractional bound, after Martello and Toth, Knapsack Problems, 1990, ch. 3 (from
/// memory).</remarks>
internal sealed class DearestFill
{
    private readonly long[] _sizes;
    private readonly long[] _worths;
    private readonly int[] _limits;
    private readonly int[] _order;
    private readonly double[] _ratio;
    private readonly long[] _smallest;
    private readonly int[] _now;
    private int[] _best;
    private long _bestWorth;
    private long _nodes;

    /// <summary>Prepares the search.</summary>
    /// <param name="sizes">Size of each piece.</param>
    /// <param name="worths">Worth of each piece, zero or more.</param>
    /// <param name="limits">Pieces at hand of each size.</param>
    public DearestFill(long[] sizes, long[] worths, int[] limits)
    {
        _order = [.. Enumerable.Range(0, sizes.Length).Where(i => worths[i] > 0 && limits[i] > 0)];
        var ratios = Array.ConvertAll(_order, i => -(double)worths[i] / sizes[i]);
        Array.Sort(ratios, _order);
        _ratio = Array.ConvertAll(ratios, ratio => -ratio);
        _sizes = Array.ConvertAll(_order, i => sizes[i]);
        _worths = Array.ConvertAll(_order, i => worths[i]);
        _limits = Array.ConvertAll(_order, i => limits[i]);
        _smallest = new long[_order.Length + 1];
        _smallest[^1] = long.MaxValue;
        for (var i = _order.Length - 1; i >= 0; i--)
        {
            _smallest[i] = Math.Min(_smallest[i + 1], _sizes[i]);
        }

        _now = new int[_order.Length];
        _best = new int[_order.Length];
        Full = new int[sizes.Length];
    }

    /// <summary>Pieces of the best filling found by the last <see cref="Search"/>.</summary>
    public int[] Full { get; private set; }

    /// <summary>Most worth that fits, or an upper bound of it when <paramref name="nodes"/> steps did not settle it.</summary>
    public (long Worth, bool Exact) Search(long capacity, long nodes)
    {
        Array.Clear(_now);
        _best = new int[_order.Length];
        _bestWorth = 0;
        _nodes = nodes;
        Step(0, capacity, 0);
        Full = new int[Full.Length];
        for (var i = 0; i < _order.Length; i++)
        {
            Full[_order[i]] = _best[i];
        }

        var exact = _nodes > 0;
        return (exact || _order.Length == 0 ? _bestWorth : Reach(0, capacity, 0), exact);
    }

    private long Reach(int i, long room, long worth) => worth + (long)(room * _ratio[i] * (1 + 1e-12)) + 1;

    private void Step(int i, long room, long worth)
    {
        if (worth > _bestWorth)
        {
            _bestWorth = worth;
            Array.Copy(_now, _best, _now.Length);
        }

        if (room < _smallest[i])
        {
            return;
        }

        while (i < _order.Length && _sizes[i] > room)
        {
            i++;
        }

        if (i == _order.Length || Reach(i, room, worth) - 1 <= _bestWorth || _nodes-- <= 0)
        {
            return;
        }

        for (var count = (int)Math.Min(_limits[i], room / _sizes[i]); count >= 0; count--)
        {
            _now[i] = count;
            Step(i + 1, room - count * _sizes[i], worth + count * _worths[i]);
            if (_nodes <= 0)
            {
                break;
            }
        }

        _now[i] = 0;
    }
}
