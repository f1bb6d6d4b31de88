using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>An end of the rows, as seen from the front.</summary>
public enum RowEnd
{
    /// <summary>Left.</summary>
    Left,

    /// <summary>Right.</summary>
    Right,
}

/// <summary>What a reservoir is made of, where the solution touches it.</summary>
public enum TankMaterial
{
    /// <summary>New plastic made for water or food.</summary>
    Plastic,

    /// <summary>Anything, with a liner made for water.</summary>
    Lined,

    /// <summary>Stainless steel.</summary>
    Stainless,

    /// <summary>Plastic that was not made for water or food.</summary>
    OtherPlastic,

    /// <summary>A drum or tank in which something unknown has been.</summary>
    Used,

    /// <summary>Galvanised steel.</summary>
    Galvanised,

    /// <summary>Copper or brass.</summary>
    Copper,
}

/// <summary>Metal in pump, valves and fittings that the solution touches.</summary>
public enum WettedMetal
{
    /// <summary>None.</summary>
    None,

    /// <summary>Stainless steel.</summary>
    Stainless,

    /// <summary>Brass.</summary>
    Brass,

    /// <summary>Copper.</summary>
    Copper,

    /// <summary>Galvanised steel.</summary>
    Galvanised,
}

/// <summary>The reservoir.</summary>
public sealed record Reservoir
{
    /// <summary>Kind of tank; its measures may be overruled below.</summary>
    [
        PartKey(PartGroup.Tanks, "tank-box-35-gal", "tank-box-130-l"),
        Says("Kind of tank, from the catalogue. The measures below overrule it.")
    ]
    public string Tank { get; init; } = "";

    /// <summary>Shape.</summary>
    [FoundByPlan("as the tank"), Says("Shape.")]
    public TankShape? Shape { get; init; }

    /// <summary>[m] Inside length, or the diameter of an upright cylinder.</summary>
    [
        Quantity(Dimension.Length, "3 in", "30 ft"),
        FoundByPlan("as the tank"),
        Says("Inside length; of a round tank its diameter.")
    ]
    public double? Length { get; init; }

    /// <summary>[m] Inside width; of a lying cylinder its diameter.</summary>
    [
        Quantity(Dimension.Length, "3 in", "30 ft"),
        FoundByPlan("as the tank"),
        Says("Inside width; of a lying cylinder its diameter.")
    ]
    public double? Width { get; init; }

    /// <summary>[m] Inside height to the rim.</summary>
    [Quantity(Dimension.Length, "2 in", "20 ft"), FoundByPlan("as the tank"), Says("Inside height to the rim.")]
    public double? Height { get; init; }

    /// <summary>[m³] Volume to the rim, where measured; it then counts, and the shape only says how it is spread over the height.</summary>
    [
        Quantity(Dimension.Volume, "0.2 gal", "5000 gal"),
        FoundByPlan("from the shape"),
        Says("Volume to the rim, if you measured it: all volumes then go by it.")
    ]
    public double? Volume { get; init; }

    /// <summary>What it is made of.</summary>
    [Choice("plastic"), Says("What the solution touches in it: \"used\" is a drum of unknown past.")]
    public TankMaterial Material { get; init; }

    /// <summary>A lid.</summary>
    [Choice("true"), Says("A lid that keeps light out.")]
    public bool Lid { get; init; }

    /// <summary>[-] The mark to which it is filled and topped up, of the height to the rim.</summary>
    [
        Quantity(Dimension.Share, "1 %", "100 %", Us = "75 %"),
        Says("The mark you fill and top it up to, as a share of the inside height.")
    ]
    public double Fill { get; init; }

    /// <summary>[m] Lowest level kept, over the tank's floor.</summary>
    [
        Quantity(Dimension.Length, "0 in", "20 ft", Us = "3 1/2 in", Metric = "9 cm"),
        Says("Lowest water level you keep, over the tank's floor.")
    ]
    public double LowestLevel { get; init; }

