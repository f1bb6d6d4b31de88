using Dripwright.Engine;
using Dripwright.Engine.Rigs;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>The sheet with the rig from the reservoir's end: across the rows, with all heights.</summary>
public static class EndView
{
    /// <summary>Draws the sheet, always with the long edge of the paper along the bottom.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the paper.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var sheet = paper.Landscape;
        var (strip, room) = SheetSet.Room(sheet).CutBottom(SheetNotes.Height);
        var margins = EndPicture.Margins;
        var view = Scales.Fit(
            EndPicture.ExtentOf(plan),
            room.Inset(margins.Left, margins.Top, margins.Right, margins.Bottom),
            plan.Rig.Units
        );
        var left = plan.Rig.Reservoir.At == RowEnd.Left;
        Element[] elements =
        [
            .. new EndPicture(plan, view).Draw(),
            .. SheetNotes.Draw(
                strip,
                view.Scale,
                plan.Rig.Units,
                [new("feed, under pressure", Pen.Water), new("drain, water running back", Pen.Return)],
                [
                    $"Seen along the rows from their {(left ? "left" : "right")} end; the front of the room is on the {(left ? "right" : "left")}.",
                ]
            ),
        ];
        return
        [
            new SheetDraft(sheet, $"End view, from the {(left ? "left" : "right")}", elements)
            {
                Scale = view.Scale,
                Projection = Scales.ProjectionOf(plan.Rig.Units),
                Description =
                    "Across the rows from the reservoir's end, with the heights of stands, pots, pipes and water.",
            },
        ];
    }
}
