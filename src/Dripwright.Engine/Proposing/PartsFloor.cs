using Dripwright.Engine.Layout;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Proposing;

/// <summary>A bound under the cost of a placed rig's parts, without planning a single cut.</summary>
/// <remarks>Counted parts cost what they cost; pipe, hose and tube at least their length in whole stock, nothing where some is on hand.</remarks>
internal static class PartsFloor
{
    /// <summary>The bound, pump and emitters left out.</summary>
    public static decimal Of(Rig rig, RigLayout layout)
    {
        var tally = new PartsTally();
        RunParts.Count(tally, rig, layout);
        PotParts.Count(tally, rig, layout);
        // Without the stand's strength the sockets are made for a firm push: the least that they are ever made for.
        StandParts.Count(tally, rig, layout, PrintedParts.Of(rig, layout, null));
        PowerParts.Count(tally, rig, layout);
        var sum = PartLines
            .Of(tally, rig.OnHand, layout.Parts.Catalogue)
            .Where(l => l.Part != rig.Pump.Model && l.Part != rig.Feed.Emitter)
            .Sum(l => l.Price ?? 0);
        sum += Microtube.Line(rig, layout)?.Price ?? 0;
        HashSet<string> stock = [.. rig.OnHand.Select(h => h.Part)];
        foreach (var pipe in layout.Runs.GroupBy(r => r.Pipe.Key).Where(g => !stock.Contains(g.Key)))
        {
            var size = pipe.First().Pipe;
            var length = pipe.Sum(r => r.Pieces.Sum(p => p.Length)) + (size.Flexible ? rig.Spares.Tube : 0);
            sum += StockCost.AtLeast(size, size.StockLengths, length);
        }

        var tube = layout.Parts.Tube;
        return stock.Contains(tube.Key)
            ? sum
            : sum + StockCost.AtLeast(tube, tube.StockLengths, layout.Stand.Members.Sum(m => m.Length));
    }
}
