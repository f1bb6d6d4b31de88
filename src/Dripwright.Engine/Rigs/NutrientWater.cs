using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>A water analysis as its report words it: each line is a number, a unit and, where it is open, the form.</summary>
public sealed record NutrientWater
{
    /// <summary>Alkalinity.</summary>
    [
        Text(40),
        FoundByPlan("not measured"),
        Says(
            "Alkalinity (carbonate hardness): \"150 mg/L as CaCO3\", \"183 mg/L as HCO3\", \"3 meq/L\", \"8.4 dKH\", \"15 fH\" or \"8.8 gpg\"."
        )
    ]
    public string? Alkalinity { get; init; }

    /// <summary>Hardness.</summary>
    [
        Text(40),
        FoundByPlan("not measured"),
        Says("Total hardness: \"200 mg/L as CaCO3\", \"2 mmol/L\", \"11 dH\", \"20 fH\" or \"12 gpg\".")
    ]
    public string? Hardness { get; init; }

    /// <summary>Calcium.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Calcium: \"60 mg/L\", \"1.5 mmol/L\" or \"3 meq/L\".")]
    public string? Calcium { get; init; }

    /// <summary>Magnesium.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Magnesium: \"12 mg/L\".")]
    public string? Magnesium { get; init; }

    /// <summary>Sodium.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Sodium: \"23 mg/L\".")]
    public string? Sodium { get; init; }

    /// <summary>Potassium.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Potassium: \"3 mg/L\".")]
    public string? Potassium { get; init; }

    /// <summary>Chloride.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Chloride: \"35 mg/L\".")]
    public string? Chloride { get; init; }

    /// <summary>Sulfate.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Sulfate, with its form: \"48 mg/L as SO4\" or \"16 mg/L as S\".")]
    public string? Sulfate { get; init; }

    /// <summary>Nitrate.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Nitrate, with its form: \"20 mg/L as NO3\" or \"4.5 mg/L as N\".")]
    public string? Nitrate { get; init; }

    /// <summary>Ammonium.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Ammonium, with its form: \"0.5 mg/L as NH4\" or \"0.4 mg/L as N\".")]
    public string? Ammonium { get; init; }

    /// <summary>Phosphate.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Phosphate, with its form: \"2 mg/L as PO4\" or \"0.7 mg/L as P\".")]
    public string? Phosphate { get; init; }

    /// <summary>Boron.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Boron: \"0.1 mg/L\" or \"100 ug/L\".")]
    public string? Boron { get; init; }

    /// <summary>Iron.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Iron: \"0.1 mg/L\"; \"<0.05 mg/L\" counts as none.")]
    public string? Iron { get; init; }

    /// <summary>Manganese.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Manganese: \"0.02 mg/L\".")]
    public string? Manganese { get; init; }

    /// <summary>Zinc.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Zinc: \"0.1 mg/L\".")]
    public string? Zinc { get; init; }

    /// <summary>Copper.</summary>
    [Text(40), FoundByPlan("not measured"), Says("Copper: \"0.05 mg/L\" or \"50 ug/L\".")]
    public string? Copper { get; init; }

    /// <summary>[S/m] Conductivity at 25 °C.</summary>
    [
        Quantity(Dimension.Conductivity, "0 dS/m", "20 dS/m"),
        FoundByPlan("not measured"),
        Says("Strength (EC) of the water at 25 °C: \"0.6 dS/m\", \"600 uS/cm\" or \"6 CF\".")
    ]
    public double? Conductivity { get; init; }

    /// <summary>[-] pH.</summary>
    [Ph(0, 14), FoundByPlan("not measured"), Says("pH of the water, such as 7.6.")]
    public double? Ph { get; init; }
}
