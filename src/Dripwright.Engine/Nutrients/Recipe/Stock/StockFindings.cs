using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>What is to be said of concentrates.</summary>
internal static class StockFindings
{
    private static readonly string[] s_weaker = [NutrientPaths.PartsOfFeed, NutrientPaths.StoreTemperature];

    public static IEnumerable<Finding> Of(StockJob job, IReadOnlyList<StockCan> cans)
    {
        foreach (var can in cans)
        {
            foreach (var finding in Dissolving(job, can).Concat(Falling(can)).Concat(Mixing(job, can)))
            {
                yield return finding;
            }
        }
    }

    private static IEnumerable<Finding> Dissolving(StockJob job, StockCan can)
    {
        var limit = RuleBook.Limit("stock-saturated");
        var cold = Measured.Temperature(job.Temperature);
        foreach (var salt in can.Saturations.Where(salt => salt.Share > limit))
        {
            yield return Judged.By(
                "stock-saturated",
                PlaceOf(can),
                s_weaker,
                Phrase.Of(
                    salt.Share > 1 ? "finding.stock-saturated.over.what" : "finding.stock-saturated.close.what",
                    cold,
                    salt.Solid
                ),
                Phrase.Of(Measured.Percent(salt.Share)),
                Limit.AtMost(Measured.Percent(limit)),
                Phrase.Of("finding.stock-saturated.remedy")
            );
        }
        foreach (var salt in can.Saturations.Where(salt => salt.Guessed && salt.Share > limit / 2))
        {
            yield return Judged.By(
                "solubility-guess",
                PlaceOf(can),
                s_weaker,
                Phrase.Of("finding.solubility-guess.what", cold, salt.Solid),
                Phrase.Of(Measured.Percent(salt.Share)),
                Limit.AtMost(Measured.Percent(limit)),
                Phrase.Of("finding.solubility-guess.remedy")
            );
        }
    }

    private static IEnumerable<Finding> Falling(StockCan can)
    {
        foreach (var solid in can.Precipitates.Where(solid => solid.SaturationIndex > 0))
        {
            yield return Judged.By(
                "stock-precipitates",
                PlaceOf(can),
                [NutrientPaths.PartsOfFeed, NutrientPaths.PureShare],
                Phrase.Of(
                    solid.Solid == Precipitate.Gypsum
                        ? "finding.stock-precipitates.gypsum.what"
                        : "finding.stock-precipitates.phosphate.what"
                ),
                Phrase.Of("finding.stock-precipitates.value", Measured.Number(Math.Pow(10, solid.SaturationIndex))),
                Limit.AtMost(Measured.Number(1)),
                Phrase.Of("finding.stock-precipitates.remedy")
            );
        }
    }

    private static IEnumerable<Finding> Mixing(StockJob job, StockCan can)
    {
        foreach (var line in can.Lines.Where(line => line.Salt.Part == StockPart.Neither))
        {
            yield return Judged.By(
                "stock-neither",
                PlaceOf(can),
                [NutrientPaths.Salts],
                Phrase.Of("finding.stock-neither.what", line.Salt.Name),
                Phrase.Plain(line.Salt.Name),
                Phrase.Of("finding.stock-neither.limit"),
                Phrase.Of("finding.stock-neither.remedy")
            );
        }
        var chelate = can.Lines.Any(line => line.Salt.Kind == SaltKind.Chelate);
        var acid = can.Lines.FirstOrDefault(line => line.Salt.Kind == SaltKind.Acid);
        if (chelate && acid is not null)
        {
            yield return Judged.By(
                "stock-chelate-acid",
                PlaceOf(can),
                [NutrientPaths.Mixing, NutrientPaths.Acid],
                Phrase.Of("finding.stock-chelate-acid.what"),
                Phrase.Of(
                    "finding.stock-chelate-acid.value",
                    Measured.GramsPerLitre(acid.Concentration),
                    acid.Salt.Name
                ),
                Phrase.Of("finding.stock-chelate-acid.limit"),
                Phrase.Of(job.TwoCans ? "finding.stock-chelate-acid.remedy" : "finding.stock-chelate-acid.one.remedy")
            );
        }
    }

    private static Place PlaceOf(StockCan can) => new(Phrase.Of("place.stock-tank", can.Name));
}
