using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;

namespace Dripwright.Language.Report;

/// <summary>Key figures of the nutrient solution.</summary>
internal static class NutrientFigures
{
    /// <summary>The figures, or null where the rig has no nutrients.</summary>
    public static KeyFigureGroup? Of(Plan plan, PlanWords words)
    {
        if (plan.Nutrients is not { } nutrients)
        {
            return null;
        }

        List<KeyFigure> figures =
        [
            new(
                Words.Of("figures.nutrients.ec"),
                words.Of(nutrients.Ec.Measured),
                Words.Of(
                    "figures.nutrients.ec.remark",
                    words.Of(nutrients.Wanted.Measured),
                    words.Of(nutrients.FilledEc.Measured)
                )
            ),
            new(
                "pH",
                nutrients.PH is { } ph ? words.Of(Measured.PH(ph)) : Words.Of("figures.nutrients.ph.unknown"),
                Words.Of("figures.nutrients.ph.remark", words.Of(Measured.PH(nutrients.WantedPH)))
            ),
            Salts(nutrients, words),
            Missed(nutrients.Recipe, words),
        ];
        if (nutrients.Stock is { } stock)
        {
            figures.Add(
                new(
                    Words.Of("figures.nutrients.stock"),
                    $"1:{words.Of(Measured.Number(stock.Job.PartsOfFeed))}",
                    stock.MostParts is { } most
                        ? Words.Of("figures.nutrients.stock.keeps", words.Of(Measured.Number(most)))
                        : Words.Of("figures.nutrients.stock.spoils")
                )
            );
        }

        if (nutrients.Outlook is { } outlook)
        {
            figures.Add(
                new(
                    Words.Of("figures.nutrients.sodium"),
                    outlook.SodiumDay is { } day
                        ? Words.Of("nutrients.day", day)
                        : Words.Of("figures.nutrients.sodium.never", outlook.Days / 7),
                    Words.Of("figures.nutrients.sodium.remark")
                )
            );
        }

        return new(FigureSubject.Nutrients, Words.Of("figures.nutrients"), figures);
    }

    private static KeyFigure Salts(NutrientPlan nutrients, PlanWords words)
    {
        var salts = words.Of(
            Measured.Weighed(nutrients.Recipe.Lines.Sum(line => line.Concentration) * nutrients.Volume, 0.001)
        );
        var volume = words.Of(Measured.Volume(nutrients.Volume));
        return new(
            Words.Of("figures.nutrients.salts"),
            salts,
            nutrients.AcidVolume > 0
                ? Words.Of("figures.nutrients.salts.acid", volume, words.Of(Measured.MeasuredOut(nutrients.AcidVolume)))
                : Words.Of("figures.nutrients.salts.remark", volume)
        );
    }

    private static KeyFigure Missed(NutrientRecipe recipe, PlanWords words)
    {
        var missed = recipe
            .Elements.Where(element =>
                element.Verdict is ElementVerdict.Under or ElementVerdict.Over or ElementVerdict.WaterOver
            )
            .Select(element => Elements.Short(element.Constituent, recipe.Job.Target.NitrogenIsSum))
            .ToList();
        return missed.Count == 0
            ? new(Words.Of("figures.nutrients.missed"), Words.Of("figures.nutrients.missed.none"))
            : new(
                Words.Of("figures.nutrients.missed"),
                words.Of(new Several(missed)),
                Words.Of("figures.nutrients.missed.remark")
            );
    }
}
