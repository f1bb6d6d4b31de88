using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Catalogue;

/// <summary>Cross-section of a stand tube.</summary>
public enum TubeShape
{
    /// <summary>Round tube or conduit.</summary>
    Round,

    /// <summary>Square tube.</summary>
    Square,
}

/// <summary>Steel tube for the stand.</summary>
public sealed record TubeSize : CatalogueEntry
{
    /// <summary>Cross-section.</summary>
    [Choice(""), Says("Round or square.")]
    public required TubeShape Shape { get; init; }

    /// <summary>[m] Outside diameter or side.</summary>
    [Quantity(Dimension.Length, "3 mm", "1 ft"), Says("Outside diameter or side.")]
    public required double Outside { get; init; }

    /// <summary>[m] Wall.</summary>
    [Quantity(Dimension.Length, "0.3 mm", "2 in"), Says("Wall.")]
    public required double Wall { get; init; }

    /// <summary>[m] Lengths it is sold in, shortest first.</summary>
    [Items(1, 20), Quantity(Dimension.Length, "1 in", "100 ft"), Says("Lengths it is sold in, shortest first.")]
    public required IReadOnlyList<double> StockLengths { get; init; }
}

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
    [Number(0, 100, Name = "massKg"), Says("Mass of the empty pot in kg.")]
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

/// <summary>How an emitter holds back the water.</summary>
public enum EmitterKind
{
    /// <summary>Short turbulent path: flow follows about the square root of pressure.</summary>
    Turbulent,

    /// <summary>Long path or microtube: flow follows pressure almost in proportion.</summary>
    LongPath,

    /// <summary>Pressure compensating: steady flow between an opening and a greatest pressure.</summary>
    PressureCompensating,

    /// <summary>Adjustable by hand: wide passage, poor repeatability.</summary>
    Adjustable,
}

/// <summary>A drip emitter.</summary>
public sealed record EmitterType : CatalogueEntry
{
    /// <summary>How it works.</summary>
    [Choice(""), Says("How it holds back the water.")]
    public required EmitterKind Kind { get; init; }

    /// <summary>[m³/s] Flow at <see cref="RatedPressure"/>, which fixes k = q/hˣ.</summary>
    [Quantity(Dimension.Flow, "0.01 gph", "100 gph"), Says("Flow at the rated pressure.")]
    public required double RatedFlow { get; init; }

    /// <summary>[Pa] Gauge pressure at which the rated flow was measured.</summary>
    [Quantity(Dimension.Pressure, "0.1 psi", "150 psi"), Says("Pressure at which the rated flow was measured.")]
    public required double RatedPressure { get; init; }

    /// <summary>[-] Exponent x in q = k·hˣ within the working range.</summary>
    [Number(0, 1), Says("Exponent x: 0 compensating, 0.5 turbulent, 1 laminar.")]
    public required double Exponent { get; init; }

    /// <summary>[Pa] Least working gauge pressure. A compensating emitter does not regulate below it.</summary>
    [Quantity(Dimension.Pressure, "0 psi", "150 psi"), Says("Least working pressure.")]
    public required double MinPressure { get; init; }

    /// <summary>[Pa] Greatest working gauge pressure.</summary>
    [Quantity(Dimension.Pressure, "0.1 psi", "150 psi"), Says("Greatest working pressure.")]
    public required double MaxPressure { get; init; }

    /// <summary>[-] Manufacturer's coefficient of variation.</summary>
    [Number(0, 1), Says("Manufacturer's coefficient of variation, such as 0.05.")]
    public required double Variation { get; init; }

    /// <summary>[m] Smallest passage.</summary>
    [Quantity(Dimension.Length, "0.05 mm", "1 in"), Says("Smallest passage.")]
    public required double Passage { get; init; }

    /// <summary>[m] Hole to punch or drill in the feed line.</summary>
    [Quantity(Dimension.Length, "0.5 mm", "1 in"), Says("Hole to punch in the feed line.")]
    public required double Punch { get; init; }

    /// <summary>Keys of the pieces one emitter takes (barb, microtube, stake …), each once.</summary>
    [Items(0, 20), Text(60), Says("Keys of the pieces that one takes, each once.")]
    public IReadOnlyList<string> Pieces { get; init; } = [];
}

