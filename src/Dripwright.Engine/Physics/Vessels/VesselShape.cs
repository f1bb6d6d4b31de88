namespace Dripwright.Engine.Physics;

/// <summary>The inside shape of a reservoir or a pot: how much it holds at a level, and the level at a volume.</summary>
/// <remarks>Levels are over the inside floor (of a lying cylinder: its lowest point), 0 to <see cref="Height"/>.</remarks>
public abstract record VesselShape
{
    private protected VesselShape(double height) => Height = Guard.Positive(height);

    /// <summary>[m] Inside height to the brim.</summary>
    public double Height { get; }

    /// <summary>[m³] Volume when brimful.</summary>
    public double Capacity => VolumeInside(Height);

    /// <summary>Volume under a level.</summary>
    /// <param name="level">[m] Level, 0 to the height.</param>
    /// <returns>[m³] Volume.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside the vessel.</exception>
    public double VolumeAt(double level) => VolumeInside(Guard.Between(level, 0, Height));

    /// <summary>Area of the water surface at a level.</summary>
    /// <param name="level">[m] Level, 0 to the height.</param>
    /// <returns>[m²] Area.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside the vessel.</exception>
    public double SurfaceAt(double level) => SurfaceInside(Guard.Between(level, 0, Height));

    /// <summary>Level that a volume reaches.</summary>
    /// <param name="volume">[m³] Volume, 0 to the capacity.</param>
    /// <returns>[m] Level.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The volume is negative or more than the vessel holds.</exception>
    public double LevelOf(double volume)
    {
        var capacity = Capacity;
        Guard.Between(volume, 0, capacity * (1 + 1e-12));
        return volume == 0 || volume >= capacity
            ? (volume == 0 ? 0 : Height)
            : Bracket.Root(new VolumeBalance(this, volume), 0, Height);
    }

    private protected abstract double VolumeInside(double level);

    private protected abstract double SurfaceInside(double level);

    private readonly struct VolumeBalance(VesselShape shape, double volume) : IOneNumber
    {
        public double At(double x) => shape.VolumeInside(x) - volume;
    }
}
