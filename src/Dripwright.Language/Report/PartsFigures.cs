using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Layout;

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
                Words.Count("count.items", toBuy.Count),
                Words.Count("figures.parts.packs", toBuy.Sum(line => line.Packs))
            ),
            Cost(plan),
        ];
        var stocks = parts.Cuts.Sum(cut => cut.Stocks.Count);
        if (stocks > 0)
        {
            var pieces = parts.Cuts.Sum(cut => cut.Stocks.Sum(stock => stock.Pieces.Count));
            var proven = parts.Cuts.All(cut => cut.ProvenOptimal)
                ? Words.Of("figures.parts.cut.proven")
                : Words.Of("figures.parts.cut.unproven");
            var waste = parts.Cuts.Sum(cut => cut.Waste);
            figures.Add(
                new(
                    Words.Of("figures.parts.cut"),
                    Words.Count("count.pieces", pieces),
                    Words.Of(
                        stocks == 1 ? "figures.parts.cut.stock.one" : "figures.parts.cut.stock.many",
                        stocks,
                        proven,
                        words.Length(waste)
                    )
                )
            );
        }

        figures.AddRange(
            parts.CutTroubles.Select(trouble => new KeyFigure(Words.Of("figures.parts.uncut"), told.Of(trouble.What)))
        );
        var runs = plan.Layout.Runs.ToList();
        var emitters = runs.Sum(run => run.Holes.Count(hole => hole.Use == HoleUse.Emitter));
        var outlets = runs.Sum(run => run.Holes.Count(hole => hole.Use == HoleUse.PotOutlet));
        figures.Add(
            new(
                Words.Of("figures.parts.drill"),
                Words.Count("figures.parts.holes", emitters + outlets + parts.PotHoles.Sum(hole => hole.Count)),
                Words.Of("figures.parts.drill.remark", emitters, outlets, parts.PotHoles.Sum(hole => hole.Count))
            )
        );
        return new(FigureSubject.Parts, Words.Of("figures.parts.heading"), figures);
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
        string Money(decimal sum) => sum.ToString("0.00", CultureInfo.InvariantCulture) + currency;
        string[] remarks =
        [
            plan.Parts.NutrientsCost is { LinesPriced: > 0, Known: var salts }
                ? Words.Of("figures.parts.cost.nutrients", Money(salts))
                : "",
            cost.AnyInvented ? Words.Of("figures.parts.cost.made-up") : "",
            cost.LinesUnpriced == 0
                ? Words.Of("figures.parts.cost.all-priced")
                : Words.Count("figures.parts.cost.unpriced", cost.LinesUnpriced),
        ];
        return new(
            Words.Of("figures.parts.cost.known"),
            Money(cost.Known),
            string.Join("; ", remarks.Where(remark => remark.Length > 0))
        );
    }
}
