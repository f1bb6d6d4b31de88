using Dripwright.Engine.Files;

namespace Dripwright.Engine.Rigs;

/// <summary>The grower's own amounts of elements in the feed, in the units of a water report.</summary>
public sealed record NutrientWanted
{
    /// <summary>Nitrate nitrogen.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Nitrate nitrogen, with its form: \"190 mg/L as N\".")]
    public string? Nitrate { get; init; }

    /// <summary>Ammonium nitrogen.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Ammonium nitrogen, with its form: \"14 mg/L as N\".")]
    public string? Ammonium { get; init; }

    /// <summary>Phosphorus.</summary>
    [
        Text(40),
        FoundByPlan("as the target has it"),
        Says("Phosphorus, as the element or \"92 mg/L as P2O5\": \"40 mg/L\".")
    ]
    public string? Phosphorus { get; init; }

    /// <summary>Potassium.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Potassium: \"310 mg/L\".")]
    public string? Potassium { get; init; }

    /// <summary>Calcium.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Calcium: \"190 mg/L\".")]
    public string? Calcium { get; init; }

    /// <summary>Magnesium.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Magnesium: \"48 mg/L\".")]
    public string? Magnesium { get; init; }

    /// <summary>Sulfate.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Sulfate, with its form: \"70 mg/L as S\".")]
    public string? Sulfate { get; init; }

    /// <summary>Iron.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Iron: \"2 mg/L\".")]
    public string? Iron { get; init; }

    /// <summary>Manganese.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Manganese: \"0.55 mg/L\".")]
    public string? Manganese { get; init; }

    /// <summary>Zinc.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Zinc: \"0.33 mg/L\".")]
    public string? Zinc { get; init; }

    /// <summary>Boron.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Boron: \"0.3 mg/L\".")]
    public string? Boron { get; init; }

    /// <summary>Copper.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Copper: \"0.05 mg/L\".")]
    public string? Copper { get; init; }

    /// <summary>Molybdenum.</summary>
    [Text(40), FoundByPlan("as the target has it"), Says("Molybdenum: \"0.05 mg/L\".")]
    public string? Molybdenum { get; init; }
}
