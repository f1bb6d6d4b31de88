using Dripwright.Engine.Catalogue.Salts;

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

/// <summary>What a crop is fed at a stage.</summary>
/// <param name="Crop">Key of the crop.</param>
/// <param name="Stage">Stage.</param>
/// <param name="Target">Key of the target whose proportions are used.</param>
/// <param name="Conductivity">[S/m] Strength at which it is fed.</param>
/// <param name="Source">Where the strength comes from.</param>
/// <param name="Sure">How sure it is.</param>
public sealed record CropStage(
    string Crop,
    GrowthStage Stage,
    string Target,
    double Conductivity,
    string Source,
    Sureness Sure
);
