using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>All that is to be said of a nutrient solution, each with the field of the rig file that cures it.</summary>
internal static class NutrientFindings
{
    private static Place Solution { get; } = Place.Of("place.nutrients");

    public static IReadOnlyList<Finding> Of(Rig rig, NutrientPlan plan) =>
        [
            .. OfWater(rig.Nutrients, plan)
                .Concat(RecipeFindings.Of(plan.Recipe, NutrientCures.Of(rig, plan.Cures), plan.PH))
                .Where(finding =>
                    finding.Rule != "recipe-chloride" || plan.Filled.Composition[Constituent.Chloride] <= 0
                )
                .Concat(Poisons.In(plan))
                .Concat(SaltFindings.Of(rig, plan))
                .Concat(plan.Stock?.Findings ?? [])
                .Concat(
                    new[]
                    {
                        Strength(plan),
                        RestingPH(plan),
                        Sodium(plan),
                        Salt(rig, plan),
                        Coir(plan),
                    }.OfType<Finding>()
                )
                .OrderBy(finding => finding.Level),
        ];

    /// <summary>What is unsure is said of the analysis; what is too much is said of what is filled in.</summary>
    private static IEnumerable<Finding> OfWater(NutrientMix mix, NutrientPlan plan)
    {
        if (mix.PureShare >= 1)
        {
            return [];
        }

        HashSet<string> tooMuch = [.. WaterLimits.TooMuch(plan.Water.Supply!).Select(finding => finding.Rule)];
        return plan
            .Water.Findings.Where(finding => !tooMuch.Contains(finding.Rule))
            .Concat(WaterLimits.TooMuch(plan.Filled, mix.PureShare))
            // Alkalinity that the recipe's acid takes is dealt with.
            .Where(finding => finding.Rule != "water-alkalinity" || !AcidSuffices(plan));
    }

    private static bool AcidSuffices(NutrientPlan plan) =>
        plan.Recipe.AcidDemand - plan.Recipe.AcidGiven <= RuleBook.Limit("recipe-no-acid");

    private static Finding? Salt(Rig rig, NutrientPlan plan)
    {
        var most = new Ec(10 * RuleBook.Limit("water-salt"));
        // A meter's word counts where the ions are not known.
        var measured = new Ec(10 * (plan.Water.Supply!.Conductivity ?? 0) * (1 - rig.Nutrients.PureShare));
        var ec = measured > plan.FilledEc ? measured : plan.FilledEc;
        return ec <= most
            ? null
            : Judged.By(
                "water-salt",
                Place.Of("place.water"),
                [NutrientPaths.Water, NutrientPaths.PureShare],
                Phrase.Of("finding.water-salt.what"),
                Phrase.Of(ec.Measured),
                Limit.AtMost(most.Measured),
                Phrase.Of("finding.water-salt.remedy")
            );
    }

    private static Finding? Coir(NutrientPlan plan) =>
        plan.Coir is { } coir
            ? Judged.By(
                "coir-raw",
                Place.Of("place.pots-all"),
                ["nutrients.rawCoir"],
                Phrase.Of("finding.coir-raw.what"),
                Phrase.Of(Measured.Volume(coir.Coir)),
                Phrase.Of("finding.coir-raw.limit"),
                Phrase.Of("finding.coir-raw.remedy")
            )
            : null;

    private static Finding? Strength(NutrientPlan plan)
    {
        var off = plan.Ec.DecisiemensPerMetre / plan.Wanted.DecisiemensPerMetre - 1;
        if (Math.Abs(off) <= RuleBook.Limit("recipe-ec-unreached"))
        {
            return null;
        }

        var water = plan.FilledEc > plan.Wanted;
        return Judged.By(
            "recipe-ec-unreached",
            Solution,
            water ? [NutrientPaths.PureShare, NutrientPaths.Strength] : [NutrientPaths.Strength, NutrientPaths.Salts],
            Phrase.Of(
                water ? "finding.recipe-ec-unreached.water.what"
                : off > 0 ? "finding.recipe-ec-unreached.over.what"
                : "finding.recipe-ec-unreached.under.what"
            ),
            Phrase.Of(plan.Ec.Measured),
            Phrase.Of(plan.Wanted.Measured),
            Phrase.Of(water ? "finding.recipe-ec-unreached.water.remedy" : "finding.recipe-ec-unreached.remedy")
        );
    }

    private static Finding? RestingPH(NutrientPlan plan)
    {
        var wanted = Phrase.Of("nutrients.ph", Measured.PH(plan.WantedPH));
        if (plan.PH is not { } ph)
        {
            return Judged.By(
                "recipe-ph-off",
                Solution,
                [NutrientPaths.Water],
                Phrase.Of("finding.recipe-ph-off.none.what"),
                Phrase.Of("finding.recipe-ph-off.none.value"),
                wanted,
                Phrase.Of("finding.recipe-ph-off.none.remedy")
            );
        }

        if (Math.Abs(ph - plan.WantedPH) <= RuleBook.Limit("recipe-ph-off"))
        {
            return null;
        }

        var high = ph > plan.WantedPH;
        return Judged.By(
            "recipe-ph-off",
            Solution,
            high ? [NutrientPaths.Acid, NutrientPaths.PH] : [NutrientPaths.PH, NutrientPaths.PureShare],
            Phrase.Of(high ? "finding.recipe-ph-off.high.what" : "finding.recipe-ph-off.low.what"),
            Phrase.Of("nutrients.ph", Measured.PH(ph)),
            wanted,
            Phrase.Of(high ? "finding.recipe-ph-off.high.remedy" : "finding.recipe-ph-off.low.remedy")
        );
    }

    private static Finding? Sodium(NutrientPlan plan) =>
        plan.Outlook is { SodiumDay: { } day } outlook
            ? Judged.By(
                "loop-sodium",
                Place.Reservoir,
                [NutrientPaths.PureShare, NutrientPaths.Of(Constituent.Sodium)],
                Phrase.Of("finding.loop-sodium.what", day),
                Phrase.Of("nutrients.day", day),
                Phrase.Of("finding.loop-sodium.limit", Elements.Amount(Constituent.Sodium, outlook.Limit.Classic)),
                outlook.Dumping is { Dumps: > 0 and var dumps }
                    ? Phrase.Counted("finding.loop-sodium.change.remedy", dumps, outlook.Days / 7)
                    : Phrase.Of("finding.loop-sodium.remedy")
            )
            : null;
}
