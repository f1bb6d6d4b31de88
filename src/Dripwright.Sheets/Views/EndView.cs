using Dripwright.Engine;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
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
        var (view, band) = Choose(plan, room);
        var left = plan.Rig.Reservoir.At == RowEnd.Left;
        Element[] elements =
        [
            .. new EndPicture(plan, view, band).Draw(),
            .. SheetNotes.Draw(
                strip,
                view.Scale,
                plan.Rig.Units,
                [
                    new(Words.Of("sheet.legend.feed"), Pen.Water),
                    new(Words.Of("sheet.legend.drain"), Pen.Return),
                    .. band.Above > 0
                        ? new LegendEntry[] { new(Words.Of("sheet.legend.string"), WirePicture.String) }
                        : [],
                ],
                [
                    .. band.Broken ? new[] { Words.Of("sheet.end.broken") } : [],
                    Words.Of(left ? "sheet.end.seen.left" : "sheet.end.seen.right"),
                ]
            ),
        ];
        return
        [
            new SheetDraft(sheet, Words.Of(left ? "sheet.end.title.left" : "sheet.end.title.right"), elements)
            {
                Scale = view.Scale,
                Projection = Scales.ProjectionOf(plan.Rig.Units),
                Description = Words.Of("sheet.end.said"),
            },
        ];
    }

    /// <summary>The largest scale at which rows, wires and dimensions fit; height that is left over goes to the wires.</summary>
    private static (View View, WireBand Band) Choose(Plan plan, Box room)
    {
        var (extent, scales) = (EndPicture.ExtentOf(plan), Scales.Of(plan.Rig.Units));
        Box Within(Scale scale, double spare)
        {
            var margins = EndPicture.Margins(plan, scale, spare);
            return room.Inset(margins.Left, margins.Top, margins.Right, margins.Bottom);
        }

        bool Fits(Scale s) =>
            s.OnPaper(extent.Width) <= Within(s, 0).Width + 1e-9
            && s.OnPaper(extent.Height) <= Within(s, 0).Height + 1e-9;
        var scale = scales.FirstOrDefault(Fits) ?? scales[^1];
        var spare = Math.Max(0, Within(scale, 0).Height - scale.OnPaper(extent.Height));
        return (View.At(extent, Within(scale, spare), scale), EndPicture.BandOf(plan, scale, spare));
    }
}
