using Dripwright.Engine.Units;

namespace Dripwright.Store.Ground;

/// <summary>What holds for the whole garden.</summary>
public sealed record GardenSettings
{
    /// <summary>What the grower calls the garden.</summary>
    public string Name { get; init; } = "My garden";

    /// <summary>Units that pages show. It never changes what is kept or computed.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>Further settings by name, for rooms that need one of their own.</summary>
    public IReadOnlyDictionary<string, string> More { get; init; } = new Dictionary<string, string>();
}
