using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Units;

namespace Dripwright.Language.Report;

/// <summary>Key figures of what is bought, cut and drilled.</summary>
internal static class PartsFigures
{
    public static KeyFigureGroup Of(Plan plan, PlanWords told)
    {
        var words = told.Quantities;
        var parts = plan.Parts;
        var toBuy = parts.Lines.Where(line => line.Buy > 0).ToList();
        List<KeyFigure> figures =
        [
            new(
                "To buy",
                QuantityWords.Counted(toBuy.Count, "line", "lines"),
                $"{QuantityWords.Counted(toBuy.Sum(line => line.Packs), "pack or piece", "packs and pieces")}, spares included"
            ),
            Cost(plan),
        ];
        var stocks = parts.Cuts.Sum(cut => cut.Stocks.Count);
        if (stocks > 0)
        {
            var pieces = parts.Cuts.Sum(cut => cut.Stocks.Sum(stock => stock.Pieces.Count));
            var proven = parts.Cuts.All(cut => cut.ProvenOptimal) ? "proven least" : "not proven least";
            var waste = parts.Cuts.Sum(cut => cut.Waste);
            figures.Add(
                new(
                    "To cut",
                    QuantityWords.Counted(pieces, "piece", "pieces"),
                    $"from {QuantityWords.Counted(stocks, "length", "lengths")} of stock ({proven}), {words.Length(waste)} of waste"
                )
            );
        }

        figures.AddRange(parts.CutTroubles.Select(trouble => new KeyFigure("Cannot be cut", told.Of(trouble.What))));
        var runs = plan.Layout.Runs.ToList();
        var emitters = runs.Sum(run => run.Holes.Count(hole => hole.Use == HoleUse.Emitter));
        var outlets = runs.Sum(run => run.Holes.Count(hole => hole.Use == HoleUse.PotOutlet));
        figures.Add(
            new(
                "To drill",
                QuantityWords.Counted(emitters + outlets + parts.PotHoles.Sum(hole => hole.Count), "hole", "holes"),
                $"{QuantityWords.Count(emitters)} in feed lines, {QuantityWords.Count(outlets)} in drains, "
                    + $"{QuantityWords.Count(parts.PotHoles.Sum(hole => hole.Count))} in pots"
            )
        );
        return new(FigureSubject.Parts, "Parts", figures);
    }

    private static KeyFigure Cost(Plan plan)
    {
        var cost = plan.Parts.Cost;
        if (cost.LinesPriced == 0)
        {
            return new("Cost", "not known", "no part to buy has a price; give yours in a catalogue file");
        }

        var currency = plan.Parts.Currency.Length > 0 ? " " + plan.Parts.Currency : "";
        var typical = cost.AnyInvented ? "made-up typical prices among them; " : "";
        var unpriced =
            cost.LinesUnpriced == 0
                ? "every line has a price"
                : $"{QuantityWords.Counted(cost.LinesUnpriced, "line has", "lines have")} no price and is not in it";
        var nutrients = plan.Parts.NutrientsCost is { LinesPriced: > 0, Known: var salts }
            ? $"{salts.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture)}{currency} of it for the nutrients of the first fill; "
            : "";
        return new(
            "Known cost",
            cost.Known.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture) + currency,
            nutrients
                + typical
                + (cost.LinesUnpriced > 1 ? unpriced.Replace("is not", "are not", StringComparison.Ordinal) : unpriced)
        );
    }
}
