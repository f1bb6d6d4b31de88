using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
using static Dripwright.Engine.Findings.NutrientRules;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>What is to be said of a recipe.</summary>
internal static class RecipeFindings
{
    private const string Place = "feed";

    public static IReadOnlyList<Finding> Of(NutrientRecipe recipe) =>
        [
            .. Elements(recipe)
                .Concat(Limits(recipe))
                .Concat(Acid(recipe))
                .Concat(Chelates(recipe))
                .Concat(Coarse(recipe))
                .OrderBy(finding => finding.Level),
        ];

    private static IEnumerable<Finding> Elements(NutrientRecipe recipe)
    {
        foreach (var element in recipe.Elements)
        {
            if (element.Verdict is ElementVerdict.Reached or ElementVerdict.NotAsked)
            {
                continue;
            }
            var wanted = element.Wanted!.Value;
            var brought = recipe.Lines.Any(line => line.Salt.Brings[element.Constituent] > 0);
            var name = Forms.ShortName(element.Constituent);
            if (recipe.Job.Target.NitrogenIsSum && element.Constituent == Constituent.NitrateNitrogen)
            {
                name = "N";
            }
            var (rule, what, remedy) = element.Verdict switch
            {
                ElementVerdict.WaterOver => (
                    "recipe-water-over",
                    $"The water alone brings more {name} than is wanted.",
                    "Blend the water with rain or reverse-osmosis water."
                ),
                ElementVerdict.Over => (
                    Rule(element),
                    $"{name} comes out higher than wanted: it rides along with what brings the others.",
                    "Take a salt at hand that brings the others without it."
                ),
                _ => (
                    Rule(element),
                    brought
                        ? $"{name} comes out lower than wanted: more of what brings it would overfeed something else."
                        : $"No salt at hand brings {name}.",
                    "Take a salt at hand that brings it; the cures name one."
                ),
            };
            yield return Finding(
                rule,
                Place,
                "feed.salts",
                what,
                $"{Milligrams(element.Constituent, element.Result)} mg/L",
                $"{Milligrams(element.Constituent, wanted)} mg/L",
                remedy
            );
        }
    }

    private static string Rule(ElementResult element) =>
        Charges.IsTrace(element.Constituent) ? "recipe-trace-unreached" : "recipe-unreached";

    private static IEnumerable<Finding> Limits(NutrientRecipe recipe)
    {
        const double Hair = 1e-9;
        var job = recipe.Job;
        if (recipe.AmmoniumShare > job.MostAmmoniumShare + Hair)
        {
            yield return Finding(
                "recipe-ammonium-share",
                Place,
                "feed.ammonium",
                "More of the nitrogen is ammonium than is safe, and the water brings it.",
                Percent(recipe.AmmoniumShare),
                $"at most {Percent(job.MostAmmoniumShare)}",
                "Blend the water; add more nitrate."
            );
        }
        foreach (
            var (key, rule, limit) in new[]
            {
                (Constituent.Chloride, "recipe-chloride", job.MostChloride),
                (Constituent.Sodium, "recipe-sodium", job.MostSodium),
            }
        )
        {
            if (limit is { } most && recipe.Composition[key] > most + Hair)
            {
                yield return Finding(
                    rule,
                    Place,
                    "water",
                    $"The water alone brings more {(key == Constituent.Sodium ? "sodium" : "chloride")} than the limit.",
                    $"{Milligrams(key, recipe.Composition[key])} mg/L",
                    $"at most {Milligrams(key, most)} mg/L",
                    "Blend the water with rain or reverse-osmosis water."
                );
            }
        }
    }

    private static IEnumerable<Finding> Acid(NutrientRecipe recipe)
    {
        var lacking = recipe.AcidDemand - recipe.AcidGiven;
        if (lacking > 0.05)
        {
            yield return Finding(
                "recipe-no-acid",
                Place,
                "feed.acid",
                $"Alkalinity of {Number(recipe.Alkalinity)} meq/L stays in the feed, because the acid at hand does not reach.",
                $"{Number(recipe.AcidGiven)} meq/L of acid",
                $"{Number(recipe.AcidDemand)} meq/L of acid",
                "Take nitric acid at hand, or phosphoric for a part of it; or blend the water."
            );
        }
        foreach (var line in recipe.Lines.Where(line => line.Salt.Kind == SaltKind.Acid))
        {
            var over = recipe.Elements.FirstOrDefault(element =>
                element.Verdict == ElementVerdict.Over
                && element.Wanted is { } wanted
                && line.Salt.Brings[element.Constituent] * line.Concentration + element.FromWater > wanted
            );
            if (over is not null)
            {
                yield return Finding(
                    "recipe-acid-overfeeds",
                    Place,
                    "feed.acid",
                    $"The acid that the water needs brings more {Forms.ShortName(over.Constituent)} than is wanted.",
                    $"{Milligrams(over.Constituent, over.Result)} mg/L",
                    $"{Milligrams(over.Constituent, over.Wanted!.Value)} mg/L",
                    "Share the acid between two kinds, nitric and phosphoric, or blend the water."
                );
            }
        }
    }

    private static IEnumerable<Finding> Chelates(NutrientRecipe recipe)
    {
        var ph = recipe.Job.PH;
        foreach (var line in recipe.Lines)
        {
            if (line.Salt.PHRange is { } range && (ph < range.Least || ph > range.Most))
            {
                yield return Finding(
                    "recipe-chelate-ph",
                    line.Salt.Name,
                    "feed.ph",
                    "At this pH the chelate lets its metal go, and it drops out.",
                    $"pH {Number(ph)}",
                    $"pH {Number(range.Least)} to {Number(range.Most)}",
                    "Hold the pH inside the range, or take another chelate: DTPA above 6.3, EDDHA above 7."
                );
            }
        }
    }

    private static IEnumerable<Finding> Coarse(NutrientRecipe recipe)
    {
        foreach (var cure in recipe.Coarse)
        {
            var batch = $"Mix at least {Number(cure.SmallestBatch * 1000)} L at a time";
            yield return Finding(
                "scale-coarse",
                cure.Salt.Name,
                "feed.scale",
                $"The scale is too coarse for {cure.Salt.Name} in this volume.",
                $"up to {Percent(Math.Min(1, cure.RoundingError))} off",
                $"at most {Percent(Limit("scale-coarse"))}",
                cure.Take is { } take
                    ? $"{batch}; or dissolve {Number(cure.Weigh * 1000)} g to {Number(cure.Into * 1000)} L and take {Number(take * 1e6)} mL of it."
                    : $"{batch}, or find a finer scale."
            );
        }
    }

    private static string Milligrams(Constituent key, double amount) => Number(Forms.ToMilligramsPerLitre(key, amount));
}
