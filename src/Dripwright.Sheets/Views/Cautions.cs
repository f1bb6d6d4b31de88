using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>What to beware of, worded once. Common practice; local codes come first.</summary>
internal static class Cautions
{
    /// <summary>A metal stand near mains.</summary>
    public static string Bond => Words.Of("sheet.stand.bond");

    /// <summary>Mains near water.</summary>
    public static string Mains => Words.Of("sheet.caution.mains");

    /// <summary>Codes.</summary>
    public static string Codes => Words.Of("sheet.caution.codes");

    /// <summary>Solvent cement.</summary>
    public static string Cement => Words.Of("sheet.caution.cement");

    /// <summary>Hole saw.</summary>
    public static string HoleSaw => Words.Of("sheet.caution.hole-saw");

    /// <summary>Cutting tubes.</summary>
    public static string Saw => Words.Of("sheet.caution.saw");

    /// <summary>Weight of the water.</summary>
    public static string Weight(Plan plan) =>
        Words.Of("sheet.caution.weight", new Wording(plan.Rig.Units).Mass(plan.Reservoir.WaterMass));

    /// <summary>Climbing.</summary>
    public static string Climb => Words.Of("sheet.caution.climb");

    /// <summary>What the crop wire hangs on.</summary>
    /// <param name="pull">Pull on each end, in words.</param>
    public static string WirePull(string pull) => Words.Of("sheet.caution.overhead", pull);

    /// <summary>Work on a ladder.</summary>
    public static string Ladder => Words.Of("sheet.caution.ladder");

    /// <summary>Tightening a wire.</summary>
    public static string Tighten => Words.Of("sheet.caution.tighten");

    /// <summary>Ends of wire.</summary>
    public static string WireEnds => Words.Of("sheet.caution.wire-ends");

    /// <summary>Lifting.</summary>
    public static string Lift => Words.Of("sheet.caution.lift");
}