    /// <summary>[m] The tank's floor over the room's floor; below it with a minus.</summary>
    [
        Quantity(Dimension.Length, "-10 ft", "30 ft", Us = "0 in", Metric = "0 cm"),
        Says("The tank's floor over the room's floor; sunk with a minus.")
    ]
    public double Base { get; init; }

    /// <summary>End of the rows at which it stands.</summary>
    [Choice("left"), Says("End of the rows at which it stands.")]
    public RowEnd At { get; init; }

    /// <summary>[m] From the row's end to the tank's near side; below zero it stands under the row.</summary>
    [
        Quantity(Dimension.Length, "-30 ft", "300 ft", Us = "6 in", Metric = "15 cm"),
        Says("From the row's end to the tank; with a minus it stands under the row.")
    ]
    public double Gap { get; init; }

    /// <summary>[K] Water temperature.</summary>
    [
        Quantity(Dimension.Temperature, "33 F", "120 F", Us = "68 F", Metric = "20 C"),
        Says("Usual temperature of the water.")
    ]
    public double WaterTemperature { get; init; }

    /// <summary>[m³/s] Water one plant takes in a hot week; null where the crop tells.</summary>
    [
        Quantity(Dimension.Flow, "0 L/day", "30 L/day"),
        FoundByPlan("what is usual for the crop"),
        Says(
            "What one plant drinks in a hot week. A full-grown tomato takes 0.5 to 0.7 gal (1.9 to 2.7 L) on a hot day."
        )
    ]
    public double? UsePerPlant { get; init; }

    /// <summary>[s] How long it should last without a hand.</summary>
    [Quantity(Dimension.Duration, "0 d", "60 d", Us = "3 d"), Says("How many days it should last in a hot week.")]
    public double DaysWanted { get; init; }
}

/// <summary>The pump.</summary>
public sealed record Pump
{
    /// <summary>Kind of pump, "none" for gravity feed.</summary>
    [
        PartKey(PartGroup.Pumps, "pump-400gph", "pump-1500lph", Or = "none"),
        Says("Kind of pump, from the catalogue, or \"none\" for gravity feed. The figures below overrule it.")
    ]
    public string Model { get; init; } = "";

    /// <summary>The curve's points, flow rising.</summary>
    [
        Items(0, 50),
        FoundByPlan("as the model"),
        Says("The curve as points, from no flow on; a leaflet's last point may have head left.")
    ]
    public IReadOnlyList<LeafletPoint>? Curve { get; init; }

    /// <summary>[m] Head at no flow.</summary>
    [
        Quantity(Dimension.Length, "1 in", "300 ft"),
        FoundByPlan("as the model"),
        Says("Greatest lift: the head at which no water comes.")
    ]
    public double? ShutOffHead { get; init; }

    /// <summary>[m³/s] Flow at no head.</summary>
    [
        Quantity(Dimension.Flow, "1 gph", "100000 gph"),
        FoundByPlan("as the model"),
        Says("Open flow: what it gives with no lift at all.")
    ]
    public double? OpenFlow { get; init; }

    /// <summary>[W] Electrical input.</summary>
    [Quantity(Dimension.Power, "0.1 W", "20 kW"), FoundByPlan("as the model"), Says("Electrical power it draws.")]
    public double? Power { get; init; }

    /// <summary>[m] Cord length.</summary>
    [Quantity(Dimension.Length, "0 ft", "300 ft"), FoundByPlan("as the model"), Says("Length of its cord.")]
    public double? Cord { get; init; }

    /// <summary>Side of the tank on which the cord leaves.</summary>
    [Choice("back"), Says("Side of the tank on which the cord leaves.")]
    public Side CordSide { get; init; }

    /// <summary>A float switch that stops it before it runs dry.</summary>
    [Choice("false"), Says("A float switch that stops it at the lowest level.")]
    public bool FloatSwitch { get; init; }

