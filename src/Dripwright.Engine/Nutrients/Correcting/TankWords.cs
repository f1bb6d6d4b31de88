using System.Globalization;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>Amounts in the words of a step.</summary>
internal static class TankWords
{
    public static string Litres(double volume) => string.Create(CultureInfo.InvariantCulture, $"{volume * 1000:0.#} L");

    public static string Millilitres(double volume) =>
        volume < 1e-5
            ? string.Create(CultureInfo.InvariantCulture, $"{volume * 1e6:0.0} mL")
            : string.Create(CultureInfo.InvariantCulture, $"{volume * 1e6:0} mL");

    /// <summary>Constituents in the grower's words.</summary>
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
