using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>Judges a water analysis: what cannot be is explained, what follows is filled in, what is too much is told.</summary>
/// <remarks>Method page: docs/methods/water-analysis.md</remarks>
public static class WaterCheck
{
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
        var place = analysis.Name;
        if (balance.Missing.Count > 0)
        {
            var missing = string.Join(", ", balance.Missing);
            var least = Math.Abs(balance.Gap);
            var side = balance.Gap > 0 ? "anions" : "cations";
            yield return NutrientRules.Finding(
                "water-unknown",
                place,
                "water",
                least > 0.2
                    ? $"Not measured: {missing}. What is known leaves {NutrientRules.Number(least)} meq/L of {side} to be found among them."
                    : $"Not measured: {missing}. They are counted as nothing.",
                missing,
                "measured",
                "Ask for them in the next analysis; till then watch EC and pH of the mix more closely."
            );
        }
        else if (Math.Abs(balance.Gap) > 0.2)
        {
            var relative = Math.Abs(balance.RelativeGap);
            var rule =
                relative > NutrientRules.Limit("water-gap-large") ? "water-gap-large"
                : relative > NutrientRules.Limit("water-gap") ? "water-gap"
                : null;
            if (rule is not null)
            {
                yield return NutrientRules.Finding(
                    rule,
                    place,
                    "water",
                    balance.Gap > 0
                        ? "Cations outweigh anions: chloride, sulfate, nitrate or alkalinity is reported too low or left out, or a cation too high."
                        : "Anions outweigh cations: sodium, potassium or ammonium is reported too low or left out, or an anion too high.",
                    $"{NutrientRules.Number(balance.Cations)} against {NutrientRules.Number(balance.Anions)} meq/L",
                    $"within {NutrientRules.Percent(NutrientRules.Limit(rule))} of their sum",
                    "Check units (as N or as NO3? as CaCO3?) and ask for the analysis again."
                );
            }
        }
        if (filling.HardnessUnsplit)
        {
            yield return NutrientRules.Finding(
                "water-hardness-split",
                place,
                "water.hardness",
                "Hardness is known, but not how much of it is calcium: neither is counted as food.",
                $"{NutrientRules.Number(analysis.Hardness!.Value)} mmol/L",
                "calcium and magnesium apart",
                "Ask for calcium or magnesium; one of them is enough."
            );
        }
        if (WaterConductivity.Misfit(analysis.Conductivity, balance) is { } ratio)
        {
            yield return NutrientRules.Finding(
                "water-ec-off",
                place,
                "water.conductivity",
                $"The EC is {NutrientRules.Number(ratio)} times what the ions tell.",
                $"{NutrientRules.Number(analysis.Conductivity!.Value * 10)} dS/m",
                $"about {NutrientRules.Number(WaterConductivity.Expected(balance) * 10)} dS/m",
                "Calibrate the pen, check that the reading is at 25 °C, and check the units of the analysis."
            );
        }
    }
}
