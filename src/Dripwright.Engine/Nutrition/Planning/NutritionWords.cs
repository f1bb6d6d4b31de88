using System.Globalization;
using Dripwright.Engine.Nutrition.Chemistry;
using Dripwright.Engine.Nutrition.Loop;

namespace Dripwright.Engine.Nutrition.Planning;

/// <summary>What a forecast says in words, the same on the screen and on paper.</summary>
public static class NutritionWords
{
    /// <summary>The element that plants first get too little of, with its day: "K, day 15"; "none".</summary>
    /// <remarks>Ammonium is left out: nitrate takes its place.</remarks>
    /// <param name="outcome">How a loop fared.</param>
    public static string FirstInWant(LoopOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var wanting = outcome
            .Wanting.Where(pair => pair.Key != Constituent.AmmoniumNitrogen)
            .OrderBy(pair => pair.Value)
            .ThenBy(pair => pair.Key)
            .ToList();
        return wanting.Count == 0
            ? "none"
            : $"{Forms.ShortName(wanting[0].Key)}, day {wanting[0].Value.ToString(CultureInfo.InvariantCulture)}";
    }
}
