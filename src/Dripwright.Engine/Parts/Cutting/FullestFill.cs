namespace Dripwright.Engine.Parts;

/// <summary>The fullest way to fill one stock from the pieces at hand (bounded subset sum, depth first).</summary>
internal sealed class FullestFill
{
    private readonly long[] _sizes;
    private readonly int[] _limits;
    private readonly int[] _now;
    private readonly int[] _best;
    private readonly long[] _tail;
    private long _bestLoad;
    private long _nodes;
    private long _capacity;

    private FullestFill(long[] sizes, int[] limits)
    {
        _sizes = sizes;
        _limits = limits;
        _now = new int[sizes.Length];
        _best = new int[sizes.Length];
        _tail = new long[sizes.Length + 1];
        for (var i = sizes.Length - 1; i >= 0; i--)
        {
            _tail[i] = _tail[i + 1] + sizes[i] * limits[i];
        }
    }

    /// <summary>Pieces that fill <paramref name="capacity"/> best, found within <paramref name="nodes"/> steps.</summary>
    /// <param name="sizes">Sizes, falling.</param>
    /// <param name="limits">Pieces at hand of each size.</param>
    /// <param name="capacity">Room.</param>
    /// <param name="withLargest">The largest piece that fits must be among them.</param>
    /// <param name="nodes">Steps after which the best so far is taken.</param>
    public static (int[] Pieces, long Load, bool Exact) Of(
        long[] sizes,
        int[] limits,
        long capacity,
        bool withLargest,
        long nodes
    )
    {
        var fill = new FullestFill(sizes, limits) { _nodes = nodes, _capacity = capacity };
        var first = 0;
        while (first < sizes.Length && (limits[first] == 0 || sizes[first] > capacity))
        {
            first++;
        }

        if (first == sizes.Length)
        {
            return (fill._best, 0, true);
        }

        if (withLargest)
        {
            for (var count = (int)Math.Min(limits[first], capacity / sizes[first]); count >= 1; count--)
            {
                fill._now[first] = count;
                fill.Search(first + 1, count * sizes[first]);
            }
        }
        else
        {
            fill.Search(first, 0);
        }

        return (fill._best, fill._bestLoad, fill._nodes > 0 || fill._bestLoad == capacity);
    }

    private void Search(int i, long load)
    {
        if (load > _bestLoad)
        {
            _bestLoad = load;
            Array.Copy(_now, _best, _now.Length);
        }

        var room = _capacity - load;
        while (i < _sizes.Length && (_limits[i] == 0 || _sizes[i] > room))
        {
            i++;
        }

        if (i == _sizes.Length || load + Math.Min(room, _tail[i]) <= _bestLoad || _nodes-- <= 0)
        {
            return;
        }

        for (var count = (int)Math.Min(_limits[i], room / _sizes[i]); count >= 0; count--)
        {
            _now[i] = count;
            Search(i + 1, load + count * _sizes[i]);
            if (_bestLoad == _capacity || _nodes <= 0)
            {
                break;
            }
        }

        _now[i] = 0;
    }
}
