namespace Dripwright.Engine.Physics;

/// <summary>A box whose walls may lean: length and width change evenly from floor to brim.</summary>
/// <remarks>V(h) = ∫ (l₀ + a z)(w₀ + b z) dz = l₀w₀h + (a w₀ + b l₀) h²/2 + a b h³/3; exact, not the mean of two ends.</remarks>
public sealed record BoxVessel : VesselShape
{
    private readonly double _length;
    private readonly double _width;
    private readonly double _lengthGain;
    private readonly double _widthGain;

    /// <summary>A box with upright walls.</summary>
    /// <param name="length">[m] Inside length, over 0.</param>
    /// <param name="width">[m] Inside width, over 0.</param>
    /// <param name="height">[m] Inside height, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not over 0.</exception>
    public BoxVessel(double length, double width, double height)
        : this(length, width, length, width, height) { }

    /// <summary>A box with leaning walls, as most totes and square pots are.</summary>
    /// <param name="floorLength">[m] Inside length at the floor, over 0.</param>
    /// <param name="floorWidth">[m] Inside width at the floor, over 0.</param>
    /// <param name="brimLength">[m] Inside length at the brim, over 0.</param>
    /// <param name="brimWidth">[m] Inside width at the brim, over 0.</param>
    /// <param name="height">[m] Inside height, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not over 0.</exception>
    public BoxVessel(double floorLength, double floorWidth, double brimLength, double brimWidth, double height)
        : base(height)
    {
        _length = Guard.Positive(floorLength);
        _width = Guard.Positive(floorWidth);
        _lengthGain = (Guard.Positive(brimLength) - floorLength) / height;
        _widthGain = (Guard.Positive(brimWidth) - floorWidth) / height;
    }

    private protected override double VolumeInside(double level) =>
        level
        * (
            _length * _width
            + level * ((_lengthGain * _width + _widthGain * _length) / 2 + level * _lengthGain * _widthGain / 3)
        );

    private protected override double SurfaceInside(double level) =>
        (_length + _lengthGain * level) * (_width + _widthGain * level);
}

/// <summary>A round vessel standing upright; its wall may lean (a bucket, a barrel, a trash can).</summary>
/// <remarks>V(h) = π/4 (d₀²h + d₀ a h² + a²h³/3) with a the gain of diameter per height.</remarks>
public sealed record RoundVessel : VesselShape
{
    private readonly double _diameter;
    private readonly double _gain;

    /// <summary>An upright cylinder.</summary>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <param name="height">[m] Inside height, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not over 0.</exception>
    public RoundVessel(double diameter, double height)
        : this(diameter, diameter, height) { }

    /// <summary>A round vessel with leaning wall.</summary>
    /// <param name="floorDiameter">[m] Inside diameter at the floor, over 0.</param>
    /// <param name="brimDiameter">[m] Inside diameter at the brim, over 0.</param>
    /// <param name="height">[m] Inside height, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not over 0.</exception>
    public RoundVessel(double floorDiameter, double brimDiameter, double height)
        : base(height)
    {
        _diameter = Guard.Positive(floorDiameter);
        _gain = (Guard.Positive(brimDiameter) - floorDiameter) / height;
    }

    private protected override double VolumeInside(double level) =>
        Math.PI / 4 * level * (_diameter * _diameter + level * (_diameter * _gain + level * _gain * _gain / 3));

    private protected override double SurfaceInside(double level)
    {
        var diameter = _diameter + _gain * level;
        return Math.PI / 4 * diameter * diameter;
    }
}

/// <summary>A drum lying on its side, with flat ends.</summary>
/// <remarks>Area of the circle's segment times length.</remarks>
public sealed record LyingDrum : VesselShape
{
    private readonly double _length;

    /// <summary>A lying drum.</summary>
    /// <param name="diameter">[m] Inside diameter, over 0; also its height.</param>
    /// <param name="length">[m] Inside length, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not over 0.</exception>
    public LyingDrum(double diameter, double length)
        : base(diameter)
    {
        _length = Guard.Positive(length);
    }

    private protected override double VolumeInside(double level) => _length * CircularSection.Area(level, Height);

    private protected override double SurfaceInside(double level) => _length * CircularSection.TopWidth(level, Height);
}

/// <summary>A vessel whose volume was measured: as another in shape, and holding so much more or less at every level.</summary>
/// <remarks>A tank's walls bulge and its corners are round: the measure to the rim tells how much, the shape where.</remarks>
public sealed record MeasuredVessel : VesselShape
{
    private readonly VesselShape _shape;
    private readonly double _factor;

    /// <summary>A vessel of this shape that holds so much to the brim.</summary>
    /// <param name="shape">What its measures make of it.</param>
    /// <param name="capacity">[m³] Volume to the brim as measured, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is not over 0.</exception>
    public MeasuredVessel(VesselShape shape, double capacity)
        : base(shape?.Height ?? throw new ArgumentNullException(nameof(shape)))
    {
        _shape = shape;
        _factor = Guard.Positive(capacity) / shape.Capacity;
    }

    private protected override double VolumeInside(double level) => _factor * _shape.VolumeAt(level);

    private protected override double SurfaceInside(double level) => _factor * _shape.SurfaceAt(level);
}
