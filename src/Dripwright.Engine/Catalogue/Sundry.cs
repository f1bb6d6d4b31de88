using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>What a sundry part is for, where the plan must find it by its size.</summary>
public enum SundryUse
{
    /// <summary>Found by its key alone.</summary>
    Other,

    /// <summary>Saw for a round hole.</summary>
    HoleSaw,

    /// <summary>Punch for the feed line.</summary>
    Punch,

    /// <summary>Small tube from the line to an emitter.</summary>
    Microtube,

    /// <summary>Connector from the line to a small tube.</summary>
    Barb,

    /// <summary>Stake that holds an emitter or a small tube.</summary>
    Stake,

    /// <summary>Small valve in an emitter's tube.</summary>
    InlineValve,

    /// <summary>Plug for a wrong or unused hole.</summary>
    GoofPlug,

    /// <summary>Hose clamp.</summary>
    Clamp,
}

/// <summary>Everything else that is bought: cement, clamps, tape, tools, pieces of emitters and outlets, printed joints.</summary>
public sealed record Sundry : CatalogueEntry
{
    /// <summary>Section of the shop: plumbing, irrigation, hardware, electrical, tools, garden, printed.</summary>
    [
        Text(20),
        Says("Where it stands in the shop: plumbing, irrigation, hardware, electrical, tools, garden or printed.")
    ]
    public required string Section { get; init; }

    /// <summary>[m] For things sold by length (microtube, wire): length of one pack. Zero for pieces.</summary>
    [
        Quantity(Dimension.Length, "0 ft", "2000 ft", Us = "0 ft"),
        Says("Length of one pack, for things sold by length.")
    ]
    public double PackLength { get; init; }

    /// <summary>What it is for.</summary>
    [Choice("other"), Says("What it is for, where a plan looks for it by its diameter.")]
    public SundryUse Use { get; init; }

    /// <summary>
    /// [m] Hole that a saw or punch cuts; outside of the hose a clamp takes; bore of a small tube, or of the small tube
    /// it fits. Zero for other things.
    /// </summary>
    [
        Quantity(Dimension.Length, "0 in", "1 ft", Us = "0 in"),
        Says("Hole it cuts, hose it clamps (outside), or bore of the small tube it is or fits.")
    ]
    public double Diameter { get; init; }
}
