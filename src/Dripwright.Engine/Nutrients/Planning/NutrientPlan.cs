using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>What a rig's reservoir is filled with, and how it fares over weeks.</summary>
/// <remarks>Method pages: docs/methods/recipe.md, water-analysis.md, nutrient-targets.md, solution-ec.md, solution-ph.md, closed-loop.md</remarks>
public sealed record NutrientPlan
{
    /// <summary>What the crop is fed at its stage.</summary>
    public required CropStage Stage { get; init; }

    /// <summary>The crop.</summary>
    public required CropType Crop { get; init; }

    /// <summary>What the crop is taken to take up in a loop.</summary>
    public required NutrientTarget LoopTarget { get; init; }

    /// <summary>What sodium the crop tolerates.</summary>
    public required SodiumLimit SodiumLimit { get; init; }

    /// <summary>Three capital letters: the currency of every cost.</summary>
    public required string Currency { get; init; }

    /// <summary>[m³] Reservoir at its full mark.</summary>
    public required double Volume { get; init; }

    /// <summary>The water as its analysis was judged.</summary>
    public required WaterReading Water { get; init; }

    /// <summary>What is filled in: that water with its share of rain or reverse-osmosis water.</summary>
    public required WaterSupply Filled { get; init; }

    /// <summary>The EC of what is filled in.</summary>
    public required Ec FilledEc { get; init; }

    /// <summary>[mol/m³ of charge] What the analysis of that water leaves open, positive for cations not named.</summary>
    public double Gap { get; init; }

    /// <summary>The EC wanted.</summary>
    public required Ec Wanted { get; init; }

    /// <summary>[-] pH wanted.</summary>
    public required double WantedPH { get; init; }

    /// <summary>The recipe, for the reservoir, or for what one filling of the cans makes.</summary>
    public required NutrientRecipe Recipe { get; init; }

    /// <summary>Where the amounts wanted come from.</summary>
    public required Phrase TargetSource { get; init; }

    /// <summary>Salts that would reach what the salts at hand miss.</summary>
    public required IReadOnlyList<SaltCure> Cures { get; init; }

    /// <summary>The cans; null where salts go straight into the tank.</summary>
    public required StockPlan? Stock { get; init; }

    /// <summary>EC the feed will read, by the main method.</summary>
    public required Ec Ec { get; init; }

    /// <summary>EC by the simple cation rule, beside it.</summary>
    public required Ec CationRule { get; init; }

    /// <summary>[-] pH when the tank has come to rest with the air; null where none can be computed.</summary>
    public required double? PH { get; init; }

    /// <summary>[m³] Acid from the grower's bottle for a full reservoir; 0 where none is needed or at hand.</summary>
    public required double AcidVolume { get; init; }

    /// <summary>[-] pH right after mixing, while the carbon dioxide that acid sets free is still there; null where there is none.</summary>
    public double? MixedPH { get; init; }

    /// <summary>The next weeks; null where plants take nothing or more than is dripped.</summary>
    public required NutrientOutlook? Outlook { get; init; }

    /// <summary>The grower's acid; null where none is at hand.</summary>
    public Salt? Acid { get; init; }

    /// <summary>How raw coir is made ready; null where it is not raw.</summary>
    public required CoirTreatment? Coir { get; init; }

    /// <summary>What is to be said, each with the rig file's field that cures it.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>[mol/m³] What the salts add to the water.</summary>
    public Composition Added => Recipe.Composition - Filled.Composition;
}

/// <summary>A loop over the next weeks, topped up in several ways.</summary>
/// <param name="Days">How many days were followed.</param>
/// <param name="Limit">What sodium the crop tolerates.</param>
/// <param name="Ways">Water, half, full strength, and the EC held; the last is the usual one.</param>
/// <param name="Dumping">The EC held, and the reservoir changed whenever the pots pass the sodium limit; null where they never do.</param>
/// <param name="Hidden">What the EC hides at the end of the last way, the most hidden first.</param>
public sealed record NutrientOutlook(
    int Days,
    SodiumLimit Limit,
    IReadOnlyList<LoopOutcome> Ways,
    LoopOutcome? Dumping,
    IReadOnlyList<HiddenIon> Hidden
)
{
    /// <summary>All ways, the one with dumping last where there is one.</summary>
    public IReadOnlyList<LoopOutcome> All => Dumping is null ? Ways : [.. Ways, Dumping];

    /// <summary>The EC held every day.</summary>
    public LoopOutcome Held => Ways[^1];

    /// <summary>First day on which the pots hold more sodium than the crop tolerates, with the EC held; null when they do not.</summary>
    public int? SodiumDay => Held.PastLimit.TryGetValue(Constituent.Sodium, out var day) ? day : null;
}
