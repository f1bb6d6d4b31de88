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
                Words.Of("figures.parts.buy"),
                SummaryWords.Several("figures.parts.buy.items", toBuy.Count),
                SummaryWords.Several("figures.parts.buy.packs", toBuy.Sum(line => line.Packs))
            ),
            Cost(plan),
        ];
        var stocks = parts.Cuts.Sum(cut => cut.Stocks.Count);
        if (stocks > 0)
        {
            var pieces = parts.Cuts.Sum(cut => cut.Stocks.Sum(stock => stock.Pieces.Count));
            var proven = parts.Cuts.All(cut => cut.ProvenOptimal)
                ? Words.Of("figures.parts.proven")
                : Words.Of("figures.parts.not-proven");
            var waste = parts.Cuts.Sum(cut => cut.Waste);
            figures.Add(
                new(
                    Words.Of("figures.parts.cut"),
                    SummaryWords.Several("figures.parts.pieces", pieces),
                    Words.Of(
                        stocks == 1 ? "figures.parts.stock.one" : "figures.parts.stock.many",
                        QuantityWords.Count(stocks),
                        proven,
                        words.Length(waste)
                    )
                )
            );
        }

        figures.AddRange(
            parts.CutTroubles.Select(trouble => new KeyFigure(
                Words.Of("figures.parts.cannot-cut"),
                told.Of(trouble.What)
            ))
        );
        var runs = plan.Layout.Runs.ToList();
        var emitters = runs.Sum(run => run.Holes.Count(hole => hole.Use == HoleUse.Emitter));
        var outlets = runs.Sum(run => run.Holes.Count(hole => hole.Use == HoleUse.PotOutlet));
        figures.Add(
            new(
                Words.Of("figures.parts.drill"),
                SummaryWords.Several(
                    "figures.parts.holes",
                    emitters + outlets + parts.PotHoles.Sum(hole => hole.Count)
                ),
                Words.Of(
                    "figures.parts.holes.remark",
                    QuantityWords.Count(emitters),
                    QuantityWords.Count(outlets),
                    QuantityWords.Count(parts.PotHoles.Sum(hole => hole.Count))
                )
            )
        );
        return new(FigureSubject.Parts, Words.Of("stage.parts"), figures);
    }

    private static KeyFigure Cost(Plan plan)
    {
        var cost = plan.Parts.Cost;
        if (cost.LinesPriced == 0)
        {
            return new(
                Words.Of("figures.parts.cost"),
                Words.Of("figures.parts.cost.unknown"),
                Words.Of("figures.parts.cost.unknown.remark")
            );
        }

        var currency = plan.Parts.Currency.Length > 0 ? " " + plan.Parts.Currency : "";
        var typical = cost.AnyInvented ? Words.Of("figures.parts.cost.typical") : "";
        var unpriced =
            cost.LinesUnpriced == 0
                ? Words.Of("figures.parts.cost.all")
                : SummaryWords.Several("figures.parts.cost.unpriced", cost.LinesUnpriced);
        var nutrients = plan.Parts.NutrientsCost is { LinesPriced: > 0, Known: var salts }
            ? Words.Of(
                "figures.parts.cost.nutrients",
                salts.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture) + currency
            )
            : "";
        return new(
            Words.Of("figures.parts.cost.known"),
            cost.Known.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture) + currency,
            string.Join("; ", new[] { nutrients, typical, unpriced }.Where(text => text.Length > 0))
        );
    }
}
