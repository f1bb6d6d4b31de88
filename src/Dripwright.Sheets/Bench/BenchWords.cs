using System.Globalization;
using System.Text.RegularExpressions;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Sheets.Bench;

/// <summary>Quantities as they stand on a sheet at the bench: the rig's units, true fractions, the unit kept with its number.</summary>
internal sealed partial class BenchWords(UnitSystem units)
{
    private const char Tie = '\u00a0';

    /// <summary>True for inches and gallons.</summary>
    public bool Us => units == UnitSystem.Us;

    /// <summary>Scales and rulers to draw with.</summary>
    public Drawing.Units Drawn => Us ? Drawing.Units.UnitedStates : Drawing.Units.Metric;

    /// <summary>A distance to mark with a pencil: sixteenths of an inch or whole millimetres.</summary>
    public string Mark(double metres) => Tied(QuantityText.Mark(metres, units));

    /// <summary>A length.</summary>
    public string Length(double metres) => Tied(QuantityText.Format(Dimension.Length, metres, units));

    /// <summary>A small length that is no mark: a drill, the width of a saw.</summary>
    public string Size(double metres) =>
        Us && IsSixteenth(metres) ? Mark(metres)
        : Us ? $"{Number(metres / 0.0254, "0.###")}{Tie}in"
        : Millimetres(metres);

    /// <summary>A flow.</summary>
    public string Flow(double cubicMetresPerSecond) =>
        Tied(QuantityText.Format(Dimension.Flow, cubicMetresPerSecond, units));

    /// <summary>A pressure.</summary>
    public string Pressure(double pascals) => Tied(QuantityText.Format(Dimension.Pressure, pascals, units));

    /// <summary>A volume.</summary>
    public string Volume(double cubicMetres) => Tied(QuantityText.Format(Dimension.Volume, cubicMetres, units));

    /// <summary>A time.</summary>
    public string Time(double seconds) => Tied(QuantityText.Format(Dimension.Duration, seconds, units));

    /// <summary>A slope.</summary>
    public string Slope(double slope) => Tied(QuantityText.Format(Dimension.Slope, slope, units));

    /// <summary>A head, which nobody measures in sixteenths.</summary>
    public string Head(double metres) =>
        Us ? $"{Number(metres / 0.3048, "0.0")}{Tie}ft" : $"{Number(metres, "0.00")}{Tie}m";

    /// <summary>A velocity.</summary>
    public string Velocity(double metresPerSecond) =>
        Us ? $"{Number(metresPerSecond / 0.3048, "0.0#")}{Tie}ft/s" : $"{Number(metresPerSecond, "0.0#")}{Tie}m/s";

    /// <summary>"12 mm", with one decimal where it counts.</summary>
    public static string Millimetres(double metres) => $"{Number(metres * 1000, "0.#")}{Tie}mm";

    /// <summary>A share in per cent.</summary>
    public static string Percent(double share) => $"{Number(share * 100, share < 0.0995 ? "0.#" : "0")}{Tie}%";

    /// <summary>A whole number.</summary>
    public static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>"1 hole", "3 holes".</summary>
    public static string Count(int number, string one, string? many = null) =>
        $"{Count(number)}{Tie}{(number == 1 ? one : many ?? one + "s")}";

    /// <summary>A number in a fixed format.</summary>
    public static string Number(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith('-') && text.All(c => c is '-' or '0' or '.') ? text[1..] : text;
    }

    /// <summary>"1 to 4, 7": a list of numbers as short as it goes.</summary>
    public static string Numbers(IEnumerable<int> numbers)
    {
        var parts = new List<string>();
        var open = new List<int>();
        foreach (var number in numbers.Distinct().Order().Append(int.MaxValue))
        {
            if (open.Count > 0 && number != open[^1] + 1)
            {
                parts.Add(
                    open.Count > 2 ? $"{Count(open[0])} to {Count(open[^1])}"
                    : open.Count > 1 ? $"{Count(open[0])}, {Count(open[1])}"
                    : Count(open[0])
                );
                open.Clear();
            }

            open.Add(number);
        }

        return string.Join(", ", parts);
    }

    /// <summary>"D1-A, D1-B and 6 more": labels as far as they are worth reading.</summary>
    public static string Labels(IReadOnlyList<string> labels, int most = 12) =>
        labels.Count <= most
            ? string.Join(", ", labels)
            : $"{string.Join(", ", labels.Take(most - 1))} and {Count(labels.Count - most + 1)} more";

    /// <summary>A hole's number with what it serves: "3, pot 2".</summary>
    public static string Hole(HoleMark mark) =>
        mark.Pot > 0 ? $"{Count(mark.Number)}, pot{Tie}{Count(mark.Pot)}" : $"{Count(mark.Number)}, siphon{Tie}break";

    /// <summary>Any text of the plan with true fractions and its units tied to their numbers.</summary>
    public static string Typeset(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var set = WrittenFraction().Replace(text, m => FractionOf(m) ?? m.Value);
        return UnitGap().Replace(set, Tie.ToString());
    }

    /// <summary>A quantity: nothing in it may break.</summary>
    private static string Tied(string quantity) => Typeset(quantity).Replace(' ', Tie);

    private static bool IsSixteenth(double metres)
    {
        var parts = metres / 0.0254 * 16;
        return Math.Abs(parts - Math.Round(parts)) < 0.02 && parts >= 0.5;
    }

    private static string? FractionOf(Match match)
    {
        var whole = match.Groups["whole"].Value;
        var fraction = (match.Groups["over"].Value, match.Groups["under"].Value) switch
        {
            ("1", "2") => "½",
            ("1", "4") => "¼",
            ("3", "4") => "¾",
            ("1", "8") => "⅛",
            ("3", "8") => "⅜",
            ("5", "8") => "⅝",
            ("7", "8") => "⅞",
            (var over, "16") => $"{Shifted(over, "⁰¹²³⁴⁵⁶⁷⁸⁹")}⁄{Shifted("16", "₀₁₂₃₄₅₆₇₈₉")}",
            _ => null,
        };
        return fraction is null ? null
            : whole.Length == 0 ? fraction
            : $"{whole}{Tie}{fraction}";
    }

    private static string Shifted(string digits, string shapes) => string.Concat(digits.Select(d => shapes[d - '0']));

    [GeneratedRegex(
        @"(?<![\d/.])(?:(?<whole>\d+)[ \u00a0-])?(?<over>\d{1,2})/(?<under>\d{1,2})(?![\d/])",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex WrittenFraction();

    [GeneratedRegex(
        @"(?<=[\d½¼¾⅛⅜⅝⅞₆]) (?=(?:in|ft|mm|cm|m|L|mL|gal|gph|psi|kPa|s|min|h|W)\b)",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex UnitGap();
}
