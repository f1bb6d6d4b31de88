using System.Globalization;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Sheets.Nutrients;

/// <summary>Weights, measures and strengths as they are read off a scale, a cylinder and a pen.</summary>
internal static class FeedWords
{
    /// <summary>Grams to the step of the scale, "622.0 g"; millilitres for a liquid.</summary>
    public static string Weigh(double kilograms, double? cubicMetres, double step) =>
        cubicMetres is { } liquid ? Millilitres(liquid) : $"{Number(kilograms * 1000, Decimals(step * 1000))} g";

    /// <summary>Millilitres, from ten on whole.</summary>
    public static string Millilitres(double cubicMetres) =>
        $"{Number(cubicMetres * 1e6, cubicMetres < 1e-5 ? 1 : 0)} mL";

    /// <summary>Litres.</summary>
    public static string Litres(double cubicMetres) =>
        $"{(cubicMetres * 1000).ToString("0.#", CultureInfo.InvariantCulture)} L";

    /// <summary>Milligrams in a litre of the element.</summary>
    public static string Milligrams(Constituent constituent, double concentration)
    {
        var value = Forms.ToMilligramsPerLitre(constituent, concentration);
        return Number(
            value,
            value is >= 10 or <= 0 ? 0
                : value >= 1 ? 1
                : value >= 0.1 ? 2
                : 3
        );
    }

    /// <summary>A number with so many decimals.</summary>
    public static string Number(double value, int decimals) =>
        value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static int Decimals(double grams) =>
        grams >= 0.9999 ? 0
        : grams >= 0.0999 ? 1
        : grams >= 0.00999 ? 2
        : 3;
}
