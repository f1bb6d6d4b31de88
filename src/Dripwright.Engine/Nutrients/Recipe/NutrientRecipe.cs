using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>How one fertiliser goes into the feed.</summary>
/// <param name="Salt">Which.</param>
/// <param name="Concentration">[kg/m³] How much a cubic metre of feed gets; the same number as g/L.</param>
/// <param name="Mass">[kg] How much the whole volume gets.</param>
/// <param name="Weighed">[kg] The same, rounded to the scale, or to the measure for a liquid.</param>
/// <param name="Measured">[m³] What to measure out of a liquid, rounded; null for a solid.</param>
public sealed record RecipeLine(Salt Salt, double Concentration, double Mass, double Weighed, double? Measured);

/// <summary>How one element came out.</summary>
public enum ElementVerdict
{
    /// <summary>Within the tolerance.</summary>
    Reached,

    /// <summary>Less than wanted: no mix of these salts brings it without harming others more.</summary>
    Under,

    /// <summary>More than wanted, because it comes along with others.</summary>
    Over,

    /// <summary>More than wanted in the water alone.</summary>
    WaterOver,

    /// <summary>Not asked for.</summary>
    NotAsked,
}

/// <summary>One element's part in the feed.</summary>
/// <param name="Constituent">Which.</param>
/// <param name="Wanted">[mol/m³] What the target asks for; null where it asks for nothing in particular.</param>
/// <param name="FromWater">[mol/m³] What the water brings.</param>
/// <param name="FromSalts">[mol/m³] What the fertilisers and acids bring.</param>
/// <param name="Weighed">[mol/m³] The sum after rounding to the scale.</param>
/// <param name="Tolerance">[-] Miss over target that still counts as reached.</param>
/// <param name="Verdict">How it came out.</param>
public sealed record ElementResult(
    Constituent Constituent,
    double? Wanted,
    double FromWater,
    double FromSalts,
    double Weighed,
    double Tolerance,
    ElementVerdict Verdict
)
{
    /// <summary>[mol/m³] What the feed holds before rounding.</summary>
    public double Result => FromWater + FromSalts;

    /// <summary>[-] Miss over target (over 1 or 0.01 mol/m³ where nothing is wanted); null where not asked for.</summary>
    public double? Miss => Wanted is { } wanted ? (Result - wanted) / FitWeights.ScaleOf(Constituent, wanted) : null;
}

/// <summary>A way round a scale that is too coarse.</summary>
/// <param name="Salt">What is weighed too coarsely.</param>
/// <param name="RoundingError">[-] Half a step of the scale over what is to be weighed.</param>
/// <param name="SmallestBatch">[m³] Volume of feed from which on it is weighed well enough.</param>
/// <param name="Weigh">[kg] For a pre-dilution: weigh so much …</param>
/// <param name="Into">[m³] … fill up with water to so much …</param>
/// <param name="Take">[m³] … and take so much of it; null where even this is too little to measure.</param>
public sealed record CoarseCure(
    Salt Salt,
    double RoundingError,
    double SmallestBatch,
    double Weigh,
    double Into,
    double? Take
);

/// <summary>A feed: what to weigh and what comes of it.</summary>
public sealed record NutrientRecipe
{
    /// <summary>What was asked.</summary>
    public required RecipeJob Job { get; init; }

    /// <summary>Fertilisers and acids that go in, by key.</summary>
    public required IReadOnlyList<RecipeLine> Lines { get; init; }

    /// <summary>[mol/m³] What the feed holds, the water's part in it. The acid's H⁺ takes away as much alkalinity.</summary>
    public required Composition Composition { get; init; }

    /// <summary>Each element that is asked for or present.</summary>
    public required IReadOnlyList<ElementResult> Elements { get; init; }

    /// <summary>[mol/m³] H⁺ that the water's alkalinity asks for.</summary>
    public required double AcidDemand { get; init; }

    /// <summary>[mol/m³] H⁺ that is given.</summary>
    public required double AcidGiven { get; init; }

    /// <summary>[mol/m³ of charge] Alkalinity that stays.</summary>
    public required double Alkalinity { get; init; }

    /// <summary>[-] Ammonium's share of the nitrogen; 0 where there is none.</summary>
    public required double AmmoniumShare { get; init; }

    /// <summary>[-] Σ (weight · miss)², what the fit made least.</summary>
    public required double Misfit { get; init; }

    /// <summary>[currency] Cost of the whole volume, in the catalogue's currency, as far as prices are known.</summary>
    public required decimal Cost { get; init; }

    /// <summary>Fertilisers in the recipe whose price is not known.</summary>
    public required IReadOnlyList<string> Unpriced { get; init; }

    /// <summary>Fertilisers that the scale cannot weigh well enough at this volume.</summary>
    public required IReadOnlyList<CoarseCure> Coarse { get; init; }

    /// <summary>False where the search was cut short; the amounts then hold all limits but may not be the best.</summary>
    public required bool Optimal { get; init; }

    /// <summary>What is to be said, the gravest first.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
