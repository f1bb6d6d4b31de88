using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed;

/// <summary>A place for a tube's end, in the frame in which the part is printed.</summary>
/// <param name="Floor">[m] Middle of the socket's floor, where the tube's end stops.</param>
/// <param name="Way">Out of the socket, along the tube.</param>
/// <param name="Depth">[m] From floor to mouth.</param>
/// <param name="Half">[m] Radius of the bore, or half its side.</param>
public sealed record Socket(Vector3 Floor, Vector3 Way, double Depth, double Half);

/// <summary>A printed part: its shape, how it is printed and what it carries.</summary>
public sealed record PrintDesign
{
    /// <summary>What it is.</summary>
    public required PrintedKind Kind { get; init; }

    /// <summary>What it was made from.</summary>
    public required PrintParameters Parameters { get; init; }

    /// <summary>Its shape as it lies on the printer's bed.</summary>
    public required Solid Shape { get; init; }

    /// <summary>From the frame in which it is printed to that in which it is used, its centre at the origin.</summary>
    public Placement InUse { get; init; } = Placement.None;

    /// <summary>Sockets for tubes.</summary>
    public IReadOnlyList<Socket> Sockets { get; init; } = [];

    /// <summary>[m] Thickness of its walls.</summary>
    public required double Wall { get; init; }

    /// <summary>How to lay it on the bed, and why.</summary>
    public required Phrase Orientation { get; init; }

    /// <summary>[m] Longest span that the printer bridges in the air; 0 where it has none.</summary>
    public double LongestBridge { get; init; }

    /// <summary>True where some part of it overhangs by more than 45° and is no bridge.</summary>
    public bool NeedsSupport { get; init; }

    /// <summary>What its sockets carry; null where it has none.</summary>
    public SocketStrength? Strength { get; init; }

    /// <summary>What its ring carries; null where it hangs no pipe.</summary>
    public HangerStrength? Hanger { get; init; }

    /// <summary>What the builder should know.</summary>
    public IReadOnlyList<Phrase> Cautions { get; init; } = [];

    /// <summary>How many are needed for one job.</summary>
    public int Pieces { get; init; } = 1;

    /// <summary>[m³] Volume by formula; null where there is none and the mesh must tell.</summary>
    public double? Volume => Shape.Volume;

    /// <summary>[m³] What one piece takes at most, printed solid; its mesh tells exactly.</summary>
    public double MostVolume => Pieces * Shape.MostVolume;

    /// <summary>The box around it as it lies on the bed.</summary>
    public Bounds Box => Bounds.Of(Shape);

    /// <summary>How it goes on the bed.</summary>
    public BedFit Bed => BedFit.Of(Box.Size, Parameters.Printer);
}
