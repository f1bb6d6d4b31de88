using System.Numerics;

namespace Dripwright.Engine.Parts;

/// <summary>One way to fill one kind of stock.</summary>
internal sealed record CutPattern(int Kind, int[] Pieces);

/// <summary>All fillings that a plan cheaper than the best one known may use.</summary>
/// <remarks>
/// By weak duality a plan that uses a filling costs at least the bound plus the filling's reduced cost, cost less
/// worth of its pieces. Fillings beyond the target are left out, and so are those that another piece still fits:
/// wanted numbers may be exceeded in the program, surplus pieces are taken out afterwards.
/// </remarks>
internal sealed class CutPatternList
{
    private const int MostPatterns = 6_000;
    private const long MostSteps = 1_000_000;

    private readonly CutModel _model;
    private readonly int[] _order;
    private readonly long[] _worths;
    private readonly double[] _ratio;
    private readonly int[] _now;
    private readonly List<CutPattern> _found = [];
    private long _steps;
    private int _kind;
    private BigInteger _least;

    private CutPatternList(CutModel model, long[] worths)
    {
        _model = model;
        _worths = worths;
        _order = [.. Enumerable.Range(0, worths.Length)];
        var ratios = Array.ConvertAll(_order, i => -(double)worths[i] / model.Sizes[i]);
        Array.Sort(ratios, _order);
        _ratio = Array.ConvertAll(ratios, ratio => -ratio);
        _now = new int[worths.Length];
    }

    /// <summary>The fillings, or null when there are too many to list.</summary>
    /// <param name="model">The job.</param>
    /// <param name="worths">Worth of each piece, scaled by <see cref="PurchaseBound.Fit"/>.</param>
    /// <param name="holds">Most worth that each kind holds.</param>
    /// <param name="slack">How far target lies above the bound, in units of cost / scale.</param>
    public static List<CutPattern>? Of(CutModel model, long[] worths, long[] holds, BigInteger slack)
    {
        var list = new CutPatternList(model, worths);
        for (var k = 0; k < model.Kinds.Length; k++)
        {
            var kind = model.Kinds[k];
            if (kind.Available == 0)
            {
                continue;
            }

            list._kind = k;
            list._least = (kind.Bought ? (BigInteger)kind.Cost * PurchaseBound.Scale : holds[k]) - slack;
            if (!list.Step(0, kind.Capacity, 0))
            {
                return null;
            }
        }

        return list._found;
    }

    private bool Step(int i, long room, long worth)
    {
        if (++_steps > MostSteps || _found.Count > MostPatterns)
        {
            return false;
        }

        if (i == _order.Length)
        {
            if (worth >= _least && IsFull(room))
            {
                _found.Add(new(_kind, (int[])_now.Clone()));
            }

            return true;
        }

        if (worth + (long)(room * _ratio[i] * (1 + 1e-12)) + 1 < _least)
        {
            return true;
        }

        var piece = _order[i];
        var size = _model.Sizes[piece];
        for (var count = (int)Math.Min(_model.Demand[piece], room / size); count >= 0; count--)
        {
            _now[piece] = count;
            if (!Step(i + 1, room - count * size, worth + count * _worths[piece]))
            {
                return false;
            }
        }

        _now[piece] = 0;
        return true;
    }

    private bool IsFull(long room)
    {
        for (var i = 0; i < _now.Length; i++)
        {
            if (_model.Sizes[i] <= room && _now[i] < _model.Demand[i])
            {
                return false;
            }
        }

        return true;
    }
}
