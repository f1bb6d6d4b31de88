using System.Globalization;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Report;

/// <summary>Quantities and counts as the rig's grower reads them.</summary>
internal sealed class SummaryWords(UnitSystem units)
{
    public string Length(double metres) => QuantityText.Format(Dimension.Length, metres, units);

    /// <summary>Head, which nobody measures in sixteenths.</summary>
    public string Head(double metres) =>
        units == UnitSystem.Us ? $"{Decimals(metres / 0.3048, "0.0")} ft" : $"{Decimals(metres, "0.00")} m";

    public string Volume(double cubicMetres) => QuantityText.Format(Dimension.Volume, cubicMetres, units);

    public string Flow(double cubicMetresPerSecond) => QuantityText.Format(Dimension.Flow, cubicMetresPerSecond, units);

    public string Pressure(double pascals) => QuantityText.Format(Dimension.Pressure, pascals, units);

    public string Slope(double ratio) => QuantityText.Format(Dimension.Slope, ratio, units);

    public string Power(double watts) => QuantityText.Format(Dimension.Power, watts, units);

    public string Force(double newtons) => QuantityText.Format(Dimension.Force, newtons, units);

    public string Time(double seconds) => QuantityText.Format(Dimension.Duration, seconds, units);

    /// <summary>"1 pot", "16 pots".</summary>
    public static string Count(int number, string one, string many) => $"{Whole(number)} {(number == 1 ? one : many)}";

    public static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A share in whole per cent; under 10 % with one decimal.</summary>
    public static string Percent(double share)
    {
        var text = (share * 100).ToString(Math.Abs(share) < 0.0995 ? "0.#" : "0", CultureInfo.InvariantCulture);
        return $"{(text == "-0" ? "0" : text)} %";
    }

    public static string Decimals(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    /// <summary>A name as it stands within a sentence: "Poly hose" becomes "poly hose", "PVC pipe" stays.</summary>
    public static string Small(string name) =>
        name.Length > 1 && char.IsUpper(name[0]) && char.IsLower(name[1])
            ? char.ToLowerInvariant(name[0]) + name[1..]
            : name;

    /// <summary>A name as it stands at the start of a line.</summary>
    public static string Large(string name) => name.Length > 0 ? char.ToUpperInvariant(name[0]) + name[1..] : name;

    /// <summary>"tomato, pepper and basil".</summary>
    public static string Listed(IReadOnlyList<string> words) =>
        words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.Take(words.Count - 1))} and {words[^1]}";
}
