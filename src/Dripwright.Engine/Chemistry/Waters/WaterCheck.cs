using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>Judges a water analysis: what cannot be is explained, what follows is filled in, what is too much is told.</summary>
/// <remarks>Method page: docs/methods/water-analysis.md</remarks>
public static class WaterCheck
{
    // [mol/m³ of charge] Below this an open balance is rounding.
    private const double OpenGap = 0.2;

    /// <summary>Reads an analysis.</summary>
    /// <param name="analysis">Any part of an analysis.</param>
    /// <returns>The water with what was filled in, or what cannot be. Never throws for its numbers.</returns>
    public static WaterReading Read(WaterAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var faults = WaterFaults.Numbers(analysis).ToList();
        if (faults.Count > 0)
        {
            return new WaterReading(null, null, [], faults, []);
        }
        var filling = new WaterFilling(analysis);
        filling.Fill();
        faults.AddRange(WaterFaults.Sums(analysis, filling));
        if (faults.Count > 0)
        {
            return new WaterReading(null, null, [], faults, []);
        }
        var supply = new WaterSupply(
            analysis.Name,
            filling.Composition,
            filling.Alkalinity ?? 0,
            analysis.Conductivity,
            analysis.PH
        );
        List<Finding> findings = [.. Unsure(analysis, filling), .. WaterLimits.TooMuch(supply)];
        return new WaterReading(
            supply,
            filling.Balance,
            filling.Completions,
            [],
            [.. findings.OrderBy(finding => finding.Level)]
        );
    }

    private static IEnumerable<Finding> Unsure(WaterAnalysis analysis, WaterFilling filling)
    {
        var balance = filling.Balance;
        var place = new Place(analysis.Name);
        if (balance.Missing.Count > 0)
        {
            yield return Unknown(place, balance);
        }
        else if (Math.Abs(balance.Gap) > OpenGap && GapRule(balance) is { } rule)
        {
            yield return Gap(rule, place, balance);
        }
        if (filling.HardnessUnsplit)
        {
            yield return Judged.By(
                "water-hardness-split",
                place,
                [NutrientPaths.Hardness, NutrientPaths.Of(Formulas.Constituent.Calcium)],
                Phrase.Of("finding.water-hardness-split.what"),
                Phrase.Of(Measured.Millimoles(analysis.Hardness!.Value)),
                Phrase.Of("finding.water-hardness-split.limit"),
                Phrase.Of("finding.water-hardness-split.remedy")
            );
        }
        if (WaterConductivity.Misfit(analysis.Conductivity, balance) is { } ratio)
        {
            yield return Judged.By(
                "water-ec-off",
                place,
                [NutrientPaths.Conductivity],
                Phrase.Of("finding.water-ec-off.what", Measured.Number(ratio)),
                Phrase.Of(Measured.Ec(analysis.Conductivity!.Value)),
                Phrase.Of("finding.water-ec-off.limit", Measured.Ec(WaterConductivity.Expected(balance))),
                Phrase.Of("finding.water-ec-off.remedy")
            );
        }
    }

    private static Finding Unknown(Place place, ChargeBalance balance)
    {
        var missing = new Several(balance.Missing);
        var open = Measured.Milliequivalents(Math.Abs(balance.Gap));
        return Judged.By(
            "water-unknown",
            place,
            [NutrientPaths.Water],
            Math.Abs(balance.Gap) <= OpenGap ? Phrase.Of("finding.water-unknown.what", missing)
                : balance.Gap > 0 ? Phrase.Of("finding.water-unknown.anions.what", missing, open)
                : Phrase.Of("finding.water-unknown.cations.what", missing, open),
            Phrase.Of("finding.water-unknown.value", missing),
            Phrase.Of("finding.water-unknown.limit"),
            Phrase.Of("finding.water-unknown.remedy")
        );
    }

    private static string? GapRule(ChargeBalance balance)
    {
        var relative = Math.Abs(balance.RelativeGap);
        return relative > RuleBook.Limit("water-gap-large") ? "water-gap-large"
            : relative > RuleBook.Limit("water-gap") ? "water-gap"
            : null;
    }

    private static Finding Gap(string rule, Place place, ChargeBalance balance) =>
        Judged.By(
            rule,
            place,
            [NutrientPaths.Water],
            Phrase.Of(balance.Gap > 0 ? "finding.water-gap.cations.what" : "finding.water-gap.anions.what"),
            Phrase.Of(
                "finding.water-gap.value",
                Measured.Milliequivalents(balance.Cations),
                Measured.Milliequivalents(balance.Anions)
            ),
            Phrase.Of("finding.water-gap.limit", Measured.Percent(RuleBook.Limit(rule))),
            Phrase.Of("finding.water-gap.remedy")
        );
}
