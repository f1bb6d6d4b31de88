using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>The sheet with the rig from above: rows, pots, pipes, reservoir, and the dimensions to set it out.</summary>
public static class PlanView
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
        var view = Choose(plan, room);
        var picture = new PlanPicture(plan, view);
        Element[] elements =
        [
            .. picture.Draw(texts: true),
            .. new PlanDimensions(plan, view).Draw(),
            .. new PlanLabels(plan, view).Draw(),
            .. SheetNotes.Draw(
                strip,
                view.Scale,
                plan.Rig.Units,
                [.. Legend, .. plan.Layout.Wires.Count > 0 ? WireLegend : []],
                Notes(plan)
            ),
        ];
        return
        [
            new SheetDraft(sheet, Words.Of("sheet.plan.title"), elements)
            {
                Scale = view.Scale,
                Projection = Scales.ProjectionOf(plan.Rig.Units),
                Description = Words.Of("sheet.plan.said", Wording.Counted("sheet.count.row", plan.Layout.Rows.Count)),
            },
        ];
    }

    /// <summary>The rig from above, drawn as large as a box allows, without dimensions.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="box">Room on paper.</param>
    public static Group Picture(Plan plan, Box box)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (extent, room) = (PlanPicture.ExtentOf(plan.Layout), box.Inset(3));
        // A picture without dimensions needs no standard scale.
        var smaller = Math.Max(extent.Width / room.Width, extent.Height / room.Height) * 1000;
        var view = View.At(extent, room, new Scale(smaller, Words.Of("sheet.scale.none")));
        return new([.. new PlanPicture(plan, view).Draw(texts: false)])
        {
            Class = "plan-picture",
            Title = Words.Of("sheet.plan.picture"),
        };
    }

    /// <summary>[mm] Height that the picture takes at a width, within what a cover has room for.</summary>
    internal static double PictureHeight(Plan plan, double width)
    {
        var extent = PlanPicture.ExtentOf(plan.Layout);
        return Math.Clamp(((width - 6) * extent.Height / extent.Width) + 8, 20, 60);
    }

    private static LegendEntry[] Legend =>
        [
            new(Words.Of("sheet.legend.feed"), Pen.Water),
            new(Words.Of("sheet.legend.drain"), Pen.Return),
            new(Words.Of("sheet.legend.planted"), Pen.Plant, new(DrawnRole.Plant, FillPattern.Tint)),
        ];

    private static LegendEntry[] WireLegend => [new(Words.Of("sheet.legend.wire"), WirePicture.Over)];

    private static List<string> Notes(Plan plan)
    {
        var words = new Wording(plan.Rig.Units);
        var first = plan.Layout.Rows[0];
        List<string> notes = [Words.Of("sheet.plan.way", words.Length(first.Spec.Aisle))];
        if (plan.Layout.Rows.Count <= 3)
        {
            notes.AddRange(plan.Layout.Rows.Select(CropSpans.Sentence));
        }

        return notes;
    }

    private static View Choose(Plan plan, Box room)
    {
        var extent = PlanPicture.ExtentOf(plan.Layout);
        var scales = Scales.Of(plan.Rig.Units);
        foreach (var scale in scales)
        {
            var margins = PlanDimensions.Margins(plan, scale);
            var box = room.Inset(margins.Left, margins.Top, margins.Right, margins.Bottom);
            if (scale.OnPaper(extent.Width) <= box.Width && scale.OnPaper(extent.Height) <= box.Height)
            {
                return View.At(extent, box, scale);
            }
        }

        return View.At(extent, room, scales[^1]);
    }
}
