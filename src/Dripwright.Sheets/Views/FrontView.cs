using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Sheets with rows from the front: one row for each kind of row in the rig file, long ones in several parts.</summary>
public static class FrontView
{
    /// <summary>[mm] Pots closer than this on paper cannot be read.</summary>
    private const double ReadablePitch = 3.9;

    /// <summary>Parts of a row that are drawn without leaving any out.</summary>
    private const int AllParts = 3;

    /// <summary>Draws the sheets, always with the long edge of the paper along the bottom.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the paper.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        return
        [
            .. plan.Layout.Rows.GroupBy(r => r.SpecIndex).SelectMany(alike => Draw(plan, [.. alike], paper.Landscape)),
        ];
    }

    private static IEnumerable<SheetDraft> Draw(Plan plan, IReadOnlyList<RowLayout> alike, Paper paper)
    {
        var row = alike[0];
        var (strip, room) = SheetSet.Room(paper).CutBottom(SheetNotes.Height);
        var extent = FrontPicture.ExtentOf(plan, row);
        var (scale, windows) = Windows(plan, row, extent, room);
        var name =
            alike.Count == 1
                ? Words.Of("sheet.front.title.row", Wording.Count(row.Number))
                : Words.Of("sheet.front.title.rows", Wording.Count(row.Number), Wording.Count(alike[^1].Number));
        for (var i = 0; i < windows.Count; i++)
        {
            var (from, to) = windows[i];
            var part = extent with { Left = from, Right = to };
            var spare = Within(room, FrontPicture.Margins(plan, row, scale)).Height - scale.OnPaper(extent.Height);
            var band = FrontPicture.BandOf(plan, row, scale, spare);
            var view = View.At(part, Within(room, FrontPicture.Margins(plan, row, scale, spare)), scale);
            var picture = new FrontPicture(plan, row, view, extent, part, band);
            Element[] elements =
            [
                .. picture.Draw(),
                .. SheetNotes.Draw(
                    strip,
                    scale,
                    plan.Rig.Units,
                    [.. Legend, .. band.Above > 0 ? WireLegend : []],
                    Notes(plan, row, windows, i)
                ),
            ];
            yield return new SheetDraft(
                paper,
                windows.Count == 1
                    ? name
                    : Words.Of("sheet.part-of", name, Wording.Count(i + 1), Wording.Count(windows.Count)),
                elements
            )
            {
                Scale = scale,
                Projection = Scales.ProjectionOf(plan.Rig.Units),
                Description = Words.Of("sheet.front.said", CropSpans.Sentence(row)),
            };
        }
    }

    private static LegendEntry[] Legend =>
        [
            new(Words.Of("sheet.legend.feed"), Pen.Water),
            new(Words.Of("sheet.legend.drain"), Pen.Return),
            new(Words.Of("sheet.legend.vent"), Pen.Hidden),
        ];

    private static LegendEntry[] WireLegend =>
        [
            new(Words.Of("sheet.legend.wire-loaded"), WirePicture.Wire),
            new(Words.Of("sheet.legend.string"), WirePicture.String),
        ];

    private static Box Within(Box room, Margins margins) =>
        room.Inset(margins.Left, margins.Top, margins.Right, margins.Bottom);

    private static List<string> Notes(
        Plan plan,
        RowLayout row,
        IReadOnlyList<(double From, double To)> windows,
        int part
    )
    {
        var words = new Wording(plan.Rig.Units);
        List<string> notes = [];
        if (part > 0 && windows[part].From - windows[part - 1].To > 1e-6)
        {
            var left = windows[part - 1].To - row.OriginX;
            var right = windows[part].From - row.OriginX;
            notes.Add(Words.Of("sheet.front.alike", words.Mark(left), words.Mark(right)));
        }

        var (from, to) = windows[part];
        var shown = row.Pots.Where(p => p.Base.X >= from && p.Base.X <= to).ToList();
        notes.Add(
            windows.Count == 1 ? Words.Of("sheet.front.pots.all")
            : shown.Count == 0 ? Words.Of("sheet.front.pots.none")
            : Words.Of(
                "sheet.front.pots.some",
                Wording.Count(shown[0].Number),
                Wording.Count(shown[^1].Number),
                words.Mark(shown[0].Station)
            )
        );
        if (row.Number == 1)
        {
            notes.Add(Words.Of("sheet.front.outlet"));
        }

        notes.Add(
            Words.Of(
                "sheet.front.modules",
                Wording.Counted("sheet.count.module", row.Modules),
                words.MarkWithUnit(row.Spec.ModuleLength)
            )
        );
        return notes;
    }

    private static (Scale Scale, IReadOnlyList<(double From, double To)> Windows) Windows(
        Plan plan,
        RowLayout row,
        Extent extent,
        Box room
    )
    {
        var scales = Scales.Of(plan.Rig.Units);
        var fits = scales.Where(s => Room(s).Height >= s.OnPaper(extent.Height)).ToList();
        var whole = fits.FirstOrDefault(s => Room(s).Width >= s.OnPaper(extent.Width)) ?? scales[^1];
        if (whole.OnPaper(row.Spec.Spacing) >= ReadablePitch || row.Pots.Count <= 2)
        {
            return (whole, [(extent.Left, extent.Right)]);
        }

        var scale = fits.LastOrDefault(s => s.OnPaper(row.Spec.Spacing) >= ReadablePitch) ?? whole;
        List<double> cuts = [extent.Left];
        var width = Room(scale).Width * scale.Denominator / 1000;
        while (extent.Right - cuts[^1] > width)
        {
            var most = cuts[^1] + width;
            // Cut at a module joint, where a builder finds the place again.
            var joint =
                row.OriginX + (Math.Floor((most - row.OriginX) / row.Spec.ModuleLength) * row.Spec.ModuleLength);
            cuts.Add(joint > cuts[^1] + (width / 3) ? joint : most);
        }

        cuts.Add(extent.Right);
        var windows = cuts.Zip(cuts.Skip(1), (a, b) => (a, b)).ToList();
        if (windows.Count <= AllParts)
        {
            return (scale, windows);
        }

        double[] wanted =
        [
            extent.Left,
            extent.Right,
            row.OriginX + row.DrainExit,
            .. row.FeedEntries.Select(e => row.OriginX + e),
        ];
        return (scale, [.. windows.Where(w => wanted.Any(x => x >= w.a && x <= w.b)).Take(6)]);

        Box Room(Scale s) => Within(room, FrontPicture.Margins(plan, row, s));
    }
}