/// <summary>A strainer or filter in the feed.</summary>
public sealed record StrainerType : CatalogueEntry
{
    /// <summary>[m] Opening of the mesh.</summary>
    [Quantity(Dimension.Length, "0.005 mm", "5 mm"), Says("Opening of the mesh.")]
    public required double Opening { get; init; }

    /// <summary>[-] Loss coefficient on the header's velocity when clean; zero for a bag round the pump.</summary>
    [Number(0, 1000), Says("Loss coefficient when clean, on the header's velocity.")]
    public double Loss { get; init; }
}

/// <summary>One point of a pump's curve.</summary>
/// <param name="Flow">[m³/s] Flow.</param>
/// <param name="Head">[m] Head at that flow.</param>
public readonly record struct CurvePoint(
    [property: Quantity(Dimension.Flow, "0 gph", "100000 gph"), Says("Flow.")] double Flow,
    [property: Quantity(Dimension.Length, "0 ft", "300 ft"), Says("Head at that flow.")] double Head
);

/// <summary>A small submersible pump.</summary>
public sealed record PumpModel : CatalogueEntry
{
    /// <summary>Curve from shut-off (flow 0) to open flow (head 0), flow rising, head falling.</summary>
    [Items(2, 50), Says("Points of the curve, from no flow to no head.")]
    public required IReadOnlyList<CurvePoint> Curve { get; init; }

    /// <summary>[W] Electrical input.</summary>
    [Quantity(Dimension.Power, "0.1 W", "20 kW"), Says("Electrical power it draws.")]
    public required double Power { get; init; }

    /// <summary>[m] Height of the inlet over the pump's foot.</summary>
    [Quantity(Dimension.Length, "0 in", "10 ft"), Says("Height of its inlet over its foot.")]
    public required double InletHeight { get; init; }

    /// <summary>[m] Diameter of the inlet opening.</summary>
    [Quantity(Dimension.Length, "1 mm", "1 ft"), Says("Diameter of the inlet opening.")]
    public required double InletDiameter { get; init; }

    /// <summary>[m] Length of the cord.</summary>
    [Quantity(Dimension.Length, "0 ft", "300 ft"), Says("Length of the cord.")]
    public required double Cord { get; init; }
}

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
    [Items(0, 20), Text(60), Says("Keys of the pieces that one pot's outlet takes.")]
    public IReadOnlyList<string> Pieces { get; init; } = [];
}

/// <summary>What a sundry part is for, where the plan must find it by its size.</summary>
public enum SundryUse
{
    /// <summary>Found by its key alone.</summary>
    Other,

    /// <summary>Saw for a round hole.</summary>
    HoleSaw,

    /// <summary>Punch for the feed line.</summary>
    Punch,

    /// <summary>Small tube from the line to an emitter.</summary>
    Microtube,

    /// <summary>Connector from the line to a small tube.</summary>
    Barb,

    /// <summary>Stake that holds an emitter or a small tube.</summary>
    Stake,

    /// <summary>Small valve in an emitter's tube.</summary>
    InlineValve,

    /// <summary>Plug for a wrong or unused hole.</summary>
    GoofPlug,

    /// <summary>Hose clamp.</summary>
    Clamp,
}

/// <summary>Everything else that is bought: cement, clamps, tape, tools, pieces of emitters and outlets, printed joints.</summary>
public sealed record Sundry : CatalogueEntry
{
    /// <summary>Shop shelf: plumbing, irrigation, hardware, electrical, tools, garden, printed.</summary>
    [
        Text(20),
        Says("Where it stands in the shop: plumbing, irrigation, hardware, electrical, tools, garden or printed.")
    ]
    public required string Shelf { get; init; }

    /// <summary>[m] For things sold by length (microtube, wire): length of one pack. Zero for pieces.</summary>
    [Quantity(Dimension.Length, "0 ft", "2000 ft"), Says("Length of one pack, for things sold by length.")]
    public double PackLength { get; init; }

    /// <summary>What it is for.</summary>
    [Choice("other"), Says("What it is for, where a plan looks for it by its diameter.")]
    public SundryUse Use { get; init; }

    /// <summary>
    /// [m] Hole that a saw or punch cuts; outside of the hose a clamp takes; bore of a small tube, or of the small tube
    /// it fits. Zero for other things.
    /// </summary>
    [
        Quantity(Dimension.Length, "0 in", "1 ft"),
        Says("Hole it cuts, hose it clamps (outside), or bore of the small tube it is or fits.")
    ]
    public double Diameter { get; init; }
}
