using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Proposing;

/// <summary>What a grower has and wants, from which rigs are proposed: what a brief file says, in SI, defaults filled in.</summary>
/// <remarks>Described by the same attributes as the rig file, so reader, faults and handbook work alike.</remarks>
public sealed record Brief
{
    /// <summary>Most pots for which rigs are sought.</summary>
    public const int MostPots = 600;

    /// <summary>Version of the brief's format.</summary>
    [Whole(1, 1, 1), Says("Version of the brief's format.")]
    public int Format { get; init; } = 1;

    /// <summary>What the grower calls it.</summary>
    [Text(60, "My rig"), Says("What you call the rig to be.")]
    public string Name { get; init; } = "My rig";

    /// <summary>Units for display, and the sizes in which parts are bought.</summary>
    [Choice("us"), Says("Units the rigs are shown in, and in which you buy: inch or metric pipe, hose and tanks.")]
    public UnitSystem Units { get; init; }

    /// <summary>Room and supply. Rows are tried along its length and across it.</summary>
    [Says("The room and its supply. Rows are tried along its length and across it.")]
    public required Site Site { get; init; }

    /// <summary>Crops wanted, at least one.</summary>
    [Items(1, 20), Says("What you want to grow.")]
    public required IReadOnlyList<CropWish> Crops { get; init; }

    /// <summary>Plants in each pot; null where the crop tells.</summary>
    [Whole(1, 20, 1), FoundByPlan("what is usual for the crop"), Says("Plants in each pot.")]
    public int? PlantsPerPot { get; init; }

    /// <summary>Kind of pot.</summary>
    [PartKey(PartGroup.Pots, "pot-square-3-gal", "pot-square-11-l"), Says("Kind of pot, from the catalogue.")]
    public string Pot { get; init; } = "";

    /// <summary>[m] Clear way in front of each row.</summary>
    [
        Quantity(Dimension.Length, "0 in", "30 ft", Us = "30 in", Metric = "75 cm"),
        Says("Clear way in front of each row.")
    ]
    public double Aisle { get; init; }

    /// <summary>Fewest emitters at a pot.</summary>
    [Whole(1, 8, 2), Says("Fewest emitters at a pot. Two, so that one blocked emitter does not kill a plant.")]
    public int LeastEmitters { get; init; }

    /// <summary>[m³/s] Water one plant takes in a hot week; null where the crop tells.</summary>
    [
        Quantity(Dimension.Flow, "0.01 L/day", "30 L/day"),
        FoundByPlan("what is usual for the crop"),
        Says("What one plant drinks in a hot week.")
    ]
    public double? UsePerPlant { get; init; }

    /// <summary>[s] How long the reservoir should last.</summary>
    [Quantity(Dimension.Duration, "0 d", "60 d", Us = "3 d"), Says("How many days the reservoir should last.")]
    public double DaysWanted { get; init; }

    /// <summary>[money] Most that the parts to buy may cost, in the catalogue's currency.</summary>
    [
        Price,
        FoundByPlan("no limit"),
        Says("Most that the parts to buy may cost, in the catalogue's currency (US dollars unless yours says another).")
    ]
    public decimal? Budget { get; init; }

    /// <summary>[m] Height at which a tank could stand for feeding by gravity.</summary>
    [
        Quantity(Dimension.Length, "1 ft", "30 ft"),
        FoundByPlan("rigs with a pump only"),
        Says("Height of a shelf that carries a full tank, over the floor, where rigs without a pump are wanted too.")
    ]
    public double? TankShelf { get; init; }

    /// <summary>Parts the grower has already.</summary>
    [Items(0, 500), Says("Parts you have already: they are used first and not bought.")]
    public IReadOnlyList<OnHand> OnHand { get; init; } = [];
}

/// <summary>One crop wanted.</summary>
public sealed record CropWish
{
    /// <summary>Crop in the grower's own word; what the catalogue has of a crop so called is used.</summary>
    [Text(40, "tomato"), Says("Crop, in your own words; what the catalogue knows of it is used.")]
    public string Crop { get; init; } = "";

    /// <summary>Plants of it.</summary>
    [Whole(1, 12_000, 10), Says("Plants of it.")]
    public int Plants { get; init; }

    /// <summary>[m] From pot to pot.</summary>
    [
        Quantity(Dimension.Length, "2 in", "10 ft"),
        FoundByPlan("what is usual for the crop"),
        Says("From pot centre to pot centre. Where crops differ, all pots stand at the widest.")
    ]
    public double? Spacing { get; init; }
}
