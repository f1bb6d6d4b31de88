using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Timber that a hook is screwed into, by what it weighs.</summary>
public enum Timber
{
    /// <summary>Light softwood, specific gravity 0.36.</summary>
    Light,

    /// <summary>Spruce, pine or fir as sold for framing, specific gravity 0.42.</summary>
    Framing,

    /// <summary>Heavy softwood, specific gravity 0.50.</summary>
    Heavy,

    /// <summary>Steel, masonry or anything else the timber standard does not know.</summary>
    Other,
}

/// <summary>How the ends of a crop wire are held.</summary>
public enum WireEnds
{
    /// <summary>Bolted through a post or frame that is braced along the row.</summary>
    Bolted,

    /// <summary>By the thread of a hook.</summary>
    Hook,
}

/// <summary>The wire over the rows on which the vines hang.</summary>
public sealed record CropWire
{
    /// <summary>Crop wire.</summary>
    [
        PartKey(PartGroup.Wires, "none", "none", Or = "none"),
        Says("Crop wire, from the catalogue; \"none\" where nothing hangs.")
    ]
    public string Wire { get; init; } = "none";

    /// <summary>[m] Height of the wire over the row's floor.</summary>
    [
        Quantity(Dimension.Length, "2 ft", "40 ft", Us = "7 ft", Metric = "2.2 m"),
        Says("Height of the wire over this row's floor.")
    ]
    public double Height { get; init; }

    /// <summary>[m] Greatest distance between two supports.</summary>
    [
        Quantity(Dimension.Length, "6 in", "100 ft", Us = "30 in", Metric = "75 cm"),
        Says("Greatest distance between two supports of the wire.")
    ]
    public double Supports { get; init; }

    /// <summary>[N] Level pull with which the empty wire is tightened.</summary>
    [
        Quantity(Dimension.Force, "1 lbf", "2000 lbf", Us = "45 lbf", Metric = "200 N"),
        Says("Pull with which the empty wire is tightened: by hand about 45 lbf (200 N).")
    ]
    public double Tightened { get; init; }

    /// <summary>[kg] One vine with its fruit; null where the crop tells.</summary>
    [
        Quantity(Dimension.Mass, "0 lb", "200 lb"),
        FoundByPlan("what is usual for the crop"),
        Says("One vine with its fruit: a loaded tomato hangs with 15 to 31 lb (7 to 14 kg).")
    ]
    public double? PlantMass { get; init; }

    /// <summary>Strings to a plant.</summary>
    [Whole(1, 4, 1), Says("Strings to each plant.")]
    public int Strings { get; init; }

    /// <summary>How the wire's ends are held.</summary>
    [Choice("bolted"), Says("How the ends are held: bolted through a braced post or frame, or by a hook's thread.")]
    public WireEnds Ends { get; init; }

    /// <summary>What the hooks are screwed into.</summary>
    [Choice("framing"), Says("What the hooks are screwed into: light, framing or heavy timber, or other.")]
    public Timber Timber { get; init; }

    /// <summary>Whether the timber is or gets wet.</summary>
    [Choice("true"), Says("Whether the timber is or gets wet, as in a greenhouse.")]
    public bool WetTimber { get; init; }

    /// <summary>[m] Shank of a hook.</summary>
    [
        Quantity(Dimension.Length, "1/4 in", "1 1/4 in", Us = "1/4 in", Metric = "8 mm"),
        Says("Diameter of a hook's shank, where it has no thread.")
    ]
    public double HookDiameter { get; init; }

    /// <summary>[m] Thread of a hook in the wood.</summary>
    [
        Quantity(Dimension.Length, "1/4 in", "12 in", Us = "1 1/2 in", Metric = "40 mm"),
        Says("Thread of a hook in the wood, its tip not counted.")
    ]
    public double HookThread { get; init; }

    /// <summary>[m] Lowest point of the lamps over the row's floor.</summary>
    [
        Quantity(Dimension.Length, "2 ft", "100 ft"),
        FoundByPlan("no lamps"),
        Says("Lowest point of the lamps over this row's floor.")
    ]
    public double? Lamps { get; init; }
}
