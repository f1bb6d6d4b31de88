using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>Families of pipe and hose. Fittings fit one family and nominal size.</summary>
public enum PipeFamily
{
    /// <summary>Rigid PVC Schedule 40, inch sizes, solvent welded.</summary>
    PvcSchedule40,

    /// <summary>Rigid PVC-U pressure pipe, metric outside diameter, solvent welded.</summary>
    PvcMetric,

    /// <summary>Polyethylene or vinyl line in inch sizes, barbed fittings.</summary>
    HoseInch,

    /// <summary>Polyethylene line in metric outside diameter, barbed fittings.</summary>
    HoseMetric,
}

/// <summary>One size of pipe or hose.</summary>
public sealed record PipeSize : CatalogueEntry
{
    /// <summary>The family whose fittings fit.</summary>
    [Choice(""), Says("Family of pipe; fittings fit one family.")]
    public required PipeFamily Family { get; init; }

    /// <summary>Nominal size as printed on the pipe: a name, not a dimension.</summary>
    [Text(20), Says("Nominal size as printed on the pipe; fittings and clamps are found by it.")]
    public required string Nominal { get; init; }

    /// <summary>[m] Outside diameter.</summary>
    [Quantity(Dimension.Length, "1 mm", "2 ft"), Says("Outside diameter.")]
    public required double OutsideDiameter { get; init; }

    /// <summary>[m] Inside diameter.</summary>
    [Quantity(Dimension.Length, "0.3 mm", "2 ft"), Says("Inside diameter.")]
    public required double InsideDiameter { get; init; }

    /// <summary>[m] Equivalent wall roughness for Colebrook-type formulas.</summary>
    [Quantity(Dimension.Length, "0 mm", "5 mm"), Says("Roughness of the wall.")]
    public required double Roughness { get; init; }

    /// <summary>[-] Manning coefficient (SI form) for partly full flow.</summary>
    [Number(0.005, 0.1), Says("Manning coefficient for partly full flow.")]
    public required double ManningN { get; init; }

    /// <summary>[m] Lengths it is sold in, shortest first. A coil counts as one long stock.</summary>
    [Items(1, 20), Quantity(Dimension.Length, "1 in", "2000 ft"), Says("Lengths it is sold in, shortest first.")]
    public required IReadOnlyList<double> StockLengths { get; init; }

    /// <summary>[Pa] Gauge pressure that it bears for good in cold water; null where it is not known.</summary>
    [
        Quantity(Dimension.Pressure, "1 psi", "2000 psi"),
        FoundByPlan("not known"),
        Says("Pressure it bears for good, in cold water.")
    ]
    public double? PressureRating { get; init; }

    /// <summary>True for hose that comes in a coil and bends round corners.</summary>
    [Choice("false"), Says("Whether it is hose that bends round corners.")]
    public bool Flexible { get; init; }
}

/// <summary>What a fitting does to the run.</summary>
public enum FittingKind
{
    /// <summary>Quarter bend.</summary>
    Elbow90,

    /// <summary>Eighth bend.</summary>
    Elbow45,

    /// <summary>Three-way piece with a branch at a right angle.</summary>
    Tee,

    /// <summary>Joins two pieces in line.</summary>
    Coupling,

    /// <summary>Closes an end.</summary>
    Cap,

    /// <summary>Changes thread, family or size.</summary>
    Adapter,

    /// <summary>Ball valve.</summary>
    Valve,

    /// <summary>Check valve.</summary>
    CheckValve,

    /// <summary>Barb from hose to a pump outlet or thread.</summary>
    Barb,

    /// <summary>Union that comes apart without cutting.</summary>
    Union,
}

/// <summary>One fitting for one nominal size.</summary>
public sealed record FittingType : CatalogueEntry
{
    /// <summary>What it does.</summary>
    [Choice(""), Says("What it does.")]
    public required FittingKind Kind { get; init; }

    /// <summary>Family of pipe it takes.</summary>
    [Choice(""), Says("Family of pipe it takes.")]
    public required PipeFamily Family { get; init; }

    /// <summary>Nominal size it takes.</summary>
    [Text(20), Says("Nominal size of the pipe it takes.")]
    public required string Nominal { get; init; }

    /// <summary>
    /// [m] From the fitting's centre to where the pipe's end stops (laying length). Of a piece in line half the distance
    /// between both ends; of an adapter or a pump barb the distance from its far end. Zero for a cap's inside.
    /// </summary>
    [
        Quantity(Dimension.Length, "0 in", "2 ft"),
        Says("From its centre to where the pipe's end stops; of an adapter or pump barb, from its far end.")
    ]
    public required double LayingLength { get; init; }

    /// <summary>[m] How deep the pipe goes in (socket) or the barb goes into the hose.</summary>
    [Quantity(Dimension.Length, "0 in", "1 ft"), Says("How deep the pipe goes in, or the barb into the hose.")]
    public required double SocketDepth { get; init; }

    /// <summary>[m] Outside diameter of the socket or of the hose over the barb.</summary>
    [
        Quantity(Dimension.Length, "0 in", "2 ft", Us = "0 in"),
        Says("Outside diameter of the socket, or of the hose over the barb.")
    ]
    public double OutsideDiameter { get; init; }

    /// <summary>[m] Free bore; for barbs smaller than the hose. Zero means the pipe's own bore.</summary>
    [
        Quantity(Dimension.Length, "0 in", "2 ft", Us = "0 in"),
        Says("Free bore where it is smaller than the pipe's; 0 for the pipe's own.")
    ]
    public double Bore { get; init; }

    /// <summary>[-] Loss coefficient of the straight way (or the only way), on the pipe's own velocity.</summary>
    [Number(0, 1000), Says("Loss coefficient of the straight way, on the pipe's velocity.")]
    public required double LossThrough { get; init; }

    /// <summary>[-] Loss coefficient of the branch of a tee, on the branch pipe's velocity.</summary>
    [Number(0, 1000, Assumed = 0), Says("Loss coefficient of a tee's branch, on the branch's velocity.")]
    public double LossBranch { get; init; }

    /// <summary>[Pa] Gauge pressure that it bears for good in cold water; null where it is not known, or where the pipe's counts.</summary>
    [
        Quantity(Dimension.Pressure, "1 psi", "2000 psi"),
        FoundByPlan("as the pipe"),
        Says("Pressure it bears for good, in cold water.")
    ]
    public double? PressureRating { get; init; }

    /// <summary>Hose clamps it needs (0 for solvent-welded sockets).</summary>
    [Whole(0, 4, 0), Says("Hose clamps it needs.")]
    public int Clamps { get; init; }
}
