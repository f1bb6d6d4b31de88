using Dripwright.Engine;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>What to beware of, worded once. Common practice; local codes come first.</summary>
internal static class Cautions
{
    /// <summary>Mains near water.</summary>
    public const string Mains =
        "Mains near water can kill. Plug the pump only into an outlet with a ground-fault switch (GFCI, RCD). Keep every plug and "
        + "timer above the highest water, and let the cord hang in a drip loop below the plug. Unplug before you reach into the "
        + "water. A licensed electrician does all fixed wiring.";

    /// <summary>Codes.</summary>
    public const string Codes = "Where local codes or the makers' instructions say otherwise, they come first.";

    /// <summary>Solvent cement.</summary>
    public const string Cement =
        "Primer and cement give off vapours that burn and make dizzy. Work outdoors or by an open window, away from flames and "
        + "sparks, with gloves and goggles; close the tins.";

    /// <summary>Hole saw.</summary>
    public const string HoleSaw =
        "Clamp the work. A hole saw that catches turns the pipe or your wrist. Goggles on, no gloves near the turning saw, and "
        + "collect every chip: chips block emitters.";

    /// <summary>Cutting tubes.</summary>
    public const string Saw = "Cut edges of steel tube are sharp. Goggles and gloves, then deburr inside and out.";

    /// <summary>Weight of the water.</summary>
    public static string Weight(Plan plan) =>
        $"The water in the full reservoir weighs {new Wording(plan.Rig.Units).Mass(plan.Reservoir.WaterMass)}. Set it on level ground "
        + "that carries it, and never move or lift it full.";

    /// <summary>Climbing.</summary>
    public const string Climb = "Never climb, sit or lean on the stand.";

    /// <summary>What the crop wire hangs on.</summary>
    /// <param name="pull">Pull on each end, in words.</param>
    public static string Overhead(string pull) =>
        $"Under the grown crop each end is pulled with {pull}, day and night. A house frame, ceiling or wall that was not made for "
        + "it can give way: have a professional look at what carries it before you fasten anything.";

    /// <summary>Work on a ladder.</summary>
    public const string Ladder =
        "Stand the ladder on level, dry ground, stay under its top rungs, and have somebody hold it. Goggles on when you drill or "
        + "screw overhead.";

    /// <summary>Tightening a wire.</summary>
    public const string Tighten =
        "A wire that slips or breaks whips. Goggles and gloves on; nobody stands under the wire or in line with it while it is "
        + "tightened, and nobody ever hangs, climbs or swings on it.";

    /// <summary>Ends of wire.</summary>
    public const string WireEnds =
        "A wire's end is sharp and hard to see, at the height of eyes. Goggles on; no end stays bare.";

    /// <summary>Lifting.</summary>
    public const string Lift = "Two people lift a wet pot or a full row's parts. Bend the knees, keep the load close.";
}
