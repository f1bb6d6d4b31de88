using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>What a forecast follows and calls by name, the same on the screen and on paper.</summary>
public static class NutrientWords
{
    /// <summary>The elements that feed in quantity; ammonium comes and goes, and traces are small.</summary>
    public static IReadOnlyList<Constituent> Main { get; } =
    [
        Constituent.NitrateNitrogen,
        Constituent.Phosphorus,
        Constituent.Potassium,
        Constituent.Calcium,
        Constituent.Magnesium,
        Constituent.Sulfur,
    ];

    /// <summary>The elements whose drift is followed: the main ones, and those that build up and have limits of their own.</summary>
    public static IReadOnlyList<Constituent> Followed { get; } = [.. Main, Constituent.Sodium, Constituent.Chloride];

    /// <summary>What to call a way of topping up; the one in which the reservoir is changed has its own name.</summary>
    /// <param name="outlook">The forecast.</param>
    /// <param name="way">One of its ways.</param>
    public static Phrase NameOf(NutrientOutlook outlook, LoopOutcome way)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(way);
        return ReferenceEquals(way, outlook.Dumping)
            ? Phrase.Of("nutrients.way.changed", way.Strategy.Name)
            : way.Strategy.Name;
    }

    /// <summary>The element that plants first get too little of, with its day: "K, day 15"; "none".</summary>
    /// <remarks>Ammonium is left out: nitrate takes its place.</remarks>
    /// <param name="outcome">How a loop fared.</param>
    public static Phrase RunsShortFirst(LoopOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var wanting = outcome
            .Wanting.Where(pair => pair.Key != Constituent.AmmoniumNitrogen)
            .OrderBy(pair => pair.Value)
            .ThenBy(pair => pair.Key)
            .ToList();
        return wanting.Count == 0
            ? Phrase.Of("nutrients.short.none")
            : Phrase.Of("nutrients.short.day", Elements.Short(wanting[0].Key), wanting[0].Value);
    }
}
