using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
using static Dripwright.Engine.Findings.NutrientRules;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>What a water brings too much of.</summary>
public static class WaterLimits
{
    private static readonly (string Rule, Constituent Ion, string Name, string Remedy)[] s_ions =
    [
        (
            "water-sodium",
            Constituent.Sodium,
            "Sodium",
            "Blend with rain or reverse-osmosis water; bleed the tank before it builds up."
        ),
        (
            "water-chloride",
            Constituent.Chloride,
            "Chloride",
            "Blend with rain or reverse-osmosis water; use no chloride salts."
        ),
        (
            "water-calcium",
            Constituent.Calcium,
            "Calcium",
            "The recipe uses it as food; blend where it is more than the target."
        ),
        (
            "water-sulfate",
            Constituent.Sulfur,
            "Sulfate",
            "The recipe uses it as food; blend where it is more than the target."
        ),
        ("water-boron", Constituent.Boron, "Boron", "Leave boron out of the feed; blend where it is still too much."),
        (
            "water-iron",
            Constituent.Iron,
            "Iron",
            "Aerate and settle or filter it before use; it clogs emitters and feeds nobody."
        ),
        (
            "water-manganese",
            Constituent.Manganese,
            "Manganese",
            "Aerate and filter it before use; leave manganese out of the feed."
        ),
        ("water-zinc", Constituent.Zinc, "Zinc", "Leave zinc out of the feed; look for galvanised gutters or tanks."),
    ];

    /// <summary>Findings for every constituent over its limit, for alkalinity and for EC.</summary>
    /// <param name="supply">The water.</param>
    public static IReadOnlyList<Finding> TooMuch(WaterSupply supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        var findings = new List<Finding>();
        foreach (var (rule, ion, name, remedy) in s_ions)
        {
            var (amount, limit) = (supply.Composition[ion], Limit(rule));
            if (amount > limit)
            {
                var share = WaterBlend.ShareOfPure(amount, limit);
                findings.Add(
                    Finding(
                        rule,
                        supply.Name,
                        $"water.{Forms.Symbol(ion).ToLowerInvariant()}",
                        $"{name} is higher than good feed water has; {Percent(share)} of rain water in the blend would bring it under.",
                        $"{Number(Forms.ToMilligramsPerLitre(ion, amount))} mg/L",
                        $"at most {Number(Forms.ToMilligramsPerLitre(ion, limit))} mg/L",
                        remedy
                    )
                );
            }
        }
        if (supply.Alkalinity > Limit("water-alkalinity"))
        {
            findings.Add(
                Finding(
                    "water-alkalinity",
                    supply.Name,
                    "water.alkalinity",
                    "Hard to hold the pH with: this water needs acid in every fill.",
                    $"{Number(supply.Alkalinity)} meq/L ({Number(supply.Alkalinity * Forms.CarbonateEquivalent * 1000)} mg/L as CaCO3)",
                    $"at most {Number(Limit("water-alkalinity"))} meq/L",
                    "Let the recipe count acid in, or blend with rain or reverse-osmosis water."
                )
            );
        }
        else if (supply.Alkalinity < Limit("water-buffer-none"))
        {
            findings.Add(
                Finding(
                    "water-buffer-none",
                    supply.Name,
                    "water.alkalinity",
                    "Nothing in this water holds the pH: it swings with what the plants take up.",
                    $"{Number(supply.Alkalinity)} meq/L",
                    $"at least {Number(Limit("water-buffer-none"))} meq/L",
                    "Check the pH daily; a little potassium bicarbonate or some of the tap water in the blend steadies it."
                )
            );
        }
        if (supply.Conductivity > Limit("water-ec"))
        {
            findings.Add(
                Finding(
                    "water-ec",
                    supply.Name,
                    "water.conductivity",
                    "The water alone is strong and leaves little room for the feed.",
                    $"{Number(supply.Conductivity.Value * 10)} dS/m",
                    $"at most {Number(Limit("water-ec") * 10)} dS/m",
                    "Blend with rain or reverse-osmosis water."
                )
            );
        }
        return findings;
    }
}
