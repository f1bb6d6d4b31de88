using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Every hole: each piece of pipe drawn with its marks and listed, and the holes in the pots.</summary>
public static class HoleMap
{
    /// <summary>Most holes that are listed on paper; a longer list is read from holes.csv.</summary>
    internal const int MostListed = 900;

    private static string Title => Words.Of("bench.holes.title");

    /// <summary>The sheets. Pieces that are drilled alike are drawn once.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var words = new Wording(plan.Rig.Units);
        var patterns = HolePattern.Of(plan);
        var flow = new Flow(paper.Portrait, Title).Heading(Title);
        if (patterns.Count == 0)
        {
            flow.Paragraph(Words.Of("bench.holes.none"));
        }
        else
        {
            flow.Paragraph(Words.Of("bench.holes.how"));
            flow.Table(Tools(plan, words));
            Caution(flow, plan);
        }

        PotHoles(flow, plan, words);
        var listed = 0;
        foreach (var pattern in patterns)
        {
            listed += pattern.First.Marks.Count;
            Piece(flow, pattern, words, listed <= MostListed);
        }

        return flow.Build();
    }

    private static void Caution(Flow flow, Plan plan)
    {
        if (plan.Parts.Holes.Any(hole => hole.IsSawn) || plan.Parts.PotHoles.Count > 0)
        {
            flow.Caution(Words.Of("bench.holes.caution"));
            flow.Space(2);
        }
    }

    private static Table Tools(Plan plan, Wording words)
    {
        var table = new Table(
            new(Words.Of("bench.holes.column.tool")),
            new(Words.Of("bench.holes.column.size"), Align.Decimal),
            new(Words.Of("bench.holes.column.where")),
            new(Words.Of("bench.holes.column.count"), Align.Right)
        );
        foreach (var group in plan.Parts.Holes.GroupBy(h => (h.Tool, h.Diameter, Use: UseOf(plan, h), h.Face)))
        {
            table.Row(
                Wording.Sentence(words.Told.Of(group.Key.Tool)),
                words.Size(group.Key.Diameter),
                group.Key.Face == HoleFace.SideOverWater
                    ? $"{group.Key.Use}, {BenchWords.FaceOf(group.Key.Face)}"
                    : Words.Of("bench.holes.face", group.Key.Use, BenchWords.FaceOf(group.Key.Face)),
                Wording.Count(group.Count())
            );
        }

        foreach (var hole in plan.Parts.PotHoles)
        {
            table.Row(
                Wording.Sentence(words.Told.Of(hole.Tool)),
                words.Size(hole.Diameter),
                Words.Of("bench.holes.inpots", Wording.Sentence(PotOf(plan, hole)?.Name ?? hole.Pot)),
                Wording.Count(hole.Count)
            );
        }

        return table;
    }

    private static string UseOf(Plan plan, HoleMark hole) =>
        plan.Layout.Runs.First(r => r.Label == hole.Run).Service switch
        {
            RunService.Drain => Words.Of("bench.holes.use.drains"),
            RunService.Feed => Words.Of("bench.holes.use.lines"),
            _ => Words.Of("bench.use.header"),
        };

    private static PotType? PotOf(Plan plan, PotHole hole) =>
        plan.Layout.Rows.Select(r => r.Pot).FirstOrDefault(pot => pot.Key == hole.Pot);

    private static void Piece(Flow flow, HolePattern pattern, Wording words, bool listed)
    {
        var piece = pattern.First;
        var strips = PipeStrip.Of(piece, words);
        var heading =
            pattern.Count == 1
                ? Words.Of("bench.holes.piece", pattern.Labels)
                : Words.Of("bench.holes.make", pattern.Count, pattern.Labels);
        var length =
            words.MarkWithUnit(piece.Piece.Length) + (words.Us ? $" ({Wording.Millimetres(piece.Piece.Length)})" : "");
        List<string> about =
        [
            Words.Of(
                "bench.holes.about",
                Wording.Sentence(piece.Run.Pipe.Name),
                pattern.Use,
                length,
                Words.Count("bench.holes.counted", piece.Marks.Count)
            ),
            Words.Of("bench.holes.scale", strips[0].ScaleIn(flow.Width)),
        ];
        if (piece.Run.Row <= 0)
        {
            about.Add(Words.Of("bench.holes.left"));
        }

        if (!pattern.SamePots)
        {
            about.Add(Words.Of("bench.holes.others", piece.Piece.Label));
        }

        flow.Titled(heading, string.Join(' ', about), strips[0].Height, strips[0].Draw);
        foreach (var strip in strips.Skip(1))
        {
            flow.Figure(strip.Height, strip.Draw);
        }

        if (!listed)
        {
            flow.Paragraph(Words.Of("bench.holes.long"));
            return;
        }

        flow.Table(HoleTable(piece, words));
    }

    private static Table HoleTable(DrilledPiece piece, Wording words)
    {
        List<Column> columns =
        [
            new(Words.Of("bench.holes.column.hole"), Align.Middle),
            new(Words.Of("bench.holes.column.pot"), Align.Middle),
            new(Words.Of("bench.holes.column.from"), Align.Decimal),
        ];
        if (words.Us)
        {
            columns.Add(new(Words.Of("bench.holes.column.mm"), Align.Decimal));
        }

        columns.AddRange([
            new(Words.Of("bench.holes.column.step"), Align.Decimal),
            new(Words.Of("bench.holes.column.tool")),
            new(Words.Of("bench.holes.column.face")),
            new(Words.Of("bench.holes.column.done"), Align.Tick),
        ]);
        var table = new Table(columns);
        foreach (var mark in piece.Marks)
        {
            List<string> cells =
            [
                Wording.Count(mark.Number),
                mark.Pot > 0 ? Wording.Count(mark.Pot) : Words.Of("bench.holes.nopot"),
                words.MarkWithUnit(mark.FromEnd),
            ];
            if (words.Us)
            {
                cells.Add(QuantityWords.Number(mark.FromEnd * 1000, "0.0"));
            }

            cells.AddRange([
                words.MarkWithUnit(mark.Step),
                Wording.Sentence(words.Told.Of(mark.Tool)),
                BenchWords.FaceOf(mark.Face),
                "",
            ]);
            table.Row(cells);
        }

        return table;
    }

    private static void PotHoles(Flow flow, Plan plan, Wording words)
    {
        foreach (var hole in plan.Parts.PotHoles)
        {
            if (PotOf(plan, hole) is { } pot)
            {
                flow.Titled(
                    $"{Words.Count("bench.pots", hole.Count)}: {Wording.Sentence(pot.Name)}",
                    "",
                    PotHoleFigure.Height,
                    box => PotHoleFigure.Draw(box, pot, hole, words)
                );
            }
        }
    }
}
