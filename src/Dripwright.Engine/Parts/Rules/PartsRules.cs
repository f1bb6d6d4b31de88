using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Parts;

/// <summary>Judges parts and cuts.</summary>
internal sealed class PartsRules(RigLayout layout, PartsPlan parts, Judgement judge)
{
    public void Judge()
    {
        foreach (string trouble in parts.CutTroubles)
        {
            judge.Add(
                "cut-impossible",
                "cuts",
                "onHand",
                trouble,
                "no plan",
                "every piece from a stock length",
                "Take a longer stock, or a shorter module."
            );
        }

        foreach (CutPlan cut in parts.Cuts)
        {
            foreach (KerfTrap trap in cut.KerfTraps)
            {
                judge.Add(
                    "kerf-trap",
                    cut.Material,
                    "rows[0].moduleLength",
                    $"The saw's width costs a piece: a stock of {judge.Words.Length(trap.StockLength)} gives {QuantityWords.Count(trap.WithKerf)} pieces of {judge.Words.Length(trap.PieceLength)}, not {QuantityWords.Count(trap.WithoutKerf)}.",
                    $"{QuantityWords.Count(trap.WithKerf)} pieces",
                    $"{QuantityWords.Count(trap.WithoutKerf)} pieces",
                    $"Shorten each piece by {judge.Words.Length(trap.ShortenBy)} to save stock."
                );
            }
        }

        List<string> bare =
        [
            .. layout
                .Runs.Where(r => r.Pipe.Family is PipeFamily.HoseInch or PipeFamily.HoseMetric)
                .SelectMany(r => r.Fittings)
                .Where(f => f.Type.Clamps == 0 && f.Interrupts)
                .Select(f => f.Label),
        ];
        if (bare.Count > 0)
        {
            judge.Add(
                "barb-unclamped",
                string.Join(", ", bare.Take(6)),
                "feed.line",
                $"{QuantityWords.Count(bare.Count)} barbs have no clamp: one that pops off empties the reservoir onto the floor.",
                "no clamp",
                "one on every barb",
                "Add clamps to these fittings."
            );
        }

        int lines = parts.Lines.Count(l => l.Buy > 0);
        if (lines > 0)
        {
            judge.Add(
                "parts-short",
                "parts",
                "onHand",
                $"{QuantityWords.Count(lines)} kinds of part are still to be bought.",
                $"{QuantityWords.Count(lines)} kinds",
                "none",
                "Take the parts list to the shop; it counts spares, and what you have already."
            );
        }
    }
}
