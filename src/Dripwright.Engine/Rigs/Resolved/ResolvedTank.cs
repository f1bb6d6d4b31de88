using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Rigs;

/// <summary>The reservoir: the catalogue's tank with the rig's measures laid over it, brought into one shape.</summary>
/// <remarks>
/// Marks, doses, days and what comes back when the pump stops all go by <see cref="Inside"/>. A volume that the grower measured
/// scales it: the tank then holds that much to the rim, and at every level as much more or less as there.
/// </remarks>
public sealed record ResolvedTank
{
    /// <summary>The catalogue's tank that the rig names.</summary>
    public required TankType Type { get; init; }

    /// <summary>True where the rig gives a shape or measure of its own, so that it is not the catalogue's tank any more.</summary>
    public required bool IsOwn { get; init; }

    /// <summary>Shape.</summary>
    public required TankShape Shape { get; init; }

    /// <summary>[m] Inside length, along the rows; of an upright cylinder its diameter.</summary>
    public required double Length { get; init; }

    /// <summary>[m] Inside width; of a cylinder its diameter.</summary>
    public required double Width { get; init; }

    /// <summary>[m] Inside height to the rim; of a lying cylinder its diameter.</summary>
    public required double Height { get; init; }

    /// <summary>[m³] Volume to the rim as the grower measured it; null where only its measures are known.</summary>
    public required double? Measured { get; init; }

    /// <summary>[m³] Volume to the rim by shape and measures alone.</summary>
    public double VolumeOfShape => TankType.InsideOf(Shape, Length, Width, Height).Capacity;

    /// <summary>Its inside: how much it holds at a level, and the level of a volume.</summary>
    public VesselShape Inside
    {
        get
        {
            var shape = TankType.InsideOf(Shape, Length, Width, Height);
            return Measured is { } volume ? new MeasuredVessel(shape, volume) : shape;
        }
    }

    /// <summary>[m] A level that stands inside the tank; heights that were added up may stand a rounding error outside.</summary>
    /// <param name="level">[m] Level over its floor.</param>
    public double LevelIn(double level) => Math.Clamp(level, 0, Height);

    /// <summary>What to call it: the catalogue's name only where it is that tank.</summary>
    public Phrase Name =>
        (IsOwn, Shape) switch
        {
            (false, _) => Phrase.Plain(Type.Name),
            (_, TankShape.Upright) => Phrase.Of(
                "own.tank.upright",
                Phrases.Measured.Length(Width),
                Phrases.Measured.Length(Height)
            ),
            (_, TankShape.Lying) => Phrase.Of(
                "own.tank.lying",
                Phrases.Measured.Length(Width),
                Phrases.Measured.Length(Length)
            ),
            _ => Phrase.Of(
                "own.tank.box",
                Phrases.Measured.Length(Length),
                Phrases.Measured.Length(Width),
                Phrases.Measured.Length(Height)
            ),
        };
}
