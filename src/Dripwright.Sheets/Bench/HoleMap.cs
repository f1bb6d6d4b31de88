using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Every hole: each piece of pipe drawn with its marks and listed, and the holes in the pots.</summary>
public static class HoleMap
{
    /// <summary>Most holes that are listed on paper; a longer list is read from holes.csv.</summary>
    internal const int MostListed = 900;

    private const string Title = "Hole map";

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
            flow.Paragraph("No hole is drilled in any pipe of this rig.");
        }
        else
        {
            flow.Paragraph(
                "Lay one tape along the piece and mark every hole from its left end: single steps would add up their "
                    + "errors. Left is on your left when you stand in front of the row. All holes of a piece lie in one "
                    + "straight line along the pipe: draw that line first."
            );
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
        if (
            plan.Parts.Holes.Any(h => h.Tool.StartsWith("hole saw", StringComparison.Ordinal))
            || plan.Parts.PotHoles.Count > 0
        )
        {
            flow.Caution(
                "A hole saw grabs. Clamp the pipe, or lay it in a notched board; start slowly, wear goggles, no gloves "
                    + "near the turning saw. Take the burr off every hole: chips block emitters."
            );
            flow.Space(2);
        }
    }

    private static Table Tools(Plan plan, Wording words)
    {
        var table = new Table(new("Tool"), new("Hole", Align.Decimal), new("Where"), new("Holes", Align.Right));
        foreach (var group in plan.Parts.Holes.GroupBy(h => (h.Tool, h.Diameter, Use: UseOf(plan, h), h.Face)))
        {
            table.Row(
                Wording.Sentence(group.Key.Tool),
                words.Size(group.Key.Diameter),
                group.Key.Face.Contains(' ')
                    ? $"{group.Key.Use}, {group.Key.Face}"
                    : $"{group.Key.Use}, {group.Key.Face} of the pipe",
                Wording.Count(group.Count())
            );
        }

        foreach (var hole in plan.Parts.PotHoles)
        {
            table.Row(
                Wording.Sentence(hole.Tool),
                words.Size(hole.Diameter),
                $"in the pots: {Wording.Sentence(PotOf(plan, hole)?.Name ?? hole.Pot)}",
                Wording.Count(hole.Count)
            );
        }

        return table;
    }

    private static string UseOf(Plan plan, HoleMark hole) =>
        plan.Layout.Runs.First(r => r.Label == hole.Run).Service switch
        {
            RunService.Drain => "drains",
            RunService.Feed => "feed lines",
            _ => "header",
        };

    private static PotType? PotOf(Plan plan, PotHole hole) =>
        plan.Layout.Rows.Select(r => r.Pot).FirstOrDefault(pot => pot.Key == hole.Pot);

    private static void Piece(Flow flow, HolePattern pattern, Wording words, bool listed)
    {
        var piece = pattern.First;
        var strips = PipeStrip.Of(piece, words);
        var heading =
            pattern.Count == 1
                ? $"Piece {pattern.Labels}"
                : $"Make {Wording.Count(pattern.Count)} alike: {pattern.Labels}";
        var about =
            $"{Wording.Sentence(piece.Run.Pipe.Name)}, {pattern.Use}. Cut length {words.MarkWithUnit(piece.Piece.Length)}"
            + (words.Us ? $" ({Wording.Millimetres(piece.Piece.Length)})" : "")
            + $", {Wording.Counted(piece.Marks.Count, "hole")}. Drawn at {strips[0].ScaleIn(flow.Width)} along, thickness not "
            + "to scale."
            + (piece.Run.Row > 0 ? "" : " Its left end is the one nearer the pump.")
            + (
                pattern.SamePots ? "" : $" Pot numbers are those of {piece.Piece.Label}; the other pieces serve others."
            );
        flow.Titled(heading, about, strips[0].Height, strips[0].Draw);
        foreach (var strip in strips.Skip(1))
        {
            flow.Figure(strip.Height, strip.Draw);
        }

        if (!listed)
        {
            flow.Paragraph("The list of these holes is too long for paper: it stands in holes.csv.");
            return;
        }

        flow.Table(HoleTable(piece, words));
    }

    private static Table HoleTable(DrilledPiece piece, Wording words)
    {
        List<Column> columns =
        [
            new("Hole", Align.Middle),
            new("Pot", Align.Middle),
            new("From left end", Align.Decimal),
        ];
        if (words.Us)
        {
            columns.Add(new("Same in mm", Align.Decimal));
        }

        columns.AddRange([new("Step", Align.Decimal), new("Tool"), new("Face"), new("Done", Align.Tick)]);
        var table = new Table(columns);
        foreach (var mark in piece.Marks)
        {
            List<string> cells =
            [
                Wording.Count(mark.Number),
                mark.Pot > 0 ? Wording.Count(mark.Pot) : "none",
                words.MarkWithUnit(mark.FromEnd),
            ];
            if (words.Us)
            {
                cells.Add(QuantityWords.Number(mark.FromEnd * 1000, "0.0"));
            }

            cells.AddRange([words.MarkWithUnit(mark.Step), Wording.Sentence(mark.Tool), mark.Face, ""]);
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
                    $"{Wording.Counted(hole.Count, "pot")}: {Wording.Sentence(pot.Name)}",
                    "",
                    PotHoleFigure.Height,
                    box => PotHoleFigure.Draw(box, pot, hole, words)
                );
            }
        }
    }
}
