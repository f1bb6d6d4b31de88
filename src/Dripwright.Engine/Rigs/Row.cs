using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>How the pots of a row stand.</summary>
public enum Arrangement
{
    /// <summary>One line of pots.</summary>
    Single,

    /// <summary>Two lines, every second pot in the back line, with the drain between them.</summary>
    Staggered,
}

/// <summary>Front is the side of the person who faces the row with its left end at the left hand.</summary>
public enum Side
{
    /// <summary>The near side.</summary>
    Front,

    /// <summary>The far side.</summary>
    Back,

    /// <summary>Under the pots, or between the two lines of a staggered row.</summary>
    Middle,
}

/// <summary>One row, or several alike.</summary>
public sealed record Row
{
    /// <summary>Rows alike.</summary>
    [Whole(1, 100, 1), Says("How many rows like this one, one behind the other.")]
    public int Count { get; init; }

    /// <summary>Pots in the row.</summary>
    [Whole(1, 5000, 10), Says("Pots in each row. All rows together may hold 5,000.")]
    public int Pots { get; init; }

    /// <summary>Kind of pot.</summary>
    [PartKey(PartGroup.Pots, "pot-square-3-gal", "pot-square-11-l"), Says("Kind of pot, from the catalogue.")]
    public string Pot { get; init; } = "";

    /// <summary>What the pots are filled with.</summary>
    [PartKey(PartGroup.Media, "coir", "coir"), Says("What the pots are filled with, from the catalogue.")]
    public string Medium { get; init; } = "coir";

    /// <summary>[m] From centre to centre along the row; of a staggered row, from a pot to the next one in the other line.</summary>
    [
        Quantity(Dimension.Length, "2 in", "10 ft", Us = "12 in", Metric = "30 cm"),
        Says("From pot centre to pot centre, measured along the row.")
    ]
    public double Spacing { get; init; }

    /// <summary>Single or staggered.</summary>
    [Choice("single"), Says("One line of pots, or two lines with every second pot set back.")]
    public Arrangement Arrangement { get; init; }

    /// <summary>[m] Between the two lines of a staggered row, centre to centre.</summary>
    [
        Quantity(Dimension.Length, "2 in", "10 ft", Us = "14 in", Metric = "36 cm"),
        Says("Staggered rows: from the front line's centre to the back line's centre.")
    ]
    public double LineDistance { get; init; }

    /// <summary>[m] Length of one stand module.</summary>
    [
        Quantity(Dimension.Length, "6 in", "20 ft", Us = "5 ft", Metric = "1.5 m"),
        Says("Length of one module of the stand.")
    ]
    public double ModuleLength { get; init; }

    /// <summary>Modules in the row.</summary>
    [
        Whole(1, 5000, 0),
        FoundByPlan("as few as carry all pots at their spacing"),
        Says("Stand modules in each row, end to end.")
    ]
    public int? Modules { get; init; }

    /// <summary>[m] Height of the pots' base over the floor at the high end of the drain.</summary>
    [
        Quantity(Dimension.Length, "0 in", "10 ft", Us = "24 in", Metric = "60 cm"),
        Says("Height of the pots' base over this row's floor.")
    ]
    public double StandHeight { get; init; }

    /// <summary>[m] This row's floor over the floor under the reservoir.</summary>
    [
        Quantity(Dimension.Length, "-10 ft", "30 ft", Us = "0 in", Metric = "0 cm"),
        Says("This row's floor over the floor under the reservoir; below it with a minus.")
    ]
    public double FloorLevel { get; init; }

    /// <summary>Side on which the drain runs.</summary>
    [Choice("front"), Says("Side of the row on which the drain runs.")]
    public Side DrainSide { get; init; }

    /// <summary>[m] Clear way in front of this row.</summary>
    [
        Quantity(Dimension.Length, "0 in", "30 ft", Us = "30 in", Metric = "75 cm"),
        Says("Clear way in front of this row.")
    ]
    public double Aisle { get; init; }

    /// <summary>What stands in which pots. Pots that no entry names are empty.</summary>
    [
        Items(0, 500),
        FoundByPlan("every pot planted, crop not said"),
        Says("What stands in which pots. Pots that no entry names are empty.")
    ]
    public IReadOnlyList<Planting>? Planting { get; init; }
}

/// <summary>One crop in some of a row's pots.</summary>
public sealed record Planting
{
    /// <summary>Pots, counted from the left end: "1-6", "3", "1-4, 9" or "all".</summary>
    [Text(200, "all"), Says("Pots, counted from the left end: \"1-6\", \"3\", \"1-4, 9\" or \"all\".")]
    public string Pots { get; init; } = "all";

    /// <summary>Crop in the grower's own word; what the catalogue has of a crop so called is used.</summary>
    [Text(40, "tomato"), Says("Crop, in your own words; what the catalogue knows of it is used.")]
    public string Crop { get; init; } = "";

    /// <summary>Plants in each pot; null where the crop tells.</summary>
    [Whole(1, 20, 1), FoundByPlan("what is usual for the crop"), Says("Plants in each pot.")]
    public int? Plants { get; init; }

    /// <summary>Emitters at each of these pots.</summary>
    [Whole(1, 8, 0), FoundByPlan("as the feed says"), Says("Emitters at each of these pots.")]
    public int? Emitters { get; init; }

    /// <summary>[m] Small tube from the line to each of these pots' emitters.</summary>
    [
        Quantity(Dimension.Length, "0 in", "10 ft"),
        FoundByPlan("as the feed says"),
        Says("Length of the small tubes to these pots.")
    ]
    public double? MicrotubeLength { get; init; }

    /// <summary>[-] How far the inline valves of these pots' emitters are open.</summary>
    [
        Quantity(Dimension.Share, "0 %", "100 %"),
        FoundByPlan("as the feed says"),
        Says("How far the inline valves at these pots are open.")
    ]
    public double? ValveOpen { get; init; }
}
