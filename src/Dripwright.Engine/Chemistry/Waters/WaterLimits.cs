using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>What a water brings too much of.</summary>
public static class WaterLimits
{
    private static readonly (string Rule, Constituent Ion)[] s_ions =
    [
        ("water-sodium", Constituent.Sodium),
        ("water-chloride", Constituent.Chloride),
        ("water-calcium", Constituent.Calcium),
        ("water-sulfate", Constituent.Sulfur),
        ("water-boron", Constituent.Boron),
        ("water-iron", Constituent.Iron),
        ("water-manganese", Constituent.Manganese),
        ("water-zinc", Constituent.Zinc),
        ("water-copper", Constituent.Copper),
    ];

    /// <summary>Findings for every constituent over its limit, for alkalinity and for EC.</summary>
    /// <param name="supply">The water.</param>
    /// <param name="pureShare">[-] Share of rain or reverse-osmosis water that is in it already, under 1.</param>
    /// <returns>The findings; what cures a constituent that harms is the share of pure water that brings it to its limit.</returns>
    public static IReadOnlyList<Finding> TooMuch(WaterSupply supply, double pureShare = 0)
    {
        ArgumentNullException.ThrowIfNull(supply);
        var place = new Place(supply.Name);
        var findings = new List<Finding>();
        foreach (var (rule, ion) in s_ions)
        {
            var (amount, limit) = (supply.Composition[ion], RuleBook.Limit(rule));
            if (amount > limit)
            {
                findings.Add(OfIon(rule, ion, place, amount, limit, pureShare));
            }
        }
        if (supply.Alkalinity > RuleBook.Limit("water-alkalinity"))
        {
            findings.Add(
                Judged.By(
                    "water-alkalinity",
                    place,
                    [NutrientPaths.Acid, NutrientPaths.Alkalinity, NutrientPaths.PureShare],
                    Phrase.Of("finding.water-alkalinity.what"),
                    Phrase.Of(
                        "finding.water-alkalinity.value",
                        Measured.Milliequivalents(supply.Alkalinity),
                        Measured.Concentration(supply.Alkalinity * Forms.CarbonateEquivalent)
                    ),
                    Limit.AtMost(Measured.Milliequivalents(RuleBook.Limit("water-alkalinity"))),
                    Phrase.Of("finding.water-alkalinity.remedy")
                )
            );
        }
        else if (supply.Alkalinity < RuleBook.Limit("water-buffer-none"))
        {
            findings.Add(
                Judged.By(
                    "water-buffer-none",
                    place,
                    [NutrientPaths.Alkalinity, NutrientPaths.PureShare],
                    Phrase.Of("finding.water-buffer-none.what"),
                    Phrase.Of(Measured.Milliequivalents(supply.Alkalinity)),
                    Limit.AtLeast(Measured.Milliequivalents(RuleBook.Limit("water-buffer-none"))),
                    Phrase.Of("finding.water-buffer-none.remedy")
                )
            );
        }
        if (supply.Conductivity > RuleBook.Limit("water-ec"))
        {
            findings.Add(
                Judged.By(
                    "water-ec",
                    place,
                    [NutrientPaths.PureShare, NutrientPaths.Conductivity],
                    Phrase.Of("finding.water-ec.what"),
                    Phrase.Of(Measured.Ec(supply.Conductivity.Value)),
                    Limit.AtMost(Measured.Ec(RuleBook.Limit("water-ec"))),
                    Phrase.Of("finding.water-ec.remedy")
                )
            );
        }
        return findings;
    }

    private static Finding OfIon(
        string rule,
        Constituent ion,
        Place place,
        double amount,
        double limit,
        double pureShare
    )
    {
        var share = WaterBlend.ShareOfPure(amount, limit);
        // What is pure already stays so; of the rest that share is made pure.
        var blended = 1 - ((1 - pureShare) * (1 - share));
        return Judged.By(
            rule,
            place,
            [NutrientPaths.PureShare, NutrientPaths.Of(ion)],
            Phrase.Of($"finding.{rule}.what", Measured.Percent(blended)),
            Phrase.Of(Elements.Amount(ion, amount)),
            Limit.AtMost(Elements.Amount(ion, limit)),
            Phrase.Of($"finding.{rule}.remedy"),
            RuleBook.Rules[rule].Level is FindingLevel.Note
                ? []
                : [Cure.Field(NutrientPaths.PureShare, NutrientPaths.ShareText(blended))]
        );
    }
}
