using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>What the rig stands on.</summary>
public enum FloorKind
{
    /// <summary>The ground, or a slab on it.</summary>
    Ground,

    /// <summary>A floor over another room.</summary>
    Upper,

    /// <summary>A balcony or deck.</summary>
    Balcony,

    /// <summary>A roof.</summary>
    Roof,
}

/// <summary>The room and its supply.</summary>
public sealed record Site
{
    /// <summary>Name of the place.</summary>
    [Text(80, "Unnamed place"), Says("Name of the place.")]
    public string Name { get; init; } = "Unnamed place";

    /// <summary>[m] Room along the rows.</summary>
    [
        Quantity(Dimension.Length, "1 ft", "1000 ft", Us = "20 ft", Metric = "6 m"),
        Says("Clear length of the room, along the rows.")
    ]
    public double RoomLength { get; init; }

    /// <summary>[m] Room across the rows.</summary>
    [
        Quantity(Dimension.Length, "1 ft", "1000 ft", Us = "12 ft", Metric = "3.5 m"),
        Says("Clear width of the room, across the rows.")
    ]
    public double RoomWidth { get; init; }

    /// <summary>[m] Clear height.</summary>
    [Quantity(Dimension.Length, "3 ft", "100 ft", Us = "8 ft", Metric = "2.5 m"), Says("Clear height of the room.")]
    public double RoomHeight { get; init; }

    /// <summary>What the rig stands on.</summary>
    [Choice("ground"), Says("What it stands on: the ground, an upper floor, a balcony or deck, a roof.")]
    public FloorKind Floor { get; init; }

    /// <summary>[K] The coldest it gets where the rig stands; null where it never freezes.</summary>
    [
        Quantity(Dimension.Temperature, "-60 F", "100 F"),
        FoundByPlan("it never freezes"),
        Says("The coldest it gets where the rig stands, while it holds water.")
    ]
    public double? Coldest { get; init; }

    /// <summary>[m] Height over the sea.</summary>
    [Quantity(Dimension.Length, "-1500 ft", "16000 ft", Us = "0 ft", Metric = "0 m"), Says("Height over the sea.")]
    public double Elevation { get; init; }

    /// <summary>[V] Supply voltage.</summary>
    [Quantity(Dimension.Voltage, "5 V", "480 V", Us = "120 V", Metric = "230 V"), Says("Voltage of the supply.")]
    public double Voltage { get; init; }

    /// <summary>[Hz] Supply frequency; zero is direct current.</summary>
    [Quantity(Dimension.Frequency, "0 Hz", "60 Hz", Us = "60 Hz", Metric = "50 Hz"), Says("Frequency of the supply.")]
    public double Frequency { get; init; }

    /// <summary>[A] Breaker of the pump's circuit.</summary>
    [
        Quantity(Dimension.Current, "1 A", "100 A", Us = "15 A", Metric = "16 A"),
        Says("Breaker of the circuit the pump hangs on.")
    ]
    public double Breaker { get; init; }

    /// <summary>[W] Other loads on the pump's circuit.</summary>
    [
        Quantity(Dimension.Power, "0 W", "50 kW", Us = "0 W"),
        Says("Lamps, heaters and all else on the same circuit, together.")
    ]
    public double OtherLoads { get; init; }

    /// <summary>[m] Height of the outlet for the pump's plug over the floor.</summary>
    [
        Quantity(Dimension.Length, "0 in", "30 ft", Us = "3 ft", Metric = "90 cm"),
        Says("Height of the wall outlet over the floor.")
    ]
    public double OutletHeight { get; init; }

    /// <summary>[m] Way from the reservoir to the outlet.</summary>
    [
        Quantity(Dimension.Length, "0 ft", "300 ft", Us = "3 ft", Metric = "1 m"),
        Says("Way along the floor from the reservoir to the wall outlet.")
    ]
    public double OutletDistance { get; init; }
}
