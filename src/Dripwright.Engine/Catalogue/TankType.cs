using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>Shape of a reservoir.</summary>
public enum TankShape
{
    /// <summary>Straight-sided box.</summary>
    Box,

    /// <summary>Upright cylinder.</summary>
    Upright,

    /// <summary>Cylinder lying on its side.</summary>
    Lying,
}

/// <summary>A reservoir.</summary>
public sealed record TankType : CatalogueEntry
{
    /// <summary>Shape.</summary>
    [Choice(""), Says("Box, upright or lying cylinder.")]
    public required TankShape Shape { get; init; }

    /// <summary>[m] Inside length (box), diameter (upright), or length of the cylinder (lying).</summary>
    [Quantity(Dimension.Length, "3 in", "30 ft"), Says("Inside length; of an upright cylinder its diameter.")]
    public required double Length { get; init; }

    /// <summary>[m] Inside width (box); diameter (upright and lying).</summary>
    [Quantity(Dimension.Length, "3 in", "30 ft"), Says("Inside width; of a cylinder its diameter.")]
    public required double Width { get; init; }

    /// <summary>[m] Inside height to the rim.</summary>
    [Quantity(Dimension.Length, "2 in", "20 ft"), Says("Inside height to the rim; of a lying cylinder its diameter.")]
    public required double Height { get; init; }

    /// <summary>True when it comes with a lid.</summary>
    [Choice("true"), Says("Whether it has a lid.")]
    public bool Lid { get; init; } = true;

    /// <summary>[m³] Volume to the rim.</summary>
    /// <remarks>Box l·w·h; upright cylinder π/4·d²·h; lying cylinder π/4·d²·l.</remarks>
    public double Volume =>
        Shape switch
        {
            TankShape.Box => Length * Width * Height,
            TankShape.Upright => Math.PI / 4 * Length * Width * Height,
            TankShape.Lying => Math.PI / 4 * Width * Height * Length,
            _ => throw new InvalidOperationException($"Tank {Key} has no known shape."),
        };
}
