using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>How the nutrients are mixed.</summary>
public enum NutrientMixing
{
    /// <summary>Salts straight into the reservoir.</summary>
    Tank,

    /// <summary>Two cans of concentrate, A and B.</summary>
    Cans,
}

/// <summary>What the reservoir is filled with: crop, water and salts.</summary>
/// <remarks>Not called feed: that is the pipework from the pump to the emitters.</remarks>
public sealed record NutrientMix
{
    /// <summary>Key of the crop; "none" for no recipe.</summary>
    [
        PartKey(PartGroup.Crops, "none", "none", Or = "none"),
        Says("Crop that the nutrients are for, from the catalogue; \"none\" for no recipe.")
    ]
    public string Crop { get; init; } = "none";

    /// <summary>How far the crop is.</summary>
    [Choice("young"), Says("How far the crop is.")]
    public GrowthStage Stage { get; init; }

    /// <summary>Whose proportions of elements.</summary>
    [
        PartKey(PartGroup.Targets, "usual", "usual", Or = "usual"),
        Says(
            "Whose proportions of elements: \"usual\" for those of crop and stage, which are what the crop takes up in a closed loop where that is published; or the key of a target of the catalogue."
        )
    ]
    public string Target { get; init; } = "usual";

    /// <summary>[S/m] Strength wanted at 25 °C.</summary>
    [
        Quantity(Dimension.Conductivity, "0.2 dS/m", "6 dS/m"),
        FoundByPlan("the strength usual for crop and stage"),
        Says("Strength (EC) wanted at 25 °C, in dS/m or mS/cm, which are the same number.")
    ]
    public double? Strength { get; init; }

    /// <summary>[-] pH wanted.</summary>
    [Ph(5, 7, Assumed = 5.8), Says("pH wanted in the reservoir.")]
    public double Ph { get; init; } = 5.8;

    /// <summary>What is known of the water.</summary>
    [Says("Your water, as its analysis reports it. Leave out what was not measured.")]
    public NutrientWater Water { get; init; } = new();

    /// <summary>[-] Share of rain or reverse-osmosis water.</summary>
    [
        Quantity(Dimension.Share, "0 %", "100 %", Us = "0 %"),
        Says("Share of rain or reverse-osmosis water in what you fill with; it counts as pure.")
    ]
    public double PureShare { get; init; }

    /// <summary>Salts at hand; null for the usual ones.</summary>
    [
        Items(0, 60),
        FoundByPlan("the usual eleven, or none where there are bags: see the handbook's page on nutrients"),
        Says("Salts at hand. Their order does not matter.")
    ]
    public IReadOnlyList<NutrientSalt>? Salts { get; init; }

    /// <summary>Bags and bottles of feed at hand, by their labels.</summary>
    [
        Items(0, 12),
        Says(
            "Bags and bottles of feed, entered as their labels have them. Where you name bags and no salts, the bags are all you have."
        )
    ]
    public IReadOnlyList<NutrientBag> Bags { get; init; } = [];

    /// <summary>Acid at hand.</summary>
    [PartKey(PartGroup.Acids, "none", "none", Or = "none"), Says("Acid bottle at hand, or \"none\".")]
    public string Acid { get; init; } = "none";

    /// <summary>How the nutrients are mixed.</summary>
    [Choice("tank"), Says("Salts straight into the reservoir, or two stock tanks, A and B.")]
    public NutrientMixing Mixing { get; init; }

    /// <summary>Parts of feed that one part of each concentrate makes.</summary>
    [Whole(2, 1000, 100), Says("One part of each stock in so many parts of nutrients; 100 is 10 mL in a litre.")]
    public int PartsOfFeed { get; init; } = 100;

    /// <summary>[m³] One can.</summary>
    [
        Quantity(Dimension.Volume, "0.1 gal", "300 gal", Us = "5 gal", Metric = "20 L"),
        Says("Volume to which each stock tank is filled.")
    ]
    public double CanVolume { get; init; } = 0.02;

    /// <summary>[kg] Smallest step of the scale.</summary>
    [Quantity(Dimension.Mass, "0.001 g", "100 g", Us = "0.1 g"), Says("Smallest weight your scale shows.")]
    public double ScaleStep { get; init; } = 0.0001;

    /// <summary>[K] The coldest that the cans are stored at.</summary>
    [
        Quantity(Dimension.Temperature, "33 F", "104 F", Us = "50 F", Metric = "10 C"),
        Says("Coldest storage temperature of the stock tanks.")
    ]
    public double StoreTemperature { get; init; } = 283.15;

    /// <summary>Whether the pots are filled with raw coir.</summary>
    [Choice("false"), Says("Whether the coir is unbuffered: neither washed nor buffered.")]
    public bool RawCoir { get; init; }

    /// <summary>The grower's own amounts.</summary>
    [Says(
        "Your own amounts of elements in the nutrients; those left out stay as the target has them at its usual strength. With a strength of your own all are scaled to it together; without one the nutrients are as strong as the amounts make it."
    )]
    public NutrientWanted Wanted { get; init; } = new();
}

/// <summary>One salt that the grower has.</summary>
public sealed record NutrientSalt
{
    /// <summary>Key of the salt.</summary>
    [PartKey(PartGroup.Salts), Says("The salt's key in the catalogue.")]
    public string Salt { get; init; } = "";

    /// <summary>[money/kg] Price of a kilogram in the currency of the catalogue.</summary>
    [Price, FoundByPlan("as the catalogue has it"), Says("Price of a kilogram, in the catalogue's currency.")]
    public decimal? PricePerKg { get; init; }

    /// <summary>[kg] How much of it there is; null where it is bought as needed.</summary>
    [
        Quantity(Dimension.Mass, "0 g", "10000 kg"),
        FoundByPlan("as much as it takes, to be bought"),
        Says("How much of it you have: the recipe takes no more, and nothing of it is bought.")
    ]
    public double? Have { get; init; }
}
