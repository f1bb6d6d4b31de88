using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>A salt that would help an element, and the change of the rig that has it.</summary>
/// <param name="Salt">The salt with what it does.</param>
/// <param name="Change">The change.</param>
internal sealed record NamedCure(SaltCure Salt, Cure Change);

/// <summary>What is to be said of a recipe.</summary>
internal static class RecipeFindings
{
    // A limit that is just kept is kept.
    private const double Hair = 1e-9;

    /// <summary>Findings of elements, limits, acid, chelates and the scale.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="cures">Salts to get for the elements that are missed.</param>
    /// <param name="resting">[-] pH at which the mixed tank comes to rest with the air; null where it is not known.</param>
    public static IReadOnlyList<Finding> Of(
        NutrientRecipe recipe,
        IReadOnlyList<NamedCure> cures,
        double? resting = null
    ) =>
        [
            .. recipe
                .Elements.Select(element => OfElement(recipe, element, cures))
                .OfType<Finding>()
                .Concat(Limits(recipe))
                .Concat(Acid(recipe))
                .Concat(Chelates(recipe, resting))
                .Concat(Coarse(recipe))
                .OrderBy(finding => finding.Level),
        ];

    private static Place Solution { get; } = Place.Of("place.nutrients");

    private static Finding? OfElement(NutrientRecipe recipe, ElementResult element, IReadOnlyList<NamedCure> cures)
    {
        // Ammonium is judged by its share of the nitrogen.
        if (
            element.Verdict is ElementVerdict.Reached or ElementVerdict.NotAsked
            || element is { Constituent: Constituent.AmmoniumNitrogen, Verdict: not ElementVerdict.WaterOver }
        )
        {
            return null;
        }
        var name = Elements.Name(element.Constituent, recipe.Job.Target.NitrogenIsSum);
        var result = Phrase.Of(Elements.Amount(element.Constituent, element.Result));
        var wanted = Phrase.Of(Elements.Amount(element.Constituent, element.Wanted!.Value));
        if (element.Verdict is ElementVerdict.WaterOver)
        {
            return Judged.By(
                element.Miss > RuleBook.Limit("recipe-water-over") ? "recipe-water-over" : "recipe-water-off",
                Solution,
                [NutrientPaths.PureShare, NutrientPaths.Of(element.Constituent)],
                Phrase.Of("finding.recipe-water-over.what", name),
                result,
                wanted,
                Phrase.Of("finding.recipe-water-over.remedy")
            );
        }
        var cure = cures.FirstOrDefault(one => one.Salt.Constituent == element.Constituent);
        var isOver = element.Verdict is ElementVerdict.Over;
        var rule = RuleOf(element);
        var isBrought = recipe.Lines.Any(line => line.Salt.Brings[element.Constituent] > 0);
        return Judged.By(
            rule,
            Solution,
            [NutrientPaths.Salts],
            isOver ? Phrase.Of("finding.recipe-unreached.over.what", name)
                : isBrought ? Phrase.Of("finding.recipe-unreached.under.what", name)
                : Phrase.Of("finding.recipe-unreached.none.what", name),
            result,
            wanted,
            rule == "recipe-off" ? Phrase.Of("finding.recipe-off.remedy")
                : cure is not null
                    ? Phrase.Of(
                        "finding.recipe-unreached.remedy.named",
                        name,
                        cure.Salt.Salt.Name,
                        Measured.Percent(1 + cure.Salt.MissAfter)
                    )
                : isOver ? Phrase.Of("finding.recipe-unreached.over.remedy", name)
                : Phrase.Of("finding.recipe-unreached.remedy", name),
            cure is null ? [] : [cure.Change]
        );
    }

    // Too little starves; too much is borne for longer, and a trace hardly tells.
    internal static string RuleOf(ElementResult element)
    {
        if (Charges.IsTrace(element.Constituent))
        {
            return "recipe-trace-unreached";
        }
        var wide = element.Verdict is ElementVerdict.Over || element.Constituent == Constituent.Sulfur;
        var limit = RuleBook.Limit("recipe-unreached") * (wide ? 2 : 1);
        return Math.Abs(element.Miss!.Value) > limit ? "recipe-unreached" : "recipe-off";
    }

