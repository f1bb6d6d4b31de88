using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Where the feed line enters a row.</summary>
public enum FeedEntry
{
    /// <summary>At the end next to the reservoir.</summary>
    End,

    /// <summary>Through a tee in the middle.</summary>
    Middle,

    /// <summary>At both ends, from a header that splits.</summary>
    BothEnds,

    /// <summary>As a closed loop: out along the row and back to the entry tee.</summary>
    Loop,
}

/// <summary>From the pump to the emitters, alike for all rows.</summary>
public sealed record Feed
{
    /// <summary>Where the line enters a row.</summary>
    [Choice("end"), Says("Where the feed line enters a row.")]
    public FeedEntry Entry { get; init; }

    /// <summary>Feed line along the row.</summary>
    [PartKey(PartGroup.Pipes, "hose-1/2", "hose-16mm"), Says("Pipe or hose along the row, from the catalogue.")]
    public string Line { get; init; } = "";

    /// <summary>[m] Height of the feed line over the pots' base.</summary>
    [
        Quantity(Dimension.Length, "-3 ft", "10 ft"),
        FoundByPlan("on the pots' rims"),
        Says("Height of the feed line over the pots' base.")
    ]
    public double? LineHeight { get; init; }

    /// <summary>Emitters per pot.</summary>
    [Whole(1, 8, 2), Says("Emitters at each pot. Two, so that one blocked emitter does not kill a plant.")]
    public int EmittersPerPot { get; init; }

    /// <summary>Kind of emitter.</summary>
    [
        PartKey(PartGroup.Emitters, "drip-turbulent-1gph", "drip-turbulent-4lph"),
        Says("Kind of emitter, from the catalogue.")
    ]
    public string Emitter { get; init; } = "";

    /// <summary>Emitters (with their holes) also at pots that stand empty.</summary>
    [Choice("true"), Says("Whether empty pots get their emitters too, shut by plug or valve.")]
    public bool EmittersAtEmptyPots { get; init; }

    /// <summary>An inline valve in each emitter's tube.</summary>
    [Choice("false"), Says("A small valve in each emitter's tube.")]
    public bool InlineValves { get; init; }

    /// <summary>[-] How far the inline valves are open.</summary>
    [Quantity(Dimension.Share, "0 %", "100 %", Us = "100 %"), Says("How far the inline valves are open.")]
    public double ValveOpen { get; init; }

    /// <summary>[m] Microtube from the line to the emitter; zero where the emitter sits on the line.</summary>
    [
        Quantity(Dimension.Length, "0 in", "10 ft", Us = "10 in", Metric = "25 cm"),
        Says("Length of the small tube from the line to the emitter; \"0 in\" where it sits on the line.")
    ]
    public double MicrotubeLength { get; init; }

    /// <summary>[m] Bore of the microtube.</summary>
    [Quantity(Dimension.Length, "0.3 mm", "1 in", Us = "0.165 in", Metric = "4 mm"), Says("Bore of the small tube.")]
    public double MicrotubeBore { get; init; }

    /// <summary>[m] Height of the emitter's outlet over the feed line.</summary>
    [
        Quantity(Dimension.Length, "-10 ft", "10 ft", Us = "0 in", Metric = "0 cm"),
        Says("Height of the emitter's outlet over the feed line; below it with a minus.")
    ]
    public double OutletHeight { get; init; }

    /// <summary>[-] Share of the emitters that are taken to be partly clogged.</summary>
    [
        Quantity(Dimension.Share, "0 %", "50 %", Us = "5 %"),
        Says("How many emitters are taken to be partly clogged, when the plan tells how likely a weak pot is.")
    ]
    public double Clogged { get; init; } = 0.05;

    /// <summary>Strainer in the feed.</summary>
    [
        PartKey(PartGroup.Strainers, "strainer-150-mesh", "strainer-100-um", Or = "none"),
        Says("Strainer or mesh bag, from the catalogue, or \"none\".")
    ]
    public string Strainer { get; init; } = "";

    /// <summary>From the pump to the rows.</summary>
    [Says("From the pump to the rows.")]
    public required Header Header { get; init; }

    /// <summary>Metal that the solution touches.</summary>
    [Choice("none"), Says("Metal in pump, valves and fittings that the solution touches.")]
    public WettedMetal Metal { get; init; }

    /// <summary>A check valve after the pump.</summary>
    [Choice("false"), Says("A check valve after the pump: the line stays full when the pump stops.")]
    public bool CheckValve { get; init; }

    /// <summary>An anti-siphon hole above the water.</summary>
    [
        Choice("false"),
        Says("A small hole in the header just above the highest water, that lets air in when the pump stops.")
    ]
    public bool SiphonBreak { get; init; }

    /// <summary>[-] How far a throttling valve after the pump is open.</summary>
    [
        Quantity(Dimension.Share, "0 %", "100 %"),
        FoundByPlan("no throttling valve"),
        Says("How far a throttling valve in the header is open.")
    ]
    public double? Throttle { get; init; }

    /// <summary>[-] How far a bypass valve back to the reservoir is open.</summary>
    [
        Quantity(Dimension.Share, "0 %", "100 %"),
        FoundByPlan("no bypass"),
        Says("How far a bypass valve back to the reservoir is open.")
    ]
    public double? Bypass { get; init; }
}

/// <summary>The supply from the pump to the rows.</summary>
public sealed record Header
{
    /// <summary>Pipe or hose of the header.</summary>
    [
        PartKey(PartGroup.Pipes, "hose-3/4", "hose-20mm"),
        Says("Pipe or hose from the pump to the rows, from the catalogue.")
    ]
    public string Pipe { get; init; } = "";

    /// <summary>[m] Level length from the pump to the first row's entry.</summary>
    [
        Quantity(Dimension.Length, "0 ft", "1000 ft"),
        FoundByPlan("from where the reservoir and the row stand"),
        Says("Level length from the pump to the first row.")
    ]
    public double? Run { get; init; }

    /// <summary>[m] Rise from the pump to the first row's feed line.</summary>
    [
        Quantity(Dimension.Length, "-30 ft", "60 ft"),
        FoundByPlan("from the heights of stand, pot and line"),
        Says("Rise from the pump's outlet to the first row's feed line.")
    ]
    public double? Rise { get; init; }

    /// <summary>Elbows between pump and first row.</summary>
    [Whole(0, 50, 2), Says("Elbows between the pump and the first row.")]
    public int Elbows { get; init; }
}
