using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Where the drain pipe leaves a row.</summary>
public enum DrainExit
{
    /// <summary>At the end next to the reservoir.</summary>
    End,

    /// <summary>Through a tee in the middle; both halves slope to it.</summary>
    Middle,
}

/// <summary>Where the drainage goes.</summary>
public enum DrainTarget
{
    /// <summary>Back into the reservoir.</summary>
    Reservoir,

    /// <summary>Into a second, lower tank that the grower empties or pumps back.</summary>
    CatchTank,
}

/// <summary>From the pots back to the reservoir, alike for all rows.</summary>
public sealed record Drain
{
    /// <summary>Drain pipe.</summary>
    [PartKey(PartGroup.Pipes, "pvc40-1-1/2", "pvcu-50mm"), Says("Drain pipe, from the catalogue.")]
    public string Pipe { get; init; } = "";

    /// <summary>[m/m] Slope towards the exit.</summary>
    [
        Quantity(Dimension.Slope, "0 %", "20 %", Us = "1/4 in per ft", Metric = "2 %"),
        Says("Slope: drop per length, such as \"1/4 in per ft\", \"10 mm/m\" or \"1 %\".")
    ]
    public double Slope { get; init; }

    /// <summary>Where it leaves the row.</summary>
    [Choice("end"), Says("Where the drain leaves the row.")]
    public DrainExit Exit { get; init; }

    /// <summary>Drain elbow and seal of a pot.</summary>
    [
        PartKey(PartGroup.Outlets, "outlet-3/4", "outlet-20mm"),
        Says("Drain elbow of a pot with its seal, from the catalogue.")
    ]
    public string Outlet { get; init; } = "";

    /// <summary>[m] From the pots' base down to the drain pipe's top at the high end.</summary>
    [
        Quantity(Dimension.Length, "-1 ft", "6 ft", Us = "1 in", Metric = "2.5 cm"),
        Says("From the pots' base down to the top of the drain pipe at its high end.")
    ]
    public double BelowPots { get; init; }

    /// <summary>A vent at the high end.</summary>
    [Choice("true"), Says("An open vent at the high end, so that the drain cannot lock with air.")]
    public bool Vent { get; init; }

    /// <summary>[m] From the drain's mouth down to the reservoir's lid.</summary>
    [
        Quantity(Dimension.Length, "-3 ft", "10 ft"),
        FoundByPlan("from the heights of stand, slope and reservoir"),
        Says("Drop from the drain's mouth to the reservoir's lid.")
    ]
    public double? Drop { get; init; }

    /// <summary>Where the drainage goes.</summary>
    [Choice("reservoir"), Says("Where the drainage goes.")]
    public DrainTarget Into { get; init; }
}
