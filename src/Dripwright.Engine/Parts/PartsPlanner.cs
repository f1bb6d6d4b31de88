using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Wires;

namespace Dripwright.Engine.Parts;

/// <summary>Derives what to buy, cut and drill from a layout, piece by piece.</summary>
/// <remarks>Method pages: docs/methods/parts.md, cutting.md, holes.md</remarks>
public static class PartsPlanner
{
    /// <summary>Parts, cuts and holes of a rig.</summary>
    /// <param name="rig">The rig; it may have more parts on hand than the one that was placed.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="cropWire">What hangs over its rows.</param>
    /// <param name="printed">What is printed for its stands.</param>
    /// <param name="nutrients">What its reservoir is filled with; null where no recipe is asked for, or its salts are not to be listed.</param>
    public static PartsPlan Plan(
        Rig rig,
        RigLayout layout,
        CropWirePlan cropWire,
        PrintedParts printed,
        NutrientPlan? nutrients
    )
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(cropWire);
        ArgumentNullException.ThrowIfNull(printed);
        return Plan(rig, layout, cropWire, printed, nutrients, new CutList(rig, layout));
    }

    /// <summary>The same with cuts that were planned before: they follow from rig and layout alone, and take longest.</summary>
    internal static PartsPlan Plan(
        Rig rig,
        RigLayout layout,
        CropWirePlan cropWire,
        PrintedParts printed,
        NutrientPlan? nutrients,
        CutList cuts
    )
    {
        var tally = new PartsTally();
        RunParts.Count(tally, rig, layout);
        PotParts.Count(tally, rig, layout);
        StandParts.Count(tally, rig, layout, printed);
        CropWireParts.Count(tally, rig, layout, cropWire);
        PowerParts.Count(tally, rig, layout);
        (var holes, var unmarked) = HoleMarks.Of(rig, layout);
        var microtube = Microtube.Line(rig, layout);
        var lines = PartLines.InSections([
            .. cuts.Lines,
            .. PartLines.Of(tally, rig.OnHand, layout.Parts.Catalogue),
            .. microtube is null ? Array.Empty<PartLine>() : [microtube],
            .. SaltParts.Lines(layout.Resolved.Nutrients, nutrients),
        ]);
        return new PartsPlan(
            lines,
            cuts.Plans,
            [.. cuts.Troubles, .. unmarked],
            holes,
            HoleMarks.InPots(layout),
            ForgottenThings.Of(layout, tally, holes),
            PartLines.Cost(lines),
            PartLines.Cost([.. lines.Where(line => line.Section == SaltParts.Section)]),
            layout.Resolved.Currency
        )
        {
            Cutting = cuts,
        };
    }
}
