using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

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
    [Items(0, 20), PartKey(PartGroup.Sundries), Says("Keys of the pieces that one takes, each once.")]
    public IReadOnlyList<string> Pieces { get; init; } = [];
}
