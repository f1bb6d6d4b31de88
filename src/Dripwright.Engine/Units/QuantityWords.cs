using System.Globalization;

namespace Dripwright.Engine.Units;

/// <summary>Quantities and counts in plain words, in the rig's units: as findings, summary and sheets all say them.</summary>
/// <param name="units">The rig's system of units.</param>
public sealed class QuantityWords(UnitSystem units)
{
    /// <summary>True for inches and gallons.</summary>
    public bool Us => units == UnitSystem.Us;

    /// <summary>A length, "6 ft 2 1/2 in" or "1.89 m".</summary>
    /// <param name="metres">[m] The length.</param>
    public string Length(double metres) => Of(Dimension.Length, metres);

    /// <summary>A distance to mark with a pencil: sixteenths of an inch or whole millimetres.</summary>
    /// <param name="metres">[m] The distance.</param>
    public string Mark(double metres) => QuantityText.Mark(metres, units);

    /// <summary>A shift to mark: rounded up to the next sixteenth of an inch or millimetre, so that what is read still cures.</summary>
    /// <param name="metres">[m] The least shift.</param>
    public string Shift(double metres)
    {
        var step = Us ? 0.0254 / 16 : 0.001;
        return Mark(Math.Ceiling((metres / step) - 1e-9) * step);
    }

    /// <summary>A small length that is no mark: a drill, the width of a saw.</summary>
    /// <param name="metres">[m] The length.</param>
    public string Size(double metres) =>
        Us && IsSixteenth(metres) ? Mark(metres)
        : Us ? $"{Number(metres / 0.0254, "0.###")} in"
        : $"{Number(metres * 1000, "0.#")} mm";

    /// <summary>A tool's size as the tool is marked: a fraction of an inch where it is one, else decimals; or millimetres.</summary>
    /// <param name="diameter">[m] Diameter.</param>
    public string Tool(double diameter)
    {
        if (!Us)
        {
            return $"{Number(diameter * 1000, "0.#")} mm";
        }

        var sixteenths = diameter / 0.0254 * 16;
        var whole = (int)Math.Round(sixteenths);
        if (whole == 0 || Math.Abs(sixteenths - whole) > 0.02)
        {
            return $"{Number(diameter / 0.0254)} in";
        }

        var bottom = 16;
        var rest = whole % 16;
        while (rest > 0 && rest % 2 == 0)
        {
            rest /= 2;
            bottom /= 2;
        }

        var inches = Count(whole / 16);
        var fraction = $"{Count(rest)}/{Count(bottom)}";
        return rest == 0 ? $"{inches} in"
            : whole < 16 ? $"{fraction} in"
            : $"{inches} {fraction} in";
    }

    /// <summary>Head, which nobody measures in sixteenths.</summary>
    /// <param name="metres">[m] The head.</param>
    public string Head(double metres) => Us ? $"{Number(metres / 0.3048, "0.0")} ft" : $"{Number(metres, "0.00")} m";

    /// <summary>A volume.</summary>
    /// <param name="cubicMetres">[m³] The volume.</param>
    public string Volume(double cubicMetres) => Of(Dimension.Volume, cubicMetres);

    /// <summary>A flow.</summary>
    /// <param name="cubicMetresPerSecond">[m³/s] The flow.</param>
    public string Flow(double cubicMetresPerSecond) => Of(Dimension.Flow, cubicMetresPerSecond);

    /// <summary>A velocity.</summary>
    /// <param name="metresPerSecond">[m/s] The velocity.</param>
    public string Velocity(double metresPerSecond) =>
        Us ? $"{Number(metresPerSecond / 0.3048)} ft/s" : $"{Number(metresPerSecond)} m/s";

    /// <summary>A pressure.</summary>
    /// <param name="pascals">[Pa] The pressure.</param>
    public string Pressure(double pascals) => Of(Dimension.Pressure, pascals);

    /// <summary>A slope.</summary>
    /// <param name="ratio">[-] Fall over length.</param>
    public string Slope(double ratio) => Of(Dimension.Slope, ratio);

    /// <summary>A share to hold against a limit: three figures, "12.5 %".</summary>
    /// <param name="share">[-] The share.</param>
    public string Share(double share) => Of(Dimension.Share, share);

    /// <summary>A force.</summary>
    /// <param name="newtons">[N] The force.</param>
    public string Force(double newtons) => Of(Dimension.Force, newtons);

    /// <summary>A mass.</summary>
    /// <param name="kilograms">[kg] The mass.</param>
    public string Mass(double kilograms) => Of(Dimension.Mass, kilograms);

    /// <summary>A load spread on a floor, as a builder says it.</summary>
    /// <param name="pascals">[Pa] The load.</param>
    public string FloorLoad(double pascals) =>
        Us ? $"{Number(pascals / 47.880259, "0")} lb/ft²" : $"{Number(pascals / 9.80665, "0")} kg/m²";

    /// <summary>A difference of temperature.</summary>
    /// <param name="kelvins">[K] The difference.</param>
    public string Difference(double kelvins) =>
        Us ? $"{Number(kelvins * 1.8, "0.#")} °F" : $"{Number(kelvins, "0.#")} °C";

    /// <summary>A power.</summary>
    /// <param name="watts">[W] The power.</param>
    public string Power(double watts) => Of(Dimension.Power, watts);

    /// <summary>A voltage.</summary>
    /// <param name="volts">[V] The voltage.</param>
    public string Voltage(double volts) => Of(Dimension.Voltage, volts);

    /// <summary>A time.</summary>
    /// <param name="seconds">[s] The time.</param>
    public string Time(double seconds) => Of(Dimension.Duration, seconds);

    /// <summary>A temperature.</summary>
    /// <param name="kelvin">[K] The temperature.</param>
    public string Temperature(double kelvin) => Of(Dimension.Temperature, kelvin);

    /// <summary>A share to read: whole per cent, under 10 % with one decimal.</summary>
    /// <param name="share">[-] The share.</param>
    public static string Percent(double share) => $"{Number(share * 100, Math.Abs(share) < 0.0995 ? "0.#" : "0")} %";

    /// <summary>A whole number.</summary>
    /// <param name="number">[-] The number.</param>
    public static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A number in a format, the same in every culture and never "-0".</summary>
    /// <param name="value">[-] The number.</param>
    /// <param name="format">Its format.</param>
    public static string Number(double value, string format = "0.##")
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith('-') && text.All(c => c is '-' or '0' or '.') ? text[1..] : text;
    }

    /// <summary>Numbers as ranges, in their order: three or more in a row are one range, all others stand alone.</summary>
    /// <param name="numbers">The numbers, in any order.</param>
    public static IReadOnlyList<(int First, int Last)> Ranges(IEnumerable<int> numbers)
    {
        List<(int First, int Last)> ranges = [];
        List<int> open = [];
        foreach (var number in numbers.Distinct().Order().Append(int.MaxValue))
        {
            if (open.Count > 0 && number != open[^1] + 1)
            {
                ranges.AddRange(open.Count > 2 ? [(open[0], open[^1])] : open.Select(n => (n, n)));
                open.Clear();
            }

            open.Add(number);
        }

        return ranges;
    }

    private string Of(Dimension dimension, double si) => QuantityText.Format(dimension, si, units);

    private static bool IsSixteenth(double metres)
    {
        var parts = metres / 0.0254 * 16;
        return Math.Abs(parts - Math.Round(parts)) < 0.02 && parts >= 0.5;
    }
}
