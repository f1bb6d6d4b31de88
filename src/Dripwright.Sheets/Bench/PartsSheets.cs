using Dripwright.Engine;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Everything to have, by the section of a shop where it stands, with what is often forgotten and what it costs.</summary>
public static class PartsSheets
{
    private static string Title => Words.Of("bench.parts.title");

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
            flow.Caution(Wording.Sentence(words.Told.Of(trouble.What))).Space(1);
        }

        flow.Table(Shelves(plan.Parts, words));
        flow.Heading(Words.Of("bench.parts.cost")).Paragraph(Cost(plan.Parts));
        if (plan.Parts.Forgotten.Count > 0)
        {
            flow.Heading(Words.Of("bench.parts.forgotten"))
                .Paragraph(Words.Of("bench.parts.forgotten.how"))
                .Table(Forgotten(plan, words));
        }

        return flow.Build();
    }

    private static string Sum(PartsPlan parts)
    {
        var buy = parts.Lines.Count(l => l.Buy > 0);
        return buy == 0 ? Words.Of("bench.parts.nothing") : Words.Count("bench.parts.buy", buy);
    }

    private static Table Shelves(PartsPlan parts, Wording words)
    {
        var priced = parts.Lines.Any(l => l.Price is not null);
        List<Column> columns =
        [
            new(Words.Of("bench.parts.column.got"), Align.Tick),
            new(Words.Of("bench.parts.column.part")),
            new(Words.Of("bench.parts.column.for")),
            new(Words.Of("bench.parts.column.need"), Align.Right),
            new(Words.Of("bench.parts.column.spare"), Align.Right),
            new(Words.Of("bench.parts.column.have"), Align.Right),
            new(Words.Of("bench.parts.column.buy"), Align.Right),
        ];
        if (priced)
        {
            columns.Add(new(Words.Of("bench.parts.column.price"), Align.Decimal));
        }

        var table = new Table(columns);
        foreach (var section in parts.Lines.GroupBy(l => l.Section))
        {
            table.Group(words.Told.Of(section.First().SectionName));
            foreach (var line in section)
            {
                var name = Wording.Sentence(words.Told.Of(line.Name));
                var where = Wording.Sentence(words.Told.Of(line.Where));
                List<string> cells =
                [
                    "",
                    line.EachLength > 0 ? Words.Of("bench.parts.long", name, words.Length(line.EachLength)) : name,
                    line.Note.IsNone
                        ? where
                        : Words.Of(
                            "bench.parts.note",
                            where,
                            Wording.Capital(Wording.Sentence(words.Told.Of(line.Note)))
                        ),
                    Amount(line, line.Needed),
                    Amount(line, line.Spares),
                    Amount(line, line.OnHand),
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
        IsPrinted(line) ? Words.Of("bench.parts.print", line.Buy)
        : line.PackSize > 1 && line.Buy > 0 && (line.Unit.Length == 0 || line.Packs > 1)
            ? $"{Amount(line, line.Buy)} ({Wording.Count(line.Packs)}\u00a0×\u00a0{Wording.Count(line.PackSize)})"
        : Amount(line, line.Buy);

    // Salts are weighed and not counted.
    private static string Amount(PartLine line, int count) =>
        count > 0 && line.Unit.Length > 0 ? $"{Wording.Count(count)}\u00a0{line.Unit}" : Wording.Count(count);

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
            return Words.Of("bench.parts.free");
        }

        if (cost.LinesPriced == 0)
        {
            return Words.Of("bench.parts.unpriced");
        }

        var currency = parts.Currency.Length == 0 ? "" : "\u00a0" + parts.Currency;
        var share = Wording.Percent((double)cost.LinesUnpriced / lines);
        var known = Words.Of(
            "bench.parts.sum",
            QuantityWords.Number((double)cost.Known, "0.00") + currency,
            cost.LinesPriced,
            Words.Count("bench.parts.lines", lines),
            cost.LinesUnpriced,
            share
        );
        if (parts.NutrientsCost is { LinesPriced: > 0, Known: var salts })
        {
            known += " " + Words.Of("bench.parts.nutrients", QuantityWords.Number((double)salts, "0.00") + currency);
        }

        return cost.AnyInvented ? $"{known} {Words.Of("bench.parts.invented")}" : known;
    }

    private static Table Forgotten(Plan plan, Wording words)
    {
        var table = new Table(
            new(Words.Of("bench.parts.column.got"), Align.Tick),
            new(Words.Of("bench.parts.column.what")),
            new(Words.Of("bench.parts.column.why"))
        );
        foreach (var item in plan.Parts.Forgotten)
        {
            table.Row("", Wording.Sentence(words.Told.Of(item.Name)), Wording.Sentence(words.Told.Of(item.Why)));
        }

        return table;
    }
}
