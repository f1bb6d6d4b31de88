using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Proposing;

/// <summary>A quick bound under the cost of every rig of a frame, before it is placed.</summary>
/// <remarks>
/// Counts only what no rig of the frame can do without: pots with drains and coir, tank, pump, emitters, and pipe for the
/// pots' own length.
/// </remarks>
internal sealed class CostFloor(Brief brief, SearchSpace space, CandidateList candidates, PartsCatalogue catalogue)
{
    /// <summary>[m³] What a block of coir may fill at most, so that the bound stays one.</summary>
    private const double CoirBlock = 0.075;

    private readonly HashSet<string> _stock = [.. brief.OnHand.Select(h => h.Part)];
    private readonly int _pots = BriefPots.Count(brief, catalogue);

    /// <summary>The bound.</summary>
    public decimal Of(Frame frame)
    {
        var pump = frame.Gravity ? 0 : space.Pumps.Min(candidates.PumpCost);
        var emitters = space.Emitters.Min(e => WithPieces(e, _pots * frame.Emitters));
        var drains = catalogue
            .Outlets[frame.Outlet]
            .Pieces.GroupBy(p => p)
            .Sum(p => PieceCost(p.Key, _pots * p.Count()));
        var length = Math.Max(0, _pots - frame.Pattern.Rows) * frame.Pattern.Spacing;
        var line = catalogue.Pipes[frame.Line];
        var drain = catalogue.Pipes[frame.Drain];
        var tube = catalogue.Tubes[space.Start.Stand.Tube];
        return candidates.Cost(space.Pot, _pots, 0)
            + PieceCost("coir-5-kg", (int)(_pots * space.Pot.Volume / CoirBlock))
            + candidates.Cost(catalogue.Tanks[frame.Tank], frame.Gravity ? 2 : 1, 0)
            + pump
            + emitters
            + drains
            + Lengths(line, line.StockLengths, length)
            + (
                frame.Header == frame.Line
                    ? 0
                    : Lengths(catalogue.Pipes[frame.Header], catalogue.Pipes[frame.Header].StockLengths, 0.1)
            )
            + Lengths(drain, drain.StockLengths, length)
            + Lengths(tube, tube.StockLengths, 2 * length);
    }

    /// <summary>[-] No rig of the frame is more even than this.</summary>
    public double Best(Frame frame) => space.Emitters.Max(e => CandidateList.Best(e, frame.Emitters));

    private decimal WithPieces(EmitterType emitter, int count) =>
        candidates.EmitterCost(emitter, count)
        + emitter.Pieces.GroupBy(p => p).Sum(p => PieceCost(p.Key, count * p.Count()));

    private decimal PieceCost(string key, int count) =>
        catalogue.Sundries.TryGetValue(key, out var piece) ? candidates.Cost(piece, count, 0) : 0;

    private decimal Lengths(CatalogueEntry part, IReadOnlyList<double> sold, double length) =>
        _stock.Contains(part.Key) ? 0 : StockCost.AtLeast(part, sold, length);
}
