namespace Dripwright.Engine.Catalogue;

/// <summary>All generic parts that a rig can name, ours with the user's own laid over them.</summary>
public sealed record PartsCatalogue
{
    /// <summary>Pipes and hoses by key.</summary>
    public required IReadOnlyDictionary<string, PipeSize> Pipes { get; init; }

    /// <summary>Fittings by key.</summary>
    public required IReadOnlyDictionary<string, FittingType> Fittings { get; init; }

    /// <summary>Stand tubes by key.</summary>
    public required IReadOnlyDictionary<string, TubeSize> Tubes { get; init; }

    /// <summary>Pots by key.</summary>
    public required IReadOnlyDictionary<string, PotType> Pots { get; init; }

    /// <summary>Reservoirs by key.</summary>
    public required IReadOnlyDictionary<string, TankType> Tanks { get; init; }

    /// <summary>Emitters by key.</summary>
    public required IReadOnlyDictionary<string, EmitterType> Emitters { get; init; }

    /// <summary>Strainers by key.</summary>
    public required IReadOnlyDictionary<string, StrainerType> Strainers { get; init; }

    /// <summary>Pumps by key.</summary>
    public required IReadOnlyDictionary<string, PumpModel> Pumps { get; init; }

    /// <summary>Pot outlets by key.</summary>
    public required IReadOnlyDictionary<string, DrainOutletType> Outlets { get; init; }

    /// <summary>Everything else by key.</summary>
    public required IReadOnlyDictionary<string, Sundry> Sundries { get; init; }
}
