using System.Globalization;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>All that is to be said of a feed, each with the field of the rig file that cures it.</summary>
internal static class NutrientFindings
{
    public static IReadOnlyList<Finding> Of(NutrientMix mix, NutrientPlan plan) =>
        [
            .. OfWater(mix, plan)
                .Concat(plan.Recipe.Findings)
                .Concat(plan.Stock?.Findings ?? [])
                .Select(finding => finding with { Fields = [NutrientPaths.OfFinding(finding.Field)] })
                .Concat(Own(plan))
                .OrderBy(finding => finding.Level),
        ];

    /// <summary>What is unsure is said of the analysis; what is too much is said of what is filled in.</summary>
    private static IEnumerable<Finding> OfWater(NutrientMix mix, NutrientPlan plan)
    {
        if (mix.PureShare >= 1)
        {
            return [];
        }

        IReadOnlyList<Finding> raw = WaterLimits.TooMuch(plan.Water.Supply!);
        return plan.Water.Findings.Except(raw).Concat(WaterLimits.TooMuch(plan.Filled));
    }

    private static IEnumerable<Finding> Own(NutrientPlan plan)
    {
        double off = plan.Ec.DecisiemensPerMetre / plan.Wanted.DecisiemensPerMetre - 1;
        double limit = NutrientRules.Limit("recipe-ec-unreached");
        if (Math.Abs(off) > limit)
        {
            bool water = plan.FilledEc > plan.Wanted;
            yield return NutrientRules.Finding(
                "recipe-ec-unreached",
                "feed",
                water ? "nutrients.pureShare" : "nutrients.strength",
                water ? "The water alone is stronger than the feed is to be."
                    : off > 0 ? "The feed comes out stronger than wanted."
                    : "The feed comes out weaker than wanted.",
                plan.Ec.ToString(),
                plan.Wanted.ToString(),
                water
                    ? "Blend the water with rain or reverse-osmosis water, or ask for a stronger feed."
                    : "See which elements are missed, and what cures them; or ask for another strength."
            );
        }

        double most = NutrientRules.Limit("recipe-ph-off");
        if (plan.PH is not { } ph || Math.Abs(ph - plan.WantedPH) > most)
        {
            bool high = plan.PH is { } is_ && is_ > plan.WantedPH;
            yield return NutrientRules.Finding(
                "recipe-ph-off",
                "feed",
                high ? "nutrients.acid" : "nutrients.ph",
                plan.PH is null ? "No pH fits this feed: the analysis of the water misses an ion."
                    : high ? "When the tank has come to rest with the air, its pH is higher than wanted."
                    : "When the tank has come to rest with the air, its pH is lower than wanted.",
                plan.PH is { } found ? $"pH {NutrientRules.Number(Math.Round(found, 1))}" : "none",
                $"pH {NutrientRules.Number(plan.WantedPH)}",
                high
                    ? "Have an acid at hand; in use the pH moves with what the plants take, so read it daily."
                    : "Read it after a day; with soft water a little potassium bicarbonate brings it up."
            );
        }

        if (plan.Outlook is { SodiumDay: { } day } outlook)
        {
            double limitMg = Forms.ToMilligramsPerLitre(Constituent.Sodium, outlook.Limit.Classic);
            string after = day.ToString(CultureInfo.InvariantCulture);
            yield return NutrientRules.Finding(
                "loop-sodium",
                "reservoir",
                "nutrients.pureShare",
                $"Topped up to its EC, the loop holds more sodium than the crop stands from day {after} on, and the EC does not show it.",
                $"day {after}",
                $"{NutrientRules.Number(limitMg)} mg/L of sodium in the pots",
                outlook.Dumping is { Dumps: > 0 } dumped
                    ? $"Blend with rain or reverse-osmosis water, or dump the reservoir before that day: {dumped.Dumps.ToString(CultureInfo.InvariantCulture)} times in {(outlook.Days / 7).ToString(CultureInfo.InvariantCulture)} weeks."
                    : "Blend with rain or reverse-osmosis water, or bleed the tank."
            );
        }
    }
}
