using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Units;

namespace Dripwright.Language.Report;

/// <summary>Key figures of the feed solution.</summary>
internal static class NutrientFigures
{
    /// <summary>The figures, or null where no feed is asked for.</summary>
    public static KeyFigureGroup? Of(Plan plan, QuantityWords words)
    {
        if (plan.Nutrients is not { } feed)
        {
            return null;
        }

        var missed = feed
            .Recipe.Elements.Where(element =>
                element.Verdict is ElementVerdict.Under or ElementVerdict.Over or ElementVerdict.WaterOver
            )
            .Select(element => Forms.ShortName(element.Constituent))
            .ToList();
        var salts = feed.Recipe.Lines.Sum(line => line.Concentration) * feed.Volume;
        List<KeyFigure> figures =
        [
            new("Strength", feed.Ec.ToString(), $"wanted {feed.Wanted}; the water alone reads {feed.FilledEc}"),
            new(
                "pH",
                feed.PH is { } ph ? QuantityWords.Number(ph, "0.0") : "not known",
                $"wanted {QuantityWords.Number(feed.WantedPH, "0.0")}, at rest with the air"
            ),
            new(
                "Salts for a full tank",
                $"{QuantityWords.Number(salts * 1000, "0")} g",
                $"in {words.Volume(feed.Volume)}"
                    + (
                        feed.AcidVolume > 0
                            ? $", with {QuantityWords.Number(feed.AcidVolume * 1e6, "0")} mL of acid"
                            : ""
                    )
            ),
            new(
                "Elements missed",
                missed.Count == 0 ? "none" : QuantityWords.Listed(missed),
                missed.Count == 0 ? "" : "see the findings and the mixing sheet"
            ),
        ];
        if (feed.Stock is { } stock)
        {
            figures.Add(
                new(
                    "Two cans",
                    $"1:{QuantityWords.Number(stock.Job.PartsOfFeed, "0")}",
                    stock.MostParts is { } most ? $"keep up to 1:{QuantityWords.Number(most, "0")}" : "do not keep"
                )
            );
        }

        if (feed.Outlook is { } outlook)
        {
            figures.Add(
                new(
                    "Sodium passes its limit",
                    outlook.SodiumDay is { } day
                        ? $"day {QuantityWords.Count(day)}"
                        : $"not in {QuantityWords.Count(outlook.Days / 7)} weeks",
                    "topped up to its strength every day"
                )
            );
        }

        return new("Feed solution", figures);
    }
}
