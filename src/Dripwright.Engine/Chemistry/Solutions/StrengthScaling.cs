using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>How much of a recipe in a water reads a wanted EC.</summary>
/// <param name="Factor">[-] Share of the recipe, 1 for full strength.</param>
/// <param name="Solution">[mol/m³] Water and that share of the recipe.</param>
public sealed record ScaledSolution(double Factor, Composition Solution);

/// <summary>Makes a recipe stronger or weaker until it reads a wanted EC.</summary>
public static class StrengthScaling
{
    /// <summary>[-] Largest factor tried.</summary>
    public const double LargestFactor = 10;

    /// <summary>The share of a recipe that reads a wanted EC in a water.</summary>
    /// <param name="water">[mol/m³] What the water holds.</param>
    /// <param name="recipe">[mol/m³] What full strength adds to it.</param>
    /// <param name="target">EC wanted at 25 °C.</param>
    /// <param name="ph">[-] pH it is read at, 4 to 9.</param>
    /// <returns>The share and the solution, or why there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, or the pH is outside the range.</exception>
    public static Answer<ScaledSolution> ToEc(Composition water, Composition recipe, Ec target, double ph)
    {
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(recipe);
        Guard.Between(ph, 4, 9);
        var plain = Conductivity.Of(water, ph, SolutionConditions.Closed);
        if (plain > target)
        {
            return Answer<ScaledSolution>.No(Unanswerable.Of("water-over-target", plain.Measured, target.Measured));
        }

        var over = new Over(water, recipe, target, ph);
        if (over.At(LargestFactor) < 0)
        {
            return Answer<ScaledSolution>.No(
                Unanswerable.Of("recipe-too-weak", Measured.Number(LargestFactor), target.Measured)
            );
        }

        var factor = Bracket.Root(over, 0, LargestFactor);
        return Answer<ScaledSolution>.Of(new ScaledSolution(factor, water + (recipe * factor)));
    }

    private readonly struct Over(Composition water, Composition recipe, Ec target, double ph) : IOneNumber
    {
        // A search may pass the range of the activities; the root is checked by its EC, which no tank near that range has.
        public double At(double x) =>
            Conductivity.Of(Speciation.Within(water + (recipe * x), ph, SolutionConditions.Closed)).DecisiemensPerMetre
            - target.DecisiemensPerMetre;
    }
}