    /// <summary>[m] Height of the inlet over the tank's floor.</summary>
    [
        Quantity(Dimension.Length, "0 in", "10 ft"),
        FoundByPlan("as the model"),
        Says("Height of its inlet over the tank's floor.")
    ]
    public double? InletHeight { get; init; }
}

/// <summary>One point of the pump's curve as its leaflet gives it, in a rig file.</summary>
public sealed record LeafletPoint
{
    /// <summary>[m³/s] Flow.</summary>
    [Quantity(Dimension.Flow, "0 gph", "100000 gph", Us = "0 gph"), Says("Flow.")]
    public double Flow { get; init; }

    /// <summary>[m] Head.</summary>
    [Quantity(Dimension.Length, "0 ft", "300 ft", Us = "0 ft"), Says("Head at that flow.")]
    public double Head { get; init; }
}

/// <summary>How the pump is switched.</summary>
public enum TimerMode
{
    /// <summary>Always on.</summary>
    Continuous,

    /// <summary>On and off in turn.</summary>
    Cycle,
}

/// <summary>When the pump runs.</summary>
public sealed record Timer
{
    /// <summary>Continuous or in cycles.</summary>
    [Choice("cycle"), Says("Always on, or on and off in turn.")]
    public TimerMode Mode { get; init; }

    /// <summary>[s] Length of one watering.</summary>
    [Quantity(Dimension.Duration, "1 s", "24 h", Us = "15 min"), Says("How long it is on.")]
    public double On { get; init; }

    /// <summary>[s] Pause between two waterings.</summary>
    [Quantity(Dimension.Duration, "0 s", "24 h", Us = "45 min"), Says("How long it is off.")]
    public double Off { get; init; }

    /// <summary>[s] Hours of the day in which it cycles.</summary>
    [Quantity(Dimension.Duration, "1 h", "24 h", Us = "14 h"), Says("Hours of the day in which it waters.")]
    public double HoursPerDay { get; init; }
}

/// <summary>Something the grower has already.</summary>
public sealed record OnHand
{
    /// <summary>Catalogue key.</summary>
    [PartKey(PartGroup.Any), Says("The part's key in the catalogue.")]
    public string Part { get; init; } = "";

    /// <summary>Pieces.</summary>
    [Whole(1, 100000, 1), Says("How many.")]
    public int Count { get; init; }

    /// <summary>[m] Length of each piece of pipe, hose or tube.</summary>
    [
        Quantity(Dimension.Length, "1 in", "2000 ft"),
        FoundByPlan("not a length"),
        Says("Length of each, for pipe, hose and tube.")
    ]
    public double? Length { get; init; }
}

/// <summary>Spares wanted.</summary>
public sealed record Spares
{
    /// <summary>[-] Share of emitters and their pieces.</summary>
    [Quantity(Dimension.Share, "0 %", "100 %", Us = "10 %"), Says("Spare emitters and barbs.")]
    public double Emitters { get; init; }

    /// <summary>[-] Share of seals and grommets.</summary>
    [Quantity(Dimension.Share, "0 %", "100 %", Us = "20 %"), Says("Spare seals and grommets.")]
    public double Seals { get; init; }

    /// <summary>[-] Share of fittings and clamps.</summary>
    [Quantity(Dimension.Share, "0 %", "100 %", Us = "10 %"), Says("Spare fittings and clamps.")]
    public double Fittings { get; init; }

    /// <summary>Spare pumps.</summary>
    [Whole(0, 5, 1), Says("Spare pumps.")]
    public int Pumps { get; init; }

    /// <summary>Spare timers.</summary>
    [Whole(0, 5, 0), Says("Spare timers.")]
    public int Timers { get; init; }

    /// <summary>[m] Spare length of each small tube and hose.</summary>
    [
        Quantity(Dimension.Length, "0 in", "100 ft", Us = "3 ft", Metric = "1 m"),
        Says("Spare length of each hose and small tube.")
    ]
    public double Tube { get; init; }
}
