using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>
/// What all sheets of a pack share. Finishing gives each draft its frame, its title block (fields after ISO 7200, from
/// memory) and its number.
/// </summary>
/// <param name="Garden">Whose garden.</param>
/// <param name="Rig">Which rig.</param>
/// <param name="Revision">Revision as the caller words it.</param>
/// <param name="Date">Date as the caller words it; there is no clock here.</param>
/// <param name="Units">Units as the title block says them, such as "mm" or "inches".</param>
public sealed record SheetSet(string Garden, string Rig, string Revision, string Date, string Units)
{
    /// <summary>[mm] Height of the title block.</summary>
    public const double TitleBlockHeight = 18;

    // The program needs no label: its name says what it is.
    private const string Program = "";

    /// <summary>Where a draft may draw: within the frame and above the title block, with a margin of 4 mm.</summary>
    public static Box Room(Paper paper) => paper.Frame.CutBottom(TitleBlockHeight).Remainder.Inset(4);

    /// <summary>The finished sheets, numbered in order.</summary>
    public IReadOnlyList<Sheet> Finish(IReadOnlyList<SheetDraft> drafts) =>
        [.. drafts.Select((draft, i) => Finish(draft, i + 1, drafts.Count))];

    private Sheet Finish(SheetDraft draft, int number, int count)
    {
        var frame = new Group([new Rectangle(draft.Paper.Frame, Pen.Built), TitleBlock(draft, number, count)])
        {
            Class = "frame",
        };
        return new(draft.Paper, draft.Title, [.. draft.Elements, frame]) { Description = draft.Description };
    }

    private Group TitleBlock(SheetDraft draft, int number, int count)
    {
        var block = draft.Paper.Frame.CutBottom(TitleBlockHeight).Strip;
        var (upper, lower) = block.CutTop(TitleBlockHeight / 2);
        var page = Words.Of("sheet.block.page", number, count);
        var elements = new List<Element>
        {
            new Line(block.TopLeft, new(block.Right, block.Y), Pen.Built),
            new Line(lower.TopLeft, new(lower.Right, lower.Y), Pen.Thin),
        };
        var title = Words.Of("sheet.block.title");
        Row(
            elements,
            upper,
            title,
            (title, draft.Title, 4),
            (Words.Of("sheet.block.rig"), Rig, 2.6),
            (Words.Of("sheet.block.garden"), Garden, 2.2),
            (Words.Of("sheet.block.sheet"), page, 1.4)
        );
        var cells = Row(
            elements,
            lower,
            Program,
            (Words.Of("sheet.block.scale"), draft.Scale?.Words ?? Words.Of("sheet.scale.none"), 2.3),
            (Words.Of("sheet.block.units"), Units, 1.3),
            (Words.Of("sheet.block.paper"), draft.Paper.Name, 1.1),
            (Words.Of("sheet.block.views"), "", draft.Projection is null ? 0 : 1.3),
            (Words.Of("sheet.block.revision"), Revision, 1.6),
            (Words.Of("sheet.block.date"), Date, 1.6),
            (Program, "Dripwright", 1.5)
        );
        if (draft.Projection is { } projection)
        {
            elements.Add(ProjectionSymbol.Draw(cells[3].Centre.Move(1.5, 0.8), projection));
        }

        return new(elements) { Class = "title-block", Title = Words.Of("sheet.block.said") };
    }

    private static List<Box> Row(
        List<Element> elements,
        Box row,
        string strong,
        params (string Label, string Value, double Share)[] cells
    )
    {
        var shown = cells.Where(cell => cell.Share > 0).ToList();
        var sum = shown.Sum(cell => cell.Share);
        var boxes = new List<Box>();
        var x = row.X;
        foreach (var (label, value, share) in shown)
        {
            var box = new Box(x, row.Y, row.Width * share / sum, row.Height);
            boxes.Add(box);
            if (x > row.X)
            {
                elements.Add(new Line(box.TopLeft, new(box.X, box.Bottom), Pen.Thin));
            }

            elements.Add(new Text(label, new(box.X + 1.5, box.Y + 3), TextStyle.Small with { Size = 2.2 }));
            var style = label == strong ? TextStyle.Body.Bold : TextStyle.Note;
            elements.Add(Fitted(value, new(box.X + 1.5, box.Bottom - 1.8), box.Width - 3, style));
            x = box.Right;
        }

        return boxes;
    }

    /// <summary>Set smaller, down to 1.6 mm, before it is shortened.</summary>
    private static Text Fitted(string text, Point at, double width, TextStyle style)
    {
        var fitted = TextMeasure.Fitted(text, width, style, 1.6);
        return new(TextMeasure.Shorten(text, width + 1e-6, fitted), at, fitted);
    }
}
