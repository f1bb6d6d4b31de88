using Dripwright.Engine.Nutrition.Chemistry;

namespace Dripwright.Engine.Nutrition.Tank;

/// <summary>Constituents in the grower's words.</summary>
internal static class Words
{
    public static string Of(Constituent constituent) =>
        constituent switch
        {
            Constituent.NitrateNitrogen => "nitrate",
            Constituent.AmmoniumNitrogen => "ammonium",
            Constituent.InorganicCarbon => "bicarbonate",
            Constituent.Sulfur => "sulfate",
            Constituent.Phosphorus => "phosphate",
            _ => constituent.ToString().ToLowerInvariant(),
        };
}
