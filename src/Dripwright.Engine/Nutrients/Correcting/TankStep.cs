using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>What one step of a correction does.</summary>
public enum TankStepKind
{
    /// <summary>Drain some.</summary>
    Drain,

    /// <summary>Add water.</summary>
    Water,

    /// <summary>Pour stock A in.</summary>
    StockA,

    /// <summary>Pour stock B in.</summary>
    StockB,

    /// <summary>Weigh, dissolve and pour in salts.</summary>
    Salts,

    /// <summary>Pour acid or base in.</summary>
    PH,

    /// <summary>Let it mix and read again.</summary>
    Read,
}

/// <summary>One step of a correction, in the order to be done.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Volume">[m³] How much; nought for a reading and for salts.</param>
/// <param name="Text">What to do, with its amount.</param>
/// <param name="ExpectedEc">[dS/m] What EC should read then; null where it is not read.</param>
public sealed record TankStep(TankStepKind Kind, double Volume, Phrase Text, double? ExpectedEc = null)
{
    /// <summary>What is weighed for it; empty for other steps.</summary>
    public IReadOnlyList<WeighedSalt> Weigh { get; init; } = [];
}

/// <summary>How a tank is brought to its target.</summary>
/// <param name="Drained">[m³] Drained first.</param>
/// <param name="Water">[m³] Water added.</param>
/// <param name="StockEach">[m³] Of stock A, and the same of stock B; nought where salts are weighed.</param>
/// <param name="FinalVolume">[m³] In the tank afterwards, before acid or base.</param>
/// <param name="FinalEc">[dS/m] EC expected afterwards.</param>
/// <param name="PH">Acid or base; null where it cannot be said or none is needed.</param>
/// <param name="Steps">What to do, in order.</param>
/// <param name="Notes">What else to know.</param>
/// <param name="Cautions">What to mind with the bottles used.</param>
public sealed record TankPlan(
    double Drained,
    double Water,
    double StockEach,
    double FinalVolume,
    double FinalEc,
    PhDose? PH,
    IReadOnlyList<TankStep> Steps,
    IReadOnlyList<Phrase> Notes,
    IReadOnlyList<Phrase> Cautions
)
{
    /// <summary>[m³] The salts given, as the volume of full-strength feed that they would make; nought where stock is poured.</summary>
    public double SaltsFor { get; init; }

    /// <summary>[-] pH expected before acid or base; null where it cannot be said.</summary>
    public double? MixedPH { get; init; }

    /// <summary>[-] pH that a pen reads when all is poured and mixed; null where it cannot be said.</summary>
    public double? PHAtOnce { get; init; }

    /// <summary>[-] pH that it reads after a day of bubbling; null where it cannot be said.</summary>
    public double? PHAfterDay { get; init; }

    /// <summary>[mol/m³] What the tank holds then; null where it is not known.</summary>
    public Composition? Mixed { get; init; }
}
