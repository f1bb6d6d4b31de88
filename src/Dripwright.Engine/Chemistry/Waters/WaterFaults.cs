using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>What cannot stand in a water analysis.</summary>
internal static class WaterFaults
{
    private const double LeastPH = 3;
    private const double MostPH = 11;

    // Above this a mole a litre would be a brine, and somebody took µg for mg.
    private const double MostMoles = 1000;

    /// <summary>Numbers that no water has.</summary>
    public static IEnumerable<WaterFault> Numbers(WaterAnalysis analysis)
    {
        var values = analysis
            .Measured.OrderBy(pair => pair.Key)
            .Select(pair =>
                (Field: NutrientPaths.Of(pair.Key), Value: (double?)pair.Value, Unit: "mmol/L", Most: MostMoles)
            )
            .Append((NutrientPaths.Alkalinity, analysis.Alkalinity, "meq/L", MostMoles))
            .Append((NutrientPaths.Hardness, analysis.Hardness, "mmol/L", MostMoles))
            .Append((NutrientPaths.Conductivity, analysis.Conductivity * 10, "dS/m", 100.0));
        foreach (var (field, value, unit, most) in values)
        {
            if (value is not { } given)
            {
                continue;
            }
            if (!double.IsFinite(given))
            {
                yield return new(field, "no number", "It is not a number.", "Leave out what was not measured.");
            }
            else if (given < 0)
            {
                yield return new(
                    field,
                    $"{Number(given)} {unit}",
                    "No amount is below 0.",
                    "\"Below 0.1\" in a report is 0 or left out, never minus."
                );
            }
            else if (given > most)
            {
                yield return new(
                    field,
                    $"{Number(given)} {unit}",
                    "This would be a brine.",
                    "Check the unit: mg/L, µg/L, mS/cm or µS/cm?"
                );
            }
        }
        if (analysis.PH is { } ph && !(ph is >= LeastPH and <= MostPH))
        {
            yield return new(
                NutrientPaths.WaterPH,
                double.IsFinite(ph) ? Number(ph) : "no number",
                "No water for growing has such a pH.",
                "Calibrate the meter with fresh pH 7 and pH 4 solutions."
            );
        }
    }

    /// <summary>Numbers that cannot stand together.</summary>
    public static IEnumerable<WaterFault> Sums(WaterAnalysis analysis, WaterFilling filling)
    {
        foreach (var fault in HardnessFaults(analysis))
        {
            yield return fault;
        }
        var balance = filling.Balance;
        var alkalinity = analysis.Alkalinity ?? 0;
        if (alkalinity > 0.1 && analysis.PH is < 4.3)
        {
            yield return new(
                NutrientPaths.Alkalinity,
                $"{Number(alkalinity)} meq/L at pH {Number(analysis.PH.Value)}",
                "Below about pH 4.3 all alkalinity is used up; that is where its titration ends.",
                "Check the pH, or whether the figure is acidity."
            );
        }
        var cationsKnown =
            (
                analysis.Hardness is not null
                || Has(analysis, Constituent.Calcium) && Has(analysis, Constituent.Magnesium)
            ) && Has(analysis, Constituent.Sodium);
        if (cationsKnown && alkalinity - balance.Cations > Math.Max(0.5, 0.25 * alkalinity))
        {
            yield return new(
                NutrientPaths.Alkalinity,
                $"{Number(alkalinity)} meq/L against {Number(balance.Cations)} meq/L of cations",
                "Bicarbonate needs a partner: calcium, magnesium, sodium or potassium of the same charge.",
                "Check the unit of the alkalinity (as CaCO3, as HCO3 or meq/L) and of the cations."
            );
        }
        if (analysis.Conductivity is not { } conductivity)
        {
            yield break;
        }
        if (WaterConductivity.TooLow(conductivity, balance))
        {
            var charge = Math.Max(balance.Cations, balance.Anions);
            yield return new(
                NutrientPaths.Conductivity,
                $"{Number(conductivity * 10)} dS/m with {Number(charge)} meq/L of ions",
                $"So many ions carry at least {Number(charge * 0.07)} dS/m.",
                "Check the units of the analysis (mg/L or mmol/L? dS/m or µS/cm?) and calibrate the meter."
            );
        }
        else if (WaterConductivity.TooHigh(conductivity, balance))
        {
            yield return new(
                NutrientPaths.Conductivity,
                $"{Number(conductivity * 10)} dS/m with {Number((balance.Cations + balance.Anions) / 2)} meq/L of ions",
                $"The ions reported carry about {Number(WaterConductivity.Expected(balance) * 10)} dS/m.",
                "An ion is missing, or a unit is wrong: dS/m, mS/cm or µS/cm?"
            );
        }
    }

    private static IEnumerable<WaterFault> HardnessFaults(WaterAnalysis analysis)
    {
        if (analysis.Hardness is not { } hardness)
        {
            yield break;
        }
        var calcium = analysis.Measured.TryGetValue(Constituent.Calcium, out var ca);
        var magnesium = analysis.Measured.TryGetValue(Constituent.Magnesium, out var mg);
        var room = Math.Max(0.15, 0.2 * hardness);
        if (ca + mg - hardness > room || calcium && magnesium && hardness - ca - mg > room)
        {
            yield return new(
                NutrientPaths.Hardness,
                $"{Number(hardness)} mmol/L against {Number(ca + mg)} mmol/L of calcium and magnesium",
                "Hardness is calcium and magnesium together.",
                "Check the unit of the hardness: mg/L as CaCO3, degrees or mmol/L?"
            );
        }
    }

    private static string Number(double value) =>
        QuantityWords.Number(
            value,
            Math.Abs(value) is >= 100 or 0 ? "0"
                : Math.Abs(value) >= 10 ? "0.#"
                : Math.Abs(value) >= 0.1 ? "0.##"
                : "0.####"
        );

    private static bool Has(WaterAnalysis analysis, Constituent constituent) =>
        analysis.Measured.ContainsKey(constituent);
}
