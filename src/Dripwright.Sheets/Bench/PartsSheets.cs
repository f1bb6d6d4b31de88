using Dripwright.Engine;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Everything to have, by the shelf where a shop keeps it, with what is often forgotten and what it costs.</summary>
public static class PartsSheets
{
    private const string Title = "Parts list";

    /// <summary>The sheets.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var words = new Wording(plan.Rig.Units);
        var flow = new Flow(paper.Portrait, Title).Heading(Title).Paragraph(Sum(plan.Parts));
        foreach (var trouble in plan.Parts.CutTroubles)
        {
            flow.Caution(Wording.Sentence(trouble)).Space(1);
        }

        flow.Table(Shelves(plan.Parts, words));
        flow.Heading("What it costs").Paragraph(Cost(plan.Parts));
        if (plan.Parts.Forgotten.Count > 0)
        {
            flow.Heading("Often forgotten")
                .Paragraph("Look at these before you leave the house.")
                .Table(Forgotten(plan));
        }

        return flow.Build();
    }

    private static string Sum(PartsPlan parts)
    {
        var buy = parts.Lines.Count(l => l.Buy > 0);
        return buy == 0
            ? "You have everything: nothing is to be bought."
            : $"{Wording.Counted(buy, "kind")} of part to buy. Need is what the rig takes, spare what you wanted kept, have what "
                + "you said lies at home. Buy is the rest in whole packs.";
    }

    private static Table Shelves(PartsPlan parts, Wording words)
    {
        var priced = parts.Lines.Any(l => l.Price is not null);
        List<Column> columns =
        [
            new("Got", Align.Tick),
            new("Part"),
            new("For, and what to mind"),
            new("Need", Align.Right),
            new("Spare", Align.Right),
            new("Have", Align.Right),
            new("Buy", Align.Right),
        ];
        if (priced)
        {
            columns.Add(new("Price", Align.Decimal));
        }

        var table = new Table(columns);
        foreach (var shelf in parts.Lines.GroupBy(l => l.Section))
        {
            table.Group(Large(shelf.Key));
            foreach (var line in shelf)
            {
                List<string> cells =
                [
                    "",
                    Wording.Sentence(line.Name)
                        + (line.EachLength > 0 ? $", {words.Length(line.EachLength)} long" : ""),
                    Wording.Sentence(line.Note.Length == 0 ? line.Where : $"{line.Where}. {Large(line.Note)}"),
                    Wording.Count(line.Needed),
                    Wording.Count(line.Spares),
                    Wording.Count(line.OnHand),
                    Bought(line),
                ];
                if (priced)
                {
                    cells.Add(PriceOf(line));
                }

                table.Row(cells);
            }
        }

        return table;
    }

    private static string Bought(PartLine line) =>
        IsPrinted(line) ? $"print\u00a0{Wording.Count(line.Buy)}"
        : line.PackSize > 1 && line.Buy > 0
            ? $"{Wording.Count(line.Buy)} ({Wording.Count(line.Packs)}\u00a0×\u00a0{Wording.Count(line.PackSize)})"
        : Wording.Count(line.Buy);

    /// <summary>Joints are made, not bought: what they cost is their filament.</summary>
    private static bool IsPrinted(PartLine line) => line is { Section: "printed", Price: 0, Buy: > 0 };

    private static string PriceOf(PartLine line) =>
        line.Price is not { } price || IsPrinted(line)
            ? ""
            : QuantityWords.Number((double)price, "0.00") + (line.InventedPrice ? "\u00a0?" : "");

    private static string Cost(PartsPlan parts)
    {
        var cost = parts.Cost;
        var lines = cost.LinesPriced + cost.LinesUnpriced;
        if (lines == 0)
        {
            return "Nothing is to be bought.";
        }

        if (cost.LinesPriced == 0)
        {
            return "No part has a price yet. Write prices into your own catalogue and the sum stands here.";
        }

        var currency = parts.Currency.Length == 0 ? "" : "\u00a0" + parts.Currency;
        var share = Wording.Percent((double)cost.LinesUnpriced / lines);
        return $"{QuantityWords.Number((double)cost.Known, "0.00")}{currency} for the "
            + $"{Wording.Count(cost.LinesPriced)} of {Wording.Counted(lines, "line")} that have a price; "
            + $"{Wording.Count(cost.LinesUnpriced)} ({share}) have none and come on top."
            + (
                cost.AnyInvented
                    ? " Prices with a question mark are made-up typical ones, no shop's: put your own into your catalogue."
                    : ""
            );
    }

    private static Table Forgotten(Plan plan)
    {
        var table = new Table(new("Got", Align.Tick), new("What"), new("Why, and which size"));
        foreach (var item in plan.Parts.Forgotten)
        {
            table.Row("", Wording.Sentence(item.Name), Wording.Sentence(item.Why));
        }

        return table;
    }

    private static string Large(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
