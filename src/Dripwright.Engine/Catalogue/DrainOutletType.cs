using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>The pot's way out: drain elbow in the pot's wall and the seal through which it enters the drain pipe.</summary>
public sealed record DrainOutletType : CatalogueEntry
{
    /// <summary>[m] Bore of the elbow.</summary>
    [Quantity(Dimension.Length, "1 mm", "6 in"), Says("Bore of the elbow.")]
    public required double Bore { get; init; }

    /// <summary>[m] Hole in the pot's wall: the outside of the fitting or of its seal, from its maker.</summary>
    [Quantity(Dimension.Length, "1 mm", "8 in"), Says("Hole in the pot's wall, from the seal's maker.")]
    public required double PotHole { get; init; }

    /// <summary>[m] Hole in the drain pipe: the outside of the spigot or of its seal.</summary>
    [Quantity(Dimension.Length, "1 mm", "8 in"), Says("Hole in the drain pipe, from the seal's maker.")]
    public required double PipeHole { get; init; }

    /// <summary>[m] How far the elbow reaches out of the pot's wall to the centre of its downward leg.</summary>
    [Quantity(Dimension.Length, "0 in", "1 ft"), Says("From the pot's wall to the centre of the downward leg.")]
    public required double Reach { get; init; }

    /// <summary>Keys of the pieces one pot's outlet takes.</summary>
    [Items(0, 20), PartKey(PartGroup.Sundries), Says("Keys of the pieces that one pot's outlet takes.")]
    public IReadOnlyList<string> Pieces { get; init; } = [];
}
