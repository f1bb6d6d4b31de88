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
    public required TubeShape Shape { get; init; }

    /// <summary>[m] Outside diameter or side.</summary>
    public required double Outside { get; init; }

    /// <summary>[m] Wall.</summary>
    public required double Wall { get; init; }

    /// <summary>[m] Lengths it is sold in, shortest first.</summary>
    public required IReadOnlyList<double> StockLengths { get; init; }
}

/// <summary>A pot for one or more plants, with a side drain a little above its floor.</summary>
public sealed record PotType : CatalogueEntry
{
    /// <summary>[m³] Volume to the rim.</summary>
    public required double Volume { get; init; }

    /// <summary>[m] Footprint along the row.</summary>
    public required double Length { get; init; }

    /// <summary>[m] Footprint across the row.</summary>
    public required double Width { get; init; }

    /// <summary>[m] Height of the rim over the base.</summary>
    public required double Height { get; init; }

    /// <summary>[m] Height of the drain's sill over the base: what stands below it is the sump.</summary>
    public required double DrainHeight { get; init; }

    /// <summary>True for a round pot; length and width are then its diameter at the rim.</summary>
    public bool Round { get; init; }

    /// <summary>[kg] Empty mass.</summary>
    public double Mass { get; init; }
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
    public required TankShape Shape { get; init; }

    /// <summary>[m] Inside length (box), diameter (upright), or length of the cylinder (lying).</summary>
    public required double Length { get; init; }

    /// <summary>[m] Inside width (box); diameter (upright and lying).</summary>
    public required double Width { get; init; }

    /// <summary>[m] Inside height to the rim.</summary>
    public required double Height { get; init; }

    /// <summary>True when it comes with a lid.</summary>
    public bool Lid { get; init; } = true;
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
    public required EmitterKind Kind { get; init; }

    /// <summary>[m³/s] Flow at <see cref="RatedPressure"/>.</summary>
    public required double RatedFlow { get; init; }

    /// <summary>[Pa] Gauge pressure at which the rated flow was measured.</summary>
    public required double RatedPressure { get; init; }

    /// <summary>[-] Exponent x in q = k·hˣ within the working range.</summary>
    public required double Exponent { get; init; }

    /// <summary>[Pa] Least working gauge pressure. A compensating emitter does not regulate below it.</summary>
    public required double MinPressure { get; init; }

    /// <summary>[Pa] Greatest working gauge pressure.</summary>
    public required double MaxPressure { get; init; }

    /// <summary>[-] Manufacturer's coefficient of variation.</summary>
    public required double Variation { get; init; }

    /// <summary>[m] Smallest passage.</summary>
    public required double Passage { get; init; }

    /// <summary>[m] Hole to punch or drill in the feed line.</summary>
    public required double Punch { get; init; }

    /// <summary>Keys of the pieces one emitter takes (barb, microtube, stake …), each once.</summary>
    public IReadOnlyList<string> Pieces { get; init; } = [];
}

/// <summary>A strainer or filter in the feed.</summary>
public sealed record StrainerType : CatalogueEntry
{
    /// <summary>[m] Opening of the mesh.</summary>
    public required double Opening { get; init; }

    /// <summary>[-] Loss coefficient on the header's velocity when clean; zero for a bag round the pump.</summary>
    public double Loss { get; init; }
}

/// <summary>One point of a pump's curve.</summary>
/// <param name="Flow">[m³/s] Flow.</param>
/// <param name="Head">[m] Head at that flow.</param>
public readonly record struct CurvePoint(double Flow, double Head);

/// <summary>A small submersible pump.</summary>
public sealed record PumpModel : CatalogueEntry
{
    /// <summary>Curve from shut-off (flow 0) to open flow (head 0), flow rising, head falling.</summary>
    public required IReadOnlyList<CurvePoint> Curve { get; init; }

    /// <summary>[W] Electrical input.</summary>
    public required double Power { get; init; }

    /// <summary>[m] Height of the inlet over the pump's foot.</summary>
    public required double InletHeight { get; init; }

    /// <summary>[m] Diameter of the inlet opening.</summary>
    public required double InletDiameter { get; init; }

    /// <summary>[m] Length of the cord.</summary>
    public required double Cord { get; init; }
}

/// <summary>The pot's way out: drain elbow in the pot's wall and the seal through which it enters the drain pipe.</summary>
public sealed record DrainOutletType : CatalogueEntry
{
    /// <summary>[m] Bore of the elbow.</summary>
    public required double Bore { get; init; }

    /// <summary>[m] Hole in the pot's wall: the outside of the fitting or of its seal, from its maker.</summary>
    public required double PotHole { get; init; }

    /// <summary>[m] Hole in the drain pipe: the outside of the spigot or of its seal.</summary>
    public required double PipeHole { get; init; }

    /// <summary>[m] How far the elbow reaches out of the pot's wall to the centre of its downward leg.</summary>
    public required double Reach { get; init; }

    /// <summary>Keys of the pieces one pot's outlet takes.</summary>
    public IReadOnlyList<string> Pieces { get; init; } = [];
}

/// <summary>Everything else that is bought: cement, clamps, tape, tools, pieces of emitters and outlets, printed joints.</summary>
public sealed record Sundry : CatalogueEntry
{
    /// <summary>Shop shelf: plumbing, irrigation, hardware, electrical, tools, garden, printed.</summary>
    public required string Shelf { get; init; }

    /// <summary>[m] For things sold by length (microtube, wire): length of one pack. Zero for pieces.</summary>
    public double PackLength { get; init; }
}
