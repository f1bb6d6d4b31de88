using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

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
