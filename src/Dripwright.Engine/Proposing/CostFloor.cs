using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Proposing;

/// <summary>A quick bound under the cost of every rig of a frame, before it is placed.</summary>
/// <remarks>Counts only what no rig of the frame can do without: pots, tank, pump, emitters, and pipe for the pots' own length.</remarks>
internal sealed class CostFloor(Brief brief, SearchSpace space, CandidateList candidates, PartsCatalogue catalogue)
{
    private readonly HashSet<string> _stock = [.. brief.OnHand.Select(h => h.Part)];
    private readonly int _pots = BriefPots.Count(brief);

    /// <summary>The bound.</summary>
    public decimal Of(Frame frame)
    {
        decimal pump = frame.Gravity ? 0 : space.Pumps.Min(candidates.PumpCost);
        decimal emitters = space.Emitters.Min(e => candidates.EmitterCost(e, _pots * frame.Emitters));
        double length = Math.Max(0, _pots - frame.Pattern.Rows) * frame.Pattern.Spacing;
        return candidates.Cost(space.Pot, _pots, 0)
            + candidates.Cost(catalogue.Tanks[frame.Tank], frame.Gravity ? 2 : 1, 0)
            + pump
            + emitters
            + Lengths(catalogue.Pipes[frame.Line], catalogue.Pipes[frame.Line].StockLengths, length)
            + Lengths(catalogue.Pipes[frame.Drain], catalogue.Pipes[frame.Drain].StockLengths, length)
            + Lengths(
                catalogue.Tubes[space.Start.Stand.Tube],
                catalogue.Tubes[space.Start.Stand.Tube].StockLengths,
                2 * length
            );
    }

    /// <summary>[-] No rig of the frame is more even than this.</summary>
    public double Best(Frame frame) => space.Emitters.Max(e => CandidateList.Best(e, frame.Emitters));

    // By the metre at the cheapest length sold; a cent is taken off for the rounding of each price.
    private decimal Lengths(CatalogueEntry part, IReadOnlyList<double> sold, double length)
    {
        decimal price =
            sold.Count == 1 && part.Price is { } own ? Math.Min(own, part.TypicalPrice ?? own) : part.TypicalPrice ?? 0;
        return _stock.Contains(part.Key) ? 0 : Math.Max(0, (price - 0.01m) * (decimal)(length / sold[0]));
    }
}
