using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Findings;
using static Dripwright.Engine.Findings.NutrientRules;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>What is to be said of concentrates.</summary>
internal static class StockFindings
{
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
        var limit = Limit("stock-saturated");
        foreach (var salt in can.Saturations.Where(salt => salt.Share > limit))
        {
            yield return Finding(
                "stock-saturated",
                Place(can),
                "feed.stock",
                $"At {Number(job.Temperature - 273.15)} °C {salt.Solid} is {(salt.Share > 1 ? "more than dissolves" : "close to what dissolves")}.",
                Percent(salt.Share),
                $"at most {Percent(limit)}",
                "Make the concentrate weaker, store it warmer, or share a salt between the cans."
            );
        }
        foreach (var salt in can.Saturations.Where(salt => salt.Guessed && salt.Share > limit / 2))
        {
            yield return Finding(
                "solubility-guess",
                Place(can),
                "feed.stock",
                $"How much {salt.Solid} dissolves at this temperature is a guess.",
                Percent(salt.Share),
                $"at most {Percent(limit)}",
                "Dissolve a small sample in a jar first and keep it cold overnight."
            );
        }
    }

    private static IEnumerable<Finding> Falling(StockCan can)
    {
        foreach (var solid in can.Precipitates.Where(solid => solid.SaturationIndex > 0))
        {
            var name = solid.Solid == Precipitate.Gypsum ? "Gypsum" : "Calcium phosphate";
            yield return Finding(
                "stock-precipitates",
                Place(can),
                "feed.stock",
                $"{name} falls out: calcium meets {(solid.Solid == Precipitate.Gypsum ? "sulfate" : "phosphate")} in this can.",
                $"{Number(Math.Pow(10, solid.SaturationIndex))} times its solubility product",
                "at most 1",
                "Two cans, calcium in A; or a weaker concentrate; or softer water for can B."
            );
        }
    }

    private static IEnumerable<Finding> Mixing(StockJob job, StockCan can)
    {
        foreach (var line in can.Lines.Where(line => line.Salt.Part == StockPart.Neither))
        {
            yield return Finding(
                "stock-neither",
                Place(can),
                "feed.salts",
                $"{line.Salt.Name} belongs in no concentrate.",
                line.Salt.Name,
                "salts without calcium beside sulfate or phosphate",
                "Give it into the tank by itself, or take other salts."
            );
        }
        var chelate = can.Lines.Any(line => line.Salt.Kind == SaltKind.Chelate);
        var acid = can.Lines.FirstOrDefault(line => line.Salt.Kind == SaltKind.Acid);
        if (chelate && acid is not null)
        {
            yield return Finding(
                "stock-chelate-acid",
                Place(can),
                "feed.stock",
                "Acid and chelates stand in the same can.",
                $"{Number(acid.Concentration)} g/L of {acid.Salt.Name}",
                "none",
                job.TwoCans ? "Keep the acid in B or dose it by itself." : "Two cans, or dose the acid by itself."
            );
        }
    }

    private static string Place(StockCan can) => can.Name.Length == 1 ? $"stock can {can.Name}" : "stock can";
}
