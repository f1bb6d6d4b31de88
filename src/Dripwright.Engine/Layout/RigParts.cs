using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>The reservoir's inside, the catalogue's figures overruled by the rig's.</summary>
/// <param name="Shape">Shape.</param>
/// <param name="Length">[m] Inside length; diameter of an upright cylinder; length of a lying one.</param>
/// <param name="Width">[m] Inside width; diameter of a cylinder.</param>
/// <param name="Height">[m] Inside height to the rim.</param>
public sealed record TankMeasures(TankShape Shape, double Length, double Width, double Height);

/// <summary>The pump, the catalogue's figures overruled by the rig's.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Curve">The curve's points, from no flow to no head.</param>
/// <param name="FromEnds">True when only shut-off head and open flow are known and the curve between them is assumed.</param>
/// <param name="Power">[W] Electrical input.</param>
/// <param name="Cord">[m] Cord length.</param>
/// <param name="InletHeight">[m] Of the inlet over the tank's floor.</param>
/// <param name="InletDiameter">[m] Of the inlet opening.</param>
public sealed record PumpMeasures(
    string Name,
    IReadOnlyList<CurvePoint> Curve,
    bool FromEnds,
    double Power,
    double Cord,
    double InletHeight,
    double InletDiameter
);

/// <summary>Every catalogue part that a rig names, looked up once.</summary>
public sealed record RigParts
{
    /// <summary>The catalogue they come from.</summary>
    public required PartsCatalogue Catalogue { get; init; }

    /// <summary>Feed line along the rows.</summary>
    public required PipeSize Line { get; init; }

    /// <summary>Header.</summary>
    public required PipeSize Header { get; init; }

    /// <summary>Drain pipe.</summary>
    public required PipeSize Drain { get; init; }

    /// <summary>Stand tube.</summary>
    public required TubeSize Tube { get; init; }

    /// <summary>Crop wire; null where nothing hangs.</summary>
    public required WireType? Wire { get; init; }

    /// <summary>Emitter.</summary>
    public required EmitterType Emitter { get; init; }

    /// <summary>Pot outlet.</summary>
    public required DrainOutletType Outlet { get; init; }

    /// <summary>Strainer; null where there is none.</summary>
    public required StrainerType? Strainer { get; init; }

    /// <summary>Reservoir.</summary>
    public required TankMeasures Tank { get; init; }

    /// <summary>Pump; null for gravity feed.</summary>
    public required PumpMeasures? Pump { get; init; }

    /// <summary>Looks up a rig's parts.</summary>
    /// <param name="rig">A rig that was read without a fault.</param>
    /// <param name="catalogue">The catalogue it was read with.</param>
    /// <exception cref="KeyNotFoundException">The rig names a part that the catalogue lacks.</exception>
    public static RigParts Of(Rig rig, PartsCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(catalogue);
        return new RigParts
        {
            Catalogue = catalogue,
            Line = catalogue.Pipes[rig.Feed.Line],
            Header = catalogue.Pipes[rig.Feed.Header.Pipe],
            Drain = catalogue.Pipes[rig.Drain.Pipe],
            Tube = catalogue.Tubes[rig.Stand.Tube],
            Wire = rig.Overhead.Wire == "none" ? null : catalogue.Wires[rig.Overhead.Wire],
            Emitter = catalogue.Emitters[rig.Feed.Emitter],
            Outlet = catalogue.Outlets[rig.Drain.Outlet],
            Strainer = rig.Feed.Strainer == "none" ? null : catalogue.Strainers[rig.Feed.Strainer],
            Tank = Measures(rig.Reservoir, catalogue.Tanks[rig.Reservoir.Tank]),
            Pump = rig.Pump.Model == "none" ? null : Measures(rig.Pump, catalogue.Pumps[rig.Pump.Model]),
        };
    }

    /// <summary>The fitting of a kind for a pipe.</summary>
    /// <param name="pipe">The pipe.</param>
    /// <param name="kind">What it must do.</param>
    /// <exception cref="KeyNotFoundException">The catalogue has none.</exception>
    public FittingType Fitting(PipeSize pipe, FittingKind kind)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        return Catalogue.FittingFor(pipe, kind)
            ?? throw new KeyNotFoundException($"The catalogue has no {kind} for {pipe.Key}.");
    }

    private static TankMeasures Measures(Reservoir reservoir, TankType tank)
    {
        TankShape shape = reservoir.Shape ?? tank.Shape;
        double length = reservoir.Length ?? tank.Length;
        // A round tank has one diameter: where only one of the two measures is overruled, the other follows it.
        double width = reservoir.Width ?? (shape == TankShape.Upright ? length : tank.Width);
        return new TankMeasures(shape, length, width, reservoir.Height ?? tank.Height);
    }

    private static PumpMeasures Measures(Pump pump, PumpModel model)
    {
        bool fromEnds = pump.ShutOffHead is not null && pump.OpenFlow is not null;
        IReadOnlyList<CurvePoint> curve =
            pump.Curve is { Count: > 0 } points ? [.. points.Select(p => new CurvePoint(p.Flow, p.Head))]
            : fromEnds ? [new CurvePoint(0, pump.ShutOffHead!.Value), new CurvePoint(pump.OpenFlow!.Value, 0)]
            : model.Curve;
        return new PumpMeasures(
            model.Name,
            curve,
            fromEnds && pump.Curve is not { Count: > 0 },
            pump.Power ?? model.Power,
            pump.Cord ?? model.Cord,
            pump.InletHeight ?? model.InletHeight,
            model.InletDiameter
        );
    }
}
