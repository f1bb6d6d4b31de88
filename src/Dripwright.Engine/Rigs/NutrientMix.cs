using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>The crop that a feed is reckoned for.</summary>
public enum NutrientCrop
{
    /// <summary>No feed is reckoned.</summary>
    None,

    /// <summary>Tomato.</summary>
    Tomato,

    /// <summary>Cucumber.</summary>
    Cucumber,

    /// <summary>Sweet pepper.</summary>
    SweetPepper,
}

/// <summary>How far the crop is.</summary>
public enum NutrientStage
{
    /// <summary>Planted, growing in.</summary>
    Young,

    /// <summary>First flowers open.</summary>
    FirstFlowers,

    /// <summary>First fruits swell.</summary>
    Fruiting,

    /// <summary>Fruits of all ages on the plant.</summary>
    FullCrop,
}

/// <summary>How the feed is mixed.</summary>
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
    /// <summary>Crop; none where no feed is reckoned.</summary>
    [Choice("none"), Says("Crop that the feed solution is for; \"none\" where no feed is to be reckoned.")]
    public NutrientCrop Crop { get; init; }

    /// <summary>How far the crop is.</summary>
    [Choice("young"), Says("How far the crop is.")]
    public NutrientStage Stage { get; init; }

    /// <summary>Whose proportions of elements.</summary>
    [
        PartKey(PartGroup.Targets, "usual", "usual", Or = "usual"),
        Says(
            "Whose proportions of elements: \"usual\" for the published ones of crop and stage, or the key of a target of the catalogue."
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
        FoundByPlan("the usual eleven: see the handbook's page on feeding"),
        Says("Salts at hand. Their order does not matter.")
    ]
    public IReadOnlyList<NutrientSalt>? Salts { get; init; }

    /// <summary>Acid at hand.</summary>
    [PartKey(PartGroup.Acids, "none", "none", Or = "none"), Says("Acid bottle at hand, or \"none\".")]
    public string Acid { get; init; } = "none";

    /// <summary>How the feed is mixed.</summary>
    [Choice("tank"), Says("Salts straight into the tank, or two cans of concentrate, A and B.")]
    public NutrientMixing Mixing { get; init; }

    /// <summary>Parts of feed that one part of each concentrate makes.</summary>
    [Whole(2, 1000, 100), Says("One part of each concentrate in so many parts of feed; 100 is 10 mL in a litre.")]
    public int PartsOfFeed { get; init; } = 100;

    /// <summary>[m³] One can.</summary>
    [
        Quantity(Dimension.Volume, "0.1 gal", "300 gal", Us = "5 gal", Metric = "20 L"),
        Says("Volume to which each can of concentrate is filled.")
    ]
    public double CanVolume { get; init; } = 0.02;

    /// <summary>[kg] Smallest step of the scale.</summary>
    [Quantity(Dimension.Mass, "0.001 g", "100 g", Us = "0.1 g"), Says("Smallest step of your scale.")]
    public double ScaleStep { get; init; } = 0.0001;

    /// <summary>[K] The coldest that the cans are stored at.</summary>
    [
        Quantity(Dimension.Temperature, "33 F", "104 F", Us = "50 F", Metric = "10 C"),
        Says("The coldest it gets where the cans stand.")
    ]
    public double StoreTemperature { get; init; } = 283.15;

    /// <summary>Whether the pots are filled with raw coir.</summary>
    [Choice("false"), Says("Whether the coir is raw: neither washed nor buffered.")]
    public bool RawCoir { get; init; }

    /// <summary>The grower's own amounts.</summary>
    [Says(
        "Your own amounts of elements in the feed; those left out stay as the target has them at its usual strength. With a strength of your own all are scaled to it together; without one the feed is as strong as the amounts make it."
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
    [Price, FoundByPlan("as the catalogue has it"), Says("Price of a kilogram, in the currency of your catalogue.")]
    public decimal? PricePerKg { get; init; }

    /// <summary>[kg] How much of it there is.</summary>
    [Quantity(Dimension.Mass, "0 g", "10000 kg"), FoundByPlan("enough"), Says("How much of it you have.")]
    public double? Have { get; init; }
}
