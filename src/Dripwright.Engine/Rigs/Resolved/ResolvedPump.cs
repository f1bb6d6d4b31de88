using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>The pump: the catalogue's model with the rig's figures laid over it.</summary>
public sealed record ResolvedPump
{
    /// <summary>The catalogue's model that the rig names.</summary>
    public required PumpModel Model { get; init; }

    /// <summary>True where the rig gives a curve of its own, so that it is not the catalogue's pump any more.</summary>
    public required bool IsOwn { get; init; }

    /// <summary>The curve's points, from no flow to no head.</summary>
    public required IReadOnlyList<CurvePoint> Curve { get; init; }

    /// <summary>True when only shut-off head and open flow are known and the curve between them is assumed.</summary>
    public required bool FromEnds { get; init; }

    /// <summary>[W] Electrical input.</summary>
    public required double Power { get; init; }

    /// <summary>[m] Cord length.</summary>
    public required double Cord { get; init; }

    /// <summary>[m] Height of the inlet over the tank's floor.</summary>
    public required double InletHeight { get; init; }

    /// <summary>[m] Diameter of the inlet opening.</summary>
    public required double InletDiameter { get; init; }

    /// <summary>What to call it: the model's name only where it is that model.</summary>
    public Phrase Name => IsOwn ? Phrase.Of("own.pump", Figures) : Phrase.Plain(Model.Name);

    /// <summary>The two ends of its curve in words: "12.0 ft shut-off, 500 gph open", or as far as its leaflet goes.</summary>
    public Phrase Figures =>
        Curve[^1].Head > 0
            ? Phrase.Of(
                "own.pump.figures.leaflet",
                Measured.Head(Curve[0].Head),
                Measured.Flow(Curve[^1].Flow),
                Measured.Head(Curve[^1].Head)
            )
            : Phrase.Of("own.pump.figures", Measured.Head(Curve[0].Head), Measured.Flow(Curve[^1].Flow));

    /// <summary>The pump of a rig.</summary>
    /// <param name="given">What the rig says of it.</param>
    /// <param name="model">The model it names.</param>
    internal static ResolvedPump Of(Pump given, PumpModel model)
    {
        IReadOnlyList<CurvePoint>? points = given switch
        {
            { Curve: { Count: > 0 } curve } => [.. curve.Select(p => new CurvePoint(p.Flow, p.Head))],
            { ShutOffHead: { } head, OpenFlow: { } flow } => [new CurvePoint(0, head), new CurvePoint(flow, 0)],
            _ => null,
        };
        return new ResolvedPump
        {
            Model = model,
            IsOwn = points is not null && !points.SequenceEqual(model.Curve),
            Curve = points ?? model.Curve,
            FromEnds = points is not null && given.Curve is not { Count: > 0 },
            Power = given.Power ?? model.Power,
            Cord = given.Cord ?? model.Cord,
            InletHeight = given.InletHeight ?? model.InletHeight,
            InletDiameter = model.InletDiameter,
        };
    }
}
