using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Slanting tubes of a stand.</summary>
[Flags]
public enum Bracing
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Along the back, in the first, the last and every third bay between two frames.</summary>
    Along = 1,

    /// <summary>Across every frame.</summary>
    Across = 2,

    /// <summary>Along and across.</summary>
    Both = Along | Across,
}

/// <summary>Steel of a stand's tube.</summary>
public enum TubeSteel
{
    /// <summary>Not known: counted as the weakest that the tube's kind is sold in.</summary>
    Unknown,

    /// <summary>Welded tube, grade 1010.</summary>
    Welded1010,

    /// <summary>Welded tube, grade 1015.</summary>
    Welded1015,

    /// <summary>Welded tube, grade 1020.</summary>
    Welded1020,

    /// <summary>Structural round tube, grade A.</summary>
    StructuralA,

    /// <summary>Structural round tube, grade B.</summary>
    StructuralB,

    /// <summary>Structural round tube, grade C.</summary>
    StructuralC,
}

/// <summary>What a stand stands on.</summary>
public enum StandFloor
{
    /// <summary>Dry concrete.</summary>
    Concrete,

    /// <summary>Wet concrete.</summary>
    WetConcrete,

    /// <summary>Dry tile.</summary>
    Tile,

    /// <summary>Wet tile.</summary>
    WetTile,

    /// <summary>Boards.</summary>
    Wood,

    /// <summary>Firm ground or gravel.</summary>
    Ground,
}

/// <summary>What of a leg touches the floor.</summary>
public enum FootMaterial
{
    /// <summary>The printed foot.</summary>
    Printed,

    /// <summary>A rubber pad under it.</summary>
    Rubber,

    /// <summary>Bare steel.</summary>
    Steel,
}

/// <summary>The knock-down stand.</summary>
public sealed record Stand
{
    /// <summary>Tube of rails, legs and cross-members.</summary>
    [
        PartKey(PartGroup.Tubes, "tube-round-1in-16ga", "tube-round-25x1.5"),
        Says("Steel tube of the stand, from the catalogue.")
    ]
    public string Tube { get; init; } = "";

    /// <summary>[m] What the saw takes at every cut.</summary>
    [
        Quantity(Dimension.Length, "0 mm", "10 mm", Us = "2 mm"),
        Says("What your saw takes at each cut: about 2 mm by hand, 3 mm (1/8 in) with a chop saw.")
    ]
    public double SawCut { get; init; } = 0.002;

    /// <summary>[m] Depth of the stand across the row, tube centre to tube centre.</summary>
    [
        Quantity(Dimension.Length, "3 in", "10 ft"),
        FoundByPlan("the pots' width, less what may overhang"),
        Says("Depth of the stand, rail centre to rail centre.")
    ]
    public double? Depth { get; init; }

    /// <summary>A low tie between the legs of each frame.</summary>
    [Choice("true"), Says("A low tie between the legs of each frame, and along the back.")]
    public bool LowTies { get; init; }

    /// <summary>[m] How deep a tube sits in a printed joint.</summary>
    [
        Quantity(Dimension.Length, "0.2 in", "6 in", Us = "1 1/2 in", Metric = "40 mm"),
        Says("How deep a tube goes into a printed joint.")
    ]
    public double SocketDepth { get; init; }

    /// <summary>[m] From a printed joint's centre to where the tube's end stops.</summary>
    [
        Quantity(Dimension.Length, "0 in", "4 in", Us = "3/4 in", Metric = "20 mm"),
        Says("From the centre of a printed joint to where the tube's end stops.")
    ]
    public double JointCentre { get; init; }

    /// <summary>Slanting tubes.</summary>
    [
        Choice("both"),
        Says("Slanting tubes that keep it from swaying: along the back, across the frames, both or none.")
    ]
    public Bracing Bracing { get; init; }

    /// <summary>Frames within each module.</summary>
    [Whole(0, 4, 1), Says("Frames within each module, besides those at its ends: they halve what the rails span.")]
    public int ExtraFrames { get; init; }

    /// <summary>What the tube's steel may be counted on for.</summary>
    [Choice("unknown"), Says("Steel of the tube, where its paper says so; unknown counts as the weakest.")]
    public TubeSteel Steel { get; init; }

    /// <summary>[-] What rust and wear have left of the tube's wall.</summary>
    [Quantity(Dimension.Share, "10 %", "100 %", Us = "100 %"), Says("Used tube: what rust has left of its wall.")]
    public double WallLeft { get; init; } = 1;

    /// <summary>[m] How far the end of a metre of tube in a printed joint sinks under a kilogram.</summary>
    [
        Quantity(Dimension.Length, "0.5 mm", "500 mm"),
        FoundByPlan("assumed for printed push-fit joints: about 10 mm"),
        Says(
            "Your joints, measured: how far the end of 1 m of tube in a clamped joint sinks under 1 kg, the tube's own bending taken off."
        )
    ]
    public double? JointSink { get; init; }

    /// <summary>[N] Weight at the end of a metre of tube at which it slips in a printed joint.</summary>
    [
        Quantity(Dimension.Force, "1 N", "1000 N"),
        FoundByPlan("assumed for printed push-fit joints: 30 N"),
        Says("Your joints, measured: the weight on the end of 1 m of tube at which it slips in its joint.")
    ]
    public double? JointSlip { get; init; }

    /// <summary>[N] Pull at which a tube comes out of a printed joint.</summary>
    [
        Quantity(Dimension.Force, "1 N", "10000 N"),
        FoundByPlan("assumed for printed push-fit joints: 150 N"),
        Says("Your joints, measured: the pull at which a tube slides out of its joint.")
    ]
    public double? JointPull { get; init; }

    /// <summary>What it stands on.</summary>
    [Choice("concrete"), Says("What the stand stands on; where water is spilt, choose wet.")]
    public StandFloor Floor { get; init; }

    /// <summary>What its legs touch the floor with.</summary>
    [Choice("printed"), Says("What touches the floor: the printed feet, rubber pads under them, or bare steel.")]
    public FootMaterial Feet { get; init; }

    /// <summary>Whether something holds the stand from tipping.</summary>
    [Choice("false"), Says("Whether it is tied to a wall, a post or another row, so that it cannot tip.")]
    public bool Tied { get; init; }

    /// <summary>Whether a person may lean on the stand.</summary>
    [Choice("true"), Says("Whether people may lean on the stand or push against it.")]
    public bool Leaning { get; init; }
}
