using Dripwright.Engine.Files;
using Dripwright.Engine.Physics;
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

    /// <summary>Its inside.</summary>
    public VesselShape Inside => InsideOf(Shape, Length, Width, Height);

    /// <summary>[m³] Volume to the rim.</summary>
    public double Volume => Inside.Capacity;

    /// <summary>The inside of a tank: the one place that makes a volume of its measures.</summary>
    /// <param name="shape">Shape.</param>
    /// <param name="length">[m] Inside length; of an upright cylinder its diameter. Over 0.</param>
    /// <param name="width">[m] Inside width; of a cylinder its diameter. Over 0.</param>
    /// <param name="height">[m] Inside height to the rim; of a lying cylinder its diameter. Over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A measure is not over 0, or the shape is none.</exception>
    public static VesselShape InsideOf(TankShape shape, double length, double width, double height) =>
        shape switch
        {
            TankShape.Box => new BoxVessel(length, width, height),
            TankShape.Upright => new RoundVessel(width, height),
            TankShape.Lying => new LyingDrum(height, length),
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "No shape."),
        };
}
