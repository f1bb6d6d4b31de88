using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>What cannot stand in a water analysis.</summary>
internal static class WaterFaults
{
    private const double LeastPH = 3;
    private const double MostPH = 11;

    // Above this a mole a litre would be a brine, and somebody took µg for mg.
    private const double MostMoles = 1000;
    private const double MostConductivity = 10;

    /// <summary>Numbers that no water has.</summary>
    public static IEnumerable<WaterFault> Numbers(WaterAnalysis analysis)
    {
        var values = analysis
            .Measured.OrderBy(pair => pair.Key)
            .Select(pair =>
                (
                    Field: NutrientPaths.Of(pair.Key),
                    Value: (double?)pair.Value,
                    Measure: (Func<double, Measured>)Measured.Millimoles,
                    Most: MostMoles
                )
            )
            .Append((NutrientPaths.Alkalinity, analysis.Alkalinity, Measured.Milliequivalents, MostMoles))
            .Append((NutrientPaths.Hardness, analysis.Hardness, Measured.Millimoles, MostMoles))
            .Append((NutrientPaths.Conductivity, analysis.Conductivity, Measured.Ec, MostConductivity));
        foreach (var (field, value, measure, most) in values)
        {
            if (value is not { } given)
            {
                continue;
            }
            if (!double.IsFinite(given))
            {
                yield return Of(field, "no-number", Phrase.Of("fault.water.no-number.found"));
            }
            else if (given < 0)
            {
                yield return Of(field, "below-nought", Phrase.Of(measure(given)));
            }
            else if (given > most)
            {
                yield return Of(field, "brine", Phrase.Of(measure(given)));
            }
        }
        if (analysis.PH is { } ph && !(ph is >= LeastPH and <= MostPH))
        {
            yield return Of(
                NutrientPaths.WaterPH,
                "ph",
                double.IsFinite(ph) ? Phrase.Of(Measured.Number(ph)) : Phrase.Of("fault.water.no-number.found")
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
            yield return Of(
                NutrientPaths.Alkalinity,
                "alkalinity-ph",
                Phrase.Of(
                    "fault.water.alkalinity-ph.found",
                    Measured.Milliequivalents(alkalinity),
                    Measured.Number(analysis.PH.Value)
                )
            );
        }
        var cationsKnown =
            (
                analysis.Hardness is not null
                || Has(analysis, Constituent.Calcium) && Has(analysis, Constituent.Magnesium)
            ) && Has(analysis, Constituent.Sodium);
        if (cationsKnown && alkalinity - balance.Cations > Math.Max(0.5, 0.25 * alkalinity))
        {
            yield return Of(
                NutrientPaths.Alkalinity,
                "cations",
                Phrase.Of(
                    "fault.water.cations.found",
                    Measured.Milliequivalents(alkalinity),
                    Measured.Milliequivalents(balance.Cations)
                )
            );
        }
        if (analysis.Conductivity is not { } conductivity)
        {
            yield break;
        }
        if (WaterConductivity.TooLow(conductivity, balance))
        {
            var charge = Math.Max(balance.Cations, balance.Anions);
            yield return Of(
                NutrientPaths.Conductivity,
                "ec-low",
                Ions(conductivity, charge),
                Measured.Ec(charge * 0.007)
            );
        }
        else if (WaterConductivity.TooHigh(conductivity, balance))
        {
            yield return Of(
                NutrientPaths.Conductivity,
                "ec-high",
                Ions(conductivity, (balance.Cations + balance.Anions) / 2),
                Measured.Ec(WaterConductivity.Expected(balance))
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
            yield return Of(
                NutrientPaths.Hardness,
                "hardness",
                Phrase.Of("fault.water.hardness.found", Measured.Millimoles(hardness), Measured.Millimoles(ca + mg))
            );
        }
    }

    private static WaterFault Of(string field, string name, Phrase found, params ReadOnlySpan<object> why) =>
        new(field, found, Phrase.Of($"fault.water.{name}.why", why), Phrase.Of($"fault.water.{name}.remedy"));

    private static Phrase Ions(double conductivity, double charge) =>
        Phrase.Of("fault.water.ions", Measured.Ec(conductivity), Measured.Milliequivalents(charge));

    private static bool Has(WaterAnalysis analysis, Constituent constituent) =>
        analysis.Measured.ContainsKey(constituent);
}
