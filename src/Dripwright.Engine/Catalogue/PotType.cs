using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>A pot for one or more plants, with a side drain a little above its floor.</summary>
public sealed record PotType : CatalogueEntry
{
    /// <summary>[m³] Volume to the rim.</summary>
    [Quantity(Dimension.Volume, "0.01 gal", "1000 gal"), Says("Volume to the rim.")]
    public required double Volume { get; init; }

    /// <summary>[m] Footprint along the row.</summary>
    [Quantity(Dimension.Length, "1 in", "10 ft"), Says("Footprint along the row, at the rim.")]
    public required double Length { get; init; }

    /// <summary>[m] Footprint across the row.</summary>
    [Quantity(Dimension.Length, "1 in", "10 ft"), Says("Footprint across the row, at the rim.")]
    public required double Width { get; init; }

    /// <summary>[m] Height of the rim over the base.</summary>
    [Quantity(Dimension.Length, "1 in", "10 ft"), Says("Height of the rim over the base.")]
    public required double Height { get; init; }

    /// <summary>[m] Height of the drain's sill over the base: what stands below it is the sump.</summary>
    [Quantity(Dimension.Length, "0 in", "10 ft"), Says("Height of the drain's sill over the base.")]
    public required double DrainHeight { get; init; }

    /// <summary>True for a round pot; length and width are then its diameter at the rim.</summary>
    [Choice("false"), Says("Whether it is round.")]
    public bool Round { get; init; }

    /// <summary>[kg] Empty mass.</summary>
    [Quantity(Dimension.Mass, "0 kg", "100 kg", Us = "0 kg"), Formerly("massKg"), Says("Mass of the empty pot.")]
    public double Mass { get; init; }

    /// <summary>
    /// [-] Side (or diameter) of the base over that of the rim, for a straight draught that gives the volume; 1 for
    /// upright walls.
    /// </summary>
    /// <remarks>
    /// Frustum: V = A·H·(1 + r + r²)/3 with A the rim's area, so r = (√(12·V/(A·H) − 3) − 1)/2. Holds for
    /// 1/3 ≤ V/(A·H) ≤ 1; outside it no straight draught gives the volume and the nearest end, 0 or 1, cannot stand in
    /// for it. Source: volume of a frustum, elementary geometry.
    /// </remarks>
    /// <exception cref="InvalidOperationException">Volume, footprint and height do not fit together.</exception>
    public double BaseRatio
    {
        get
        {
            var share = Volume / (RimArea * Height);
            return share is >= 1.0 / 3 and <= 1.0 + 1e-9
                ? (Math.Sqrt((12 * Math.Min(share, 1)) - 3) - 1) / 2
                : throw new InvalidOperationException($"The volume of pot {Key} does not fit its measures.");
        }
    }

    /// <summary>[m²] Area at the rim: the footprint, or the circle in it.</summary>
    public double RimArea => Length * Width * (Round ? Math.PI / 4 : 1);

    /// <summary>[m³] Volume of the pot below a height over its base, without what is in it.</summary>
    /// <remarks>
    /// V(z) = A·z·(a² + a·b + b²)/3, a = base ratio, b = a + (1 − a)·z/H. Holds for 0 ≤ z ≤ H.
    /// </remarks>
    /// <param name="height">[m] Height over the base.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below the base or above the rim.</exception>
    public double VolumeBelow(double height)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(height);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(height, Height);
        var low = BaseRatio;
        var top = low + ((1 - low) * height / Height);
        return RimArea * height * ((low * low) + (low * top) + (top * top)) / 3;
    }
}
