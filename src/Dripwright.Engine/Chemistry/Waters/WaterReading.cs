using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>One thing that cannot be in a water analysis.</summary>
/// <param name="Field">Path of the rig file's field that holds the value at fault.</param>
/// <param name="Found">What is reported.</param>
/// <param name="Why">Why it cannot be.</param>
/// <param name="Remedy">What to look at.</param>
public sealed record WaterFault(string Field, Phrase Found, Phrase Why, Phrase Remedy);

/// <summary>A part of the analysis that was not measured but follows from the rest.</summary>
/// <param name="What">What was found.</param>
/// <param name="Value">[mol/m³] How much.</param>
/// <param name="Why">From what it follows.</param>
public sealed record WaterCompletion(Phrase What, double Value, Phrase Why);

/// <summary>Sums of charge of a water.</summary>
/// <param name="Cations">[mol/m³ of charge] Calcium, magnesium, sodium, potassium, ammonium.</param>
/// <param name="Anions">[mol/m³ of charge] Alkalinity, chloride, sulfate, nitrate, phosphate.</param>
/// <param name="Complete">True when every main ion was measured or follows from the others.</param>
/// <param name="Missing">Main ions that are neither measured nor follow.</param>
public sealed record ChargeBalance(double Cations, double Anions, bool Complete, IReadOnlyList<Phrase> Missing)
{
    /// <summary>[mol/m³ of charge] Cations less anions.</summary>
    public double Gap => Cations - Anions;

    /// <summary>[-] Gap over the sum of both; 0 for pure water.</summary>
    public double RelativeGap => Cations + Anions > 0 ? Gap / (Cations + Anions) : 0;
}

/// <summary>A water of which enough is known to mix a feed with it.</summary>
/// <param name="Name">What the grower calls it.</param>
/// <param name="Composition">[mol/m³] What it brings.</param>
/// <param name="Alkalinity">[mol/m³ of charge] Acid it takes up.</param>
/// <param name="Conductivity">[S/m] At 25 °C as measured; null where it was not.</param>
/// <param name="PH">[-] As measured; null where it was not.</param>
public sealed record WaterSupply(
    Phrase Name,
    Composition Composition,
    double Alkalinity,
    double? Conductivity = null,
    double? PH = null
)
{
    /// <summary>Pure water, as rain or reverse osmosis nearly gives.</summary>
    public static WaterSupply Pure { get; } = new(Phrase.Of("water.pure"), Composition.Nothing, 0, 0);
}

/// <summary>What came of judging a water analysis.</summary>
/// <param name="Supply">The water; null when the analysis cannot be.</param>
/// <param name="Balance">Its charges; null when the analysis cannot be.</param>
/// <param name="Completions">What was not measured but follows.</param>
/// <param name="Faults">What cannot be.</param>
/// <param name="Findings">What is unusual, missing or too much.</param>
public sealed record WaterReading(
    WaterSupply? Supply,
    ChargeBalance? Balance,
    IReadOnlyList<WaterCompletion> Completions,
    IReadOnlyList<WaterFault> Faults,
    IReadOnlyList<Finding> Findings
);
