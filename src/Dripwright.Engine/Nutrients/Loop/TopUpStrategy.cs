using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>How a reservoir is topped up.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Recipe">[mol/m³] What full strength adds to the water.</param>
/// <param name="Factor">[-] Share of the recipe, fixed: 0 for water, 0.5, 1; not looked at when an EC is held.</param>
/// <param name="HeldEc">EC the reservoir is brought back to every day; null for a fixed share.</param>
public sealed record TopUpStrategy(Phrase Name, Composition Recipe, double Factor, Ec? HeldEc = null)
{
    /// <summary>Water, half, full strength and an EC held with one recipe: what growers choose between.</summary>
    /// <param name="recipe">[mol/m³] What full strength adds to the water.</param>
    /// <param name="held">EC to hold.</param>
    public static IReadOnlyList<TopUpStrategy> Usual(Composition recipe, Ec held) =>
        [
            new(Phrase.Of("nutrients.way.water"), recipe, 0),
            new(Phrase.Of("nutrients.way.half"), recipe, 0.5),
            new(Phrase.Of("nutrients.way.full"), recipe, 1),
            new(Phrase.Of("nutrients.way.held", held.Measured), recipe, 0, held),
        ];
}

/// <summary>When water is let out of the loop on purpose.</summary>
/// <param name="BleedPerUptake">[-] Bled all the time, per water taken up.</param>
/// <param name="DumpAbove">[mol/m³] Limits; when the pots pass one at a day's end, the reservoir is dumped and refilled.</param>
public sealed record BleedRule(double BleedPerUptake = 0, IReadOnlyDictionary<Constituent, double>? DumpAbove = null);

/// <summary>What fertiliser weighs and costs.</summary>
/// <param name="KilogramsPerCubicMetre">[kg/m³] Salts in full strength.</param>
/// <param name="PricePerKilogram">[money/kg] Price; nought when it is not known.</param>
public sealed record RecipeCost(double KilogramsPerCubicMetre, decimal PricePerKilogram = 0);
