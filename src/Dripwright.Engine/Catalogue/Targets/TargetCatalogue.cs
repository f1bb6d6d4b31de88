using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Catalogue.Targets;

/// <summary>Targets from published sources with the grower's own laid over them.</summary>
public sealed record TargetCatalogue
{
    /// <summary>Our own rows.</summary>
    public static TargetCatalogue Default => PartsCatalogue.Default.Targets;

    /// <summary>No rows.</summary>
    public static TargetCatalogue Empty { get; } =
        new() { Targets = new Dictionary<string, NutrientTarget>(), Stages = [] };

    /// <summary>Targets by key, in the order of the file.</summary>
    public required IReadOnlyDictionary<string, NutrientTarget> Targets { get; init; }

    /// <summary>What each crop is fed at each stage; of two rows for the same stage the later one counts.</summary>
    public required IReadOnlyList<CropStage> Stages { get; init; }

    /// <summary>The target with this key.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public NutrientTarget this[string key] =>
        Targets.TryGetValue(key, out var target)
            ? target
            : throw new KeyNotFoundException($"There is no target '{key}'.");

    /// <summary>The row of a crop at a stage; null where the catalogue has none.</summary>
    /// <param name="crop">Key of the crop.</param>
    /// <param name="stage">Stage.</param>
    public CropStage? StageOf(string crop, GrowthStage stage) =>
        Stages.LastOrDefault(row => row.Crop == crop && row.Stage == stage);

    /// <summary>The target of a crop at a stage, brought to its strength.</summary>
    /// <param name="crop">Key of the crop.</param>
    /// <param name="stage">Stage.</param>
    /// <param name="model">[S/m] Conductivity of a composition; the simple cation rule where null.</param>
    /// <returns>The target, or null where the catalogue has no such row or the strength cannot be reached.</returns>
    public NutrientTarget? For(string crop, GrowthStage stage, Func<Composition, double>? model = null) =>
        StageOf(crop, stage) is { } row ? this[row.Target].TryScaledTo(row.Conductivity, model) : null;
}
