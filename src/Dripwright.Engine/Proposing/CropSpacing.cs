using Dripwright.Engine.Units;

namespace Dripwright.Engine.Proposing;

/// <summary>From pot to pot where the grower does not say. Common practice; no one source.</summary>
internal static class CropSpacing
{
    private static readonly Dictionary<string, (double Inches, double Centimetres)> s_known = new(
        StringComparer.OrdinalIgnoreCase
    )
    {
        ["tomato"] = (16, 40),
        ["cherry tomato"] = (16, 40),
        ["cucumber"] = (16, 40),
        ["pepper"] = (14, 35),
        ["eggplant"] = (18, 45),
        ["bean"] = (10, 25),
        ["lettuce"] = (10, 25),
        ["basil"] = (10, 25),
        ["strawberry"] = (10, 25),
    };

    /// <summary>[m] Spacing of a crop; of one that is not known the rig file's own default.</summary>
    public static double Of(string crop, UnitSystem units)
    {
        (double inches, double centimetres) = s_known.GetValueOrDefault(crop.Trim(), (12, 30));
        return units == UnitSystem.Us ? inches * 0.0254 : centimetres / 100;
    }
}
