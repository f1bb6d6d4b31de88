using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue.Targets;

/// <summary>How far a crop is.</summary>
public enum GrowthStage
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

/// <summary>What a crop is fed at a stage: a row of a catalogue file.</summary>
public sealed record CropStage
{
    /// <summary>Key of the crop.</summary>
    [PartKey(PartGroup.Crops), Says("Key of the crop.")]
    public required string Crop { get; init; }

    /// <summary>Stage.</summary>
    [Choice(""), Says("How far it is.")]
    public required GrowthStage Stage { get; init; }

    /// <summary>Key of the target whose proportions are used.</summary>
    [PartKey(PartGroup.Targets), Says("Key of the target whose proportions are used.")]
    public required string Target { get; init; }

    /// <summary>[S/m] Strength at which it is fed.</summary>
    [
        Quantity(Dimension.Conductivity, "0.1 dS/m", "20 dS/m"),
        Formerly("decisiemensPerMetre"),
        Says("Strength (EC) at 25 °C at which it is fed, in dS/m or mS/cm.")
    ]
    public required double Conductivity { get; init; }

    /// <summary>Where the strength comes from.</summary>
    [Text(600), Says("Where the strength comes from.")]
    public required string Source { get; init; }

    /// <summary>How sure it is.</summary>
    [Choice("published"), Says("How sure it is.")]
    public Sureness Sure { get; init; }
}
