using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Plastic of printed parts.</summary>
public enum PrintPlastic
{
    /// <summary>Easy to print; creeps in warmth.</summary>
    Pla,

    /// <summary>Tough, takes water well.</summary>
    Petg,

    /// <summary>Stands heat.</summary>
    Abs,

    /// <summary>Stands heat and sun.</summary>
    Asa,
}

/// <summary>How the stand's printed parts are printed.</summary>
public sealed record Printing
{
    /// <summary>[m] Outside of the tube as measured.</summary>
    [
        Quantity(Dimension.Length, "5 mm", "100 mm"),
        FoundByPlan("as the catalogue says of the stand's tube"),
        Says("Outside of your tube, measured with a caliper.")
    ]
    public double? TubeOutside { get; init; }

    /// <summary>[m] Gap on each side between tube and socket.</summary>
    [
        Quantity(Dimension.Length, "-0.5 mm", "1 mm", Us = "0.2 mm"),
        Says("Gap on each side between tube and socket; the coupon finds the one that fits.")
    ]
    public double Clearance { get; init; } = 0.0002;

    /// <summary>[m] Bore of the nozzle.</summary>
    [Quantity(Dimension.Length, "0.2 mm", "1.2 mm", Us = "0.4 mm"), Says("Bore of the printer's nozzle.")]
    public double Nozzle { get; init; } = 0.0004;

    /// <summary>[m] Height of a layer.</summary>
    [Quantity(Dimension.Length, "0.05 mm", "0.8 mm", Us = "0.2 mm"), Says("Height of a printed layer.")]
    public double Layer { get; init; } = 0.0002;

    /// <summary>[m] Width of the bed.</summary>
    [Quantity(Dimension.Length, "80 mm", "1000 mm", Us = "220 mm"), Says("Width of the printer's bed.")]
    public double BedWidth { get; init; } = 0.22;

    /// <summary>[m] Depth of the bed.</summary>
    [Quantity(Dimension.Length, "80 mm", "1000 mm", Us = "220 mm"), Says("Depth of the printer's bed.")]
    public double BedDepth { get; init; } = 0.22;

    /// <summary>[m] Greatest height of a print.</summary>
    [Quantity(Dimension.Length, "80 mm", "1000 mm", Us = "250 mm"), Says("Greatest height that the printer prints.")]
    public double BedHeight { get; init; } = 0.25;

    /// <summary>The plastic.</summary>
    [Choice("petg"), Says("Plastic of the printed parts.")]
    public PrintPlastic Plastic { get; init; } = PrintPlastic.Petg;

    /// <summary>[K] Of the parts on the warmest day.</summary>
    [
        Quantity(Dimension.Temperature, "32 F", "180 F", Us = "95 F", Metric = "35 C"),
        Says("Warmest that the printed parts get; in the sun they are warmer than the air.")
    ]
    public double Warmest { get; init; } = 308.15;

    /// <summary>What else is printed.</summary>
    [Says("Small parts that are printed besides the stand's joints: for line, hoses, emitters and drill.")]
    public SmallPartsWanted SmallParts { get; init; } = new();
}

/// <summary>Small parts that are printed besides the stand's joints; each is printed only where it is asked for.</summary>
public sealed record SmallPartsWanted
{
    /// <summary>Line rests.</summary>
    [Choice("false"), Says("Rests that carry the feed line on the pots' rims, one on each pot.")]
    public bool LineRests { get; init; }

    /// <summary>Hose clips.</summary>
    [Choice("false"), Says("Clips that hold the header to a leg of the stand.")]
    public bool HoseClips { get; init; }

    /// <summary>Clamp blocks.</summary>
    [Choice("false"), Says("A clamp of two halves that takes the header's pull off the pump, at the reservoir's rim.")]
    public bool HoseClamp { get; init; }

    /// <summary>Stake holders.</summary>
    [Choice("false"), Says("Holders for the emitters' stakes on the pots' rims.")]
    public bool StakeHolders { get; init; }

    /// <summary>Drill guides.</summary>
    [Choice("false"), Says("A guide that sets the distance from hole to hole when the drain is drilled.")]
    public bool DrillGuides { get; init; }

    /// <summary>Couplers.</summary>
    [Whole(0, 500, 0), Says("Straight couplers, each of which makes a tie of two leftovers of tube.")]
    public int Couplers { get; init; }

    /// <summary>[m] Thickness of the pots' rims.</summary>
    [
        Quantity(Dimension.Length, "0.5 mm", "10 mm", Us = "2 mm"),
        Says("Thickness of the pots' rims, measured with a caliper.")
    ]
    public double RimThickness { get; init; } = 0.002;

    /// <summary>[m] Diameter of the stakes' shafts.</summary>
    [
        Quantity(Dimension.Length, "2 mm", "15 mm", Us = "5 mm"),
        Says("Thickness of the emitters' stakes, measured with a caliper.")
    ]
    public double StakeDiameter { get; init; } = 0.005;

    /// <summary>[m] Pilot drill.</summary>
    [
        Quantity(Dimension.Length, "1.5 mm", "10 mm", Us = "4 mm"),
        Says("Drill that goes through the guide: the pilot, before the hole saw.")
    ]
    public double PilotDrill { get; init; } = 0.004;
}
