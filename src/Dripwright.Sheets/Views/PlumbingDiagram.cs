using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>
/// Sheets with the plumbing, not to scale: all runs at a glance, then each run stretched out with every fitting, every cut
/// piece and its length.
/// </summary>
public static class PlumbingDiagram
{
    private const double Gap = 5;

    private static LegendEntry[] Legend =>
        [
            new(Words.Of("sheet.legend.feed"), Pen.Water),
            new(Words.Of("sheet.legend.drain"), Pen.Return),
            new(Words.Of("sheet.legend.vent"), Pen.Hidden),
        ];

    /// <summary>Draws the sheets, always with the long edge of the paper along the bottom.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the paper.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var sheet = paper.Landscape;
        var runs = plan.Layout.Runs.ToList();
        return
        [
            Overview(plan, sheet),
            .. Strips(
                plan,
                sheet,
                Words.Of("sheet.plumbing.title.feed"),
                runs.Where(r => r.Service is not (RunService.Drain or RunService.Return))
            ),
            .. Strips(
                plan,
                sheet,
                Words.Of("sheet.plumbing.title.drain"),
                runs.Where(r => r.Service is RunService.Drain or RunService.Return)
            ),
        ];
    }

    private static SheetDraft Overview(Plan plan, Paper sheet)
    {
        var (strip, room) = SheetSet.Room(sheet).CutBottom(SheetNotes.Height);
        Element[] elements =
        [
            .. new PlumbingOverview(plan, room.Inset(14, 16, 14, 12)).Draw(),
            .. SheetNotes.Told(strip, strip.X, Legend, [.. Notes(plan).Select(Wording.Sentence)]),
        ];
        return new(sheet, Words.Of("sheet.plumbing.title"), elements) { Description = Words.Of("sheet.plumbing.said") };
    }

    private static List<string> Notes(Plan plan)
    {
        var parts = plan.Layout.Parts;
        List<string> notes =
        [
            Words.Of("sheet.plumbing.pipes", parts.Line.Name, parts.Header.Name, parts.Drain.Name),
            parts.Strainer is { } strainer
                ? Words.Of("sheet.plumbing.strainer", strainer.Name)
                : Words.Of("sheet.plumbing.strainer.none"),
        ];
        if (plan.Layout.BreakHole is not null)
        {
            notes.Add(Words.Of("sheet.plumbing.siphon"));
        }

        if (plan.Layout.Rows.Count > PlumbingOverview.MostNamed)
        {
            notes.Add(Words.Of("sheet.plumbing.first-last"));
        }

        if (plan.Rig.Drain.Vent)
        {
            notes.Add(Words.Of("sheet.plumbing.vents"));
        }

        return notes;
    }

    private static IEnumerable<SheetDraft> Strips(Plan plan, Paper sheet, string title, IEnumerable<PipeRun> runs)
    {
        var room = SheetSet.Room(sheet);
        var strips = runs.GroupBy(RunStrip.Signature).SelectMany(g => new RunStrip(plan, [.. g]).Split(room)).ToList();
        List<Element> elements = [];
        var (x, y, tall) = (room.X, room.Y, 0.0);
        foreach (var strip in strips)
        {
            var width = Math.Min(strip.Width, room.Width);
            if (x > room.X && x + width > room.Right)
            {
                (x, y, tall) = (room.X, y + tall, 0);
            }

            var height = strip.Height(width);
            if (y + height > room.Bottom && elements.Count > 0)
            {
                yield return new(sheet, title, elements) { Description = Said(title) };
                elements = [];
                (x, y, tall) = (room.X, room.Y, 0);
            }

            elements.Add(strip.Draw(new(x, y, width, height)));
            x += width + Gap;
            tall = Math.Max(tall, height + 1);
        }

        if (elements.Count > 0)
        {
            yield return new(sheet, title, elements) { Description = Said(title) };
        }
    }

    private static string Said(string title) => Words.Of("sheet.plumbing.strips.said", title);
}