    private static IEnumerable<Finding> Limits(NutrientRecipe recipe)
    {
        var job = recipe.Job;
        if (recipe.AmmoniumShare > job.MostAmmoniumShare + Hair)
        {
            yield return Judged.By(
                "recipe-ammonium-share",
                Solution,
                [NutrientPaths.PureShare, NutrientPaths.Of(Constituent.AmmoniumNitrogen)],
                Phrase.Of("finding.recipe-ammonium-share.what"),
                Phrase.Of(Measured.Percent(recipe.AmmoniumShare)),
                Limit.AtMost(Measured.Percent(job.MostAmmoniumShare)),
                Phrase.Of("finding.recipe-ammonium-share.remedy")
            );
        }
        foreach (
            var (ion, rule, limit) in new[]
            {
                (Constituent.Chloride, "recipe-chloride", job.MostChloride),
                (Constituent.Sodium, "recipe-sodium", job.MostSodium),
            }
        )
        {
            if (limit is { } most && recipe.Composition[ion] > most + Hair)
            {
                yield return Judged.By(
                    rule,
                    Solution,
                    [NutrientPaths.PureShare, NutrientPaths.Of(ion)],
                    Phrase.Of("finding.recipe-ion.what", Elements.Name(ion)),
                    Phrase.Of(Elements.Amount(ion, recipe.Composition[ion])),
                    Limit.AtMost(Elements.Amount(ion, most)),
                    Phrase.Of("finding.recipe-ion.remedy")
                );
            }
        }
    }

    private static IEnumerable<Finding> Acid(NutrientRecipe recipe)
    {
        if (recipe.AcidDemand - recipe.AcidGiven > RuleBook.Limit("recipe-no-acid"))
        {
            yield return Judged.By(
                "recipe-no-acid",
                Solution,
                [NutrientPaths.Acid, NutrientPaths.PureShare],
                Phrase.Of("finding.recipe-no-acid.what", Measured.Milliequivalents(recipe.Alkalinity)),
                Phrase.Of("finding.recipe-no-acid.value", Measured.Milliequivalents(recipe.AcidGiven)),
                Phrase.Of("finding.recipe-no-acid.value", Measured.Milliequivalents(recipe.AcidDemand)),
                Phrase.Of("finding.recipe-no-acid.remedy")
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
                yield return Judged.By(
                    "recipe-acid-overfeeds",
                    Solution,
                    [NutrientPaths.Acid, NutrientPaths.PureShare],
                    Phrase.Of(
                        "finding.recipe-acid-overfeeds.what",
                        Elements.Name(over.Constituent, recipe.Job.Target.NitrogenIsSum)
                    ),
                    Phrase.Of(Elements.Amount(over.Constituent, over.Result)),
                    Phrase.Of(Elements.Amount(over.Constituent, over.Wanted!.Value)),
                    Phrase.Of("finding.recipe-acid-overfeeds.remedy")
                );
            }
        }
    }

    // A chelate has to bear the pH that is, not the one that is wished for.
    private static IEnumerable<Finding> Chelates(NutrientRecipe recipe, double? resting)
    {
        var ph = Math.Max(recipe.Job.PH, resting ?? recipe.Job.PH);
        var climbs = ph > recipe.Job.PH;
        foreach (var line in recipe.Lines)
        {
            if (line.Salt.PHRange is { } range && (ph < range.Least || ph > range.Most))
            {
                yield return Judged.By(
                    "recipe-chelate-ph",
                    new Place(Phrase.Plain(line.Salt.Name)),
                    climbs ? [NutrientPaths.Acid, NutrientPaths.Salts] : [NutrientPaths.PH, NutrientPaths.Salts],
                    Phrase.Of("finding.recipe-chelate-ph.what"),
                    Phrase.Of("nutrients.ph", Measured.PH(ph)),
                    Phrase.Of("finding.recipe-chelate-ph.limit", Measured.PH(range.Least), Measured.PH(range.Most)),
                    Phrase.Of("finding.recipe-chelate-ph.remedy")
                );
            }
        }
    }

    private static IEnumerable<Finding> Coarse(NutrientRecipe recipe)
    {
        foreach (var cure in recipe.Coarse)
        {
            var batch = Measured.Volume(cure.SmallestBatch);
            yield return Judged.By(
                // What a dilution brings within reach is good to know; what nothing does is badly mixed.
                cure.Take
                    is null
                    ? "scale-too-coarse"
                    : "scale-coarse",
                new Place(Phrase.Plain(cure.Salt.Name)),
                [NutrientPaths.ScaleStep],
                Phrase.Of("finding.scale-coarse.what", cure.Salt.Name),
                Phrase.Of("finding.scale-coarse.value", Measured.Percent(Math.Min(1, cure.RoundingError))),
                Limit.AtMost(Measured.Percent(RuleBook.Limit("scale-coarse"))),
                cure.Take is { } take
                    ? Phrase.Of(
                        "finding.scale-coarse.dilute.remedy",
                        batch,
                        Measured.Weighed(cure.Weigh, recipe.Job.Scale.Step),
                        Measured.MeasuredOut(cure.Into),
                        Measured.MeasuredOut(take)
                    )
                    : Phrase.Of("finding.scale-coarse.remedy", batch)
            );
        }
    }
}
