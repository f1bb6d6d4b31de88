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
    public required PipeFamily Family { get; init; }

    /// <summary>Nominal size as printed on the pipe: a name, not a dimension.</summary>
    public required string Nominal { get; init; }

    /// <summary>[m] Outside diameter.</summary>
    public required double OutsideDiameter { get; init; }

    /// <summary>[m] Inside diameter.</summary>
    public required double InsideDiameter { get; init; }

    /// <summary>[m] Equivalent wall roughness for Colebrook-type formulas.</summary>
    public required double Roughness { get; init; }

    /// <summary>[-] Manning coefficient (SI form) for partly full flow.</summary>
    public required double ManningN { get; init; }

    /// <summary>[m] Lengths it is sold in, shortest first. A coil counts as one long stock.</summary>
    public required IReadOnlyList<double> StockLengths { get; init; }

    /// <summary>True for hose that comes in a coil and bends round corners.</summary>
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
    public required FittingKind Kind { get; init; }

    /// <summary>Family of pipe it takes.</summary>
    public required PipeFamily Family { get; init; }

    /// <summary>Nominal size it takes.</summary>
    public required string Nominal { get; init; }

    /// <summary>[m] From the fitting's centre to where the pipe's end stops (laying length). Zero for a cap's inside.</summary>
    public required double LayingLength { get; init; }

    /// <summary>[m] How deep the pipe goes in (socket) or the barb goes into the hose.</summary>
    public required double SocketDepth { get; init; }

    /// <summary>[m] Outside diameter of the socket or of the hose over the barb.</summary>
    public double OutsideDiameter { get; init; }

    /// <summary>[m] Free bore; for barbs smaller than the hose. Zero means the pipe's own bore.</summary>
    public double Bore { get; init; }

    /// <summary>[-] Loss coefficient of the straight way (or the only way), on the pipe's own velocity.</summary>
    public required double LossThrough { get; init; }

    /// <summary>[-] Loss coefficient of the branch of a tee, on the branch pipe's velocity.</summary>
    public double LossBranch { get; init; }

    /// <summary>Hose clamps it needs (0 for solvent-welded sockets).</summary>
    public int Clamps { get; init; }
}
