using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Wires;

namespace Dripwright.Engine.Parts;

/// <summary>Derives what to buy, cut and drill from a layout, piece by piece.</summary>
/// <remarks>Method pages: docs/methods/parts.md, cutting.md, holes.md</remarks>
public static class PartsPlanner
{
    /// <summary>Parts, cuts and holes of a rig.</summary>
    /// <param name="rig">A rig that was read without a fault.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="overhead">What hangs over its rows.</param>
    /// <param name="printed">What is printed for its stands.</param>
    public static PartsPlan Plan(Rig rig, RigLayout layout, OverheadPlan overhead, PrintedParts printed)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(overhead);
        ArgumentNullException.ThrowIfNull(printed);
        return Plan(rig, layout, overhead, printed, new CutList(rig, layout));
    }

    /// <summary>The same with cuts that were planned before: they follow from rig and layout alone, and take longest.</summary>
    internal static PartsPlan Plan(Rig rig, RigLayout layout, OverheadPlan overhead, PrintedParts printed, CutList cuts)
    {
        var tally = new PartsTally();
        RunParts.Count(tally, rig, layout);
        PotParts.Count(tally, rig, layout);
        StandParts.Count(tally, rig, layout, printed);
        OverheadParts.Count(tally, rig, layout, overhead);
        PowerParts.Count(tally, rig, layout);
        (List<HoleMark> holes, List<string> unmarked) = HoleMarks.Of(rig, layout);
        PartLine? microtube = Microtube.Line(rig, layout);
        IReadOnlyList<PartLine> lines = PartLines.ByShelf([
            .. cuts.Lines,
            .. PartLines.Of(tally, rig.OnHand, layout.Parts.Catalogue),
            .. microtube is null ? Array.Empty<PartLine>() : [microtube],
        ]);
        return new PartsPlan(
            lines,
            cuts.Plans,
            [.. cuts.Troubles, .. unmarked],
            holes,
            HoleMarks.InPots(rig, layout),
            ForgottenThings.Of(rig, layout, tally, holes),
            PartLines.Cost(lines),
            CurrencyOf(lines)
        )
        {
            Cutting = cuts,
        };
    }

    // The currency of the user's own prices is not known, so a sum with any of them in it has no currency word.
    private static string CurrencyOf(IReadOnlyList<PartLine> lines)
    {
        PartLine[] priced = [.. lines.Where(l => l.Price is not null)];
        return priced.Length > 0 && priced.All(l => l.InventedPrice) ? "USD" : "";
    }
}
