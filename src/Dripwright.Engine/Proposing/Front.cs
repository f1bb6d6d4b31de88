using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Proposing;

/// <summary>A rig that passed.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Plan">Its plan.</param>
/// <param name="Order">Place in the order of trying, for the last of ties.</param>
internal sealed record Passed(Rig Rig, Plan Plan, (int Frame, int Within) Order)
{
    public decimal Cost => Plan.Parts.Cost.Known;

    public double Uniformity => Plan.Feed.Uniformity[0].Value;
}

/// <summary>For each mark of uniformity the cheapest rig that reaches it; of equally cheap ones the more even.</summary>
internal sealed class Front
{
    private readonly Passed?[] _best = new Passed?[UniformityMarks.All.Count];

    /// <summary>True when some rig is kept.</summary>
    public bool Any => _best[0] is not null;

    /// <summary>The rigs kept, cheapest first, each with the highest mark for which it is the cheapest.</summary>
    public IReadOnlyList<(Passed Rig, int Mark)> Kept =>
        [
            .. _best
                .Select((rig, mark) => (Rig: rig, Mark: mark))
                .Where(p => p.Rig is not null)
                .GroupBy(p => p.Rig!.Order)
                .Select(same => (same.First().Rig!, same.Max(p => p.Mark))),
        ];

    /// <summary>Keeps a rig at every mark for which it is the best so far.</summary>
    public void Add(Passed rig)
    {
        for (var mark = UniformityMarks.Reached(rig.Uniformity); mark >= 0; mark--)
        {
            if (_best[mark] is not { } best || IsBetter(rig, best))
            {
                _best[mark] = rig;
            }
        }
    }

    /// <summary>True where a rig of at least this cost and at most this uniformity may still be the best at some mark.</summary>
    public bool MayTake(decimal floor, double uniformity)
    {
        // The best costs never fall from mark to mark, so the highest mark within reach decides.
        var mark = UniformityMarks.Reached(uniformity);
        return mark >= 0 && (_best[mark] is not { } best || floor <= best.Cost);
    }

    private static bool IsBetter(Passed a, Passed b) =>
        a.Cost != b.Cost ? a.Cost < b.Cost
        : a.Uniformity != b.Uniformity ? a.Uniformity > b.Uniformity
        : a.Order.CompareTo(b.Order) < 0;
}
