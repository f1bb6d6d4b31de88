using System.Globalization;
using System.Text.RegularExpressions;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Quantity = Dripwright.Engine.Rigs.Dimension;

namespace Dripwright.Sheets.Views;

/// <summary>Words and figures of the drawings, in the rig's units.</summary>
internal sealed partial class Wording(UnitSystem units)
{
    private const string Super = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private const string Sub = "₀₁₂₃₄₅₆₇₈₉";

    /// <summary>What the figures of dimensions mean.</summary>
    public string DimensionNote => units == UnitSystem.Us ? "Dimensions in inches" : "Dimensions in mm";

    /// <summary>A dimension's figure without its unit, which the sheet says once.</summary>
    public string Mark(double metres)
    {
        var text = MarkWithUnit(metres);
        return text[..text.LastIndexOf('\u00a0')];
    }

    /// <summary>"15 × 300": alike distances one after another.</summary>
    public string Repeated(int count, double metres) =>
        count == 1 ? Mark(metres) : $"{Count(count)}\u00a0×\u00a0{Mark(metres)}";

    public string MarkWithUnit(double metres) => Tidy(QuantityText.Mark(metres, units));

    public string Length(double metres) => Of(Quantity.Length, metres);

    public string Flow(double flow) => Of(Quantity.Flow, flow);

    public string Volume(double volume) => Of(Quantity.Volume, volume);

    public string Slope(double slope) => Of(Quantity.Slope, slope);

    public string Share(double share) => Of(Quantity.Share, share);

    public string Power(double watts) => Of(Quantity.Power, watts);

    public string Time(double seconds) => Of(Quantity.Duration, seconds);

    public string Force(double newtons) => Of(Quantity.Force, newtons);

    public string Voltage(double volts) => Of(Quantity.Voltage, volts);

    public string Mass(double kilograms) =>
        units == UnitSystem.Us
            ? string.Create(CultureInfo.InvariantCulture, $"{kilograms / 0.45359237:0}\u00a0lb")
            : string.Create(CultureInfo.InvariantCulture, $"{kilograms:0}\u00a0kg");

    public static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    public static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    /// <summary>"1 pot", "12 pots".</summary>
    public static string Counted(int count, string one, string? many = null) =>
        $"{Count(count)}\u00a0{(count == 1 ? one : many ?? one + "s")}";

    /// <summary>True fractions, and numbers that stay with their units, in a whole sentence.</summary>
    public static string Sentence(string text) => BeforeUnit().Replace(Fractions(text), "\u00a0");

    private string Of(Quantity dimension, double value) => Tidy(QuantityText.Format(dimension, value, units));

    private static string Tidy(string quantity) => Fractions(quantity).Replace(' ', '\u00a0');

    private static string Fractions(string text) =>
        Fraction()
            .Replace(
                text,
                match =>
                {
                    var shown = match.Groups["parts"].Value switch
                    {
                        "1/2" => "½",
                        "1/4" => "¼",
                        "3/4" => "¾",
                        "1/8" => "⅛",
                        "3/8" => "⅜",
                        "5/8" => "⅝",
                        "7/8" => "⅞",
                        _ => Digits(match.Groups["over"].Value, Super) + "⁄" + Digits(match.Groups["under"].Value, Sub),
                    };
                    return match.Groups["whole"].Success ? "\u00a0" + shown : shown;
                }
            );

    private static string Digits(string digits, string shapes) => string.Concat(digits.Select(d => shapes[d - '0']));

    // A space after a whole number belongs to the mixed number.
    [GeneratedRegex(
        @"(?<whole>(?<=[0-9]) )?(?<![0-9/])(?<parts>(?<over>[0-9]{1,2})/(?<under>2|4|8|16))(?![0-9/])",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Fraction();

    [GeneratedRegex(
        @"(?<=[0-9½¼¾⅛⅜⅝⅞₆]) (?=(?:in|ft|mm|cm|m|km|gal|gph|L|mL|L/h|W|kW|kWh|V|Hz|A|s|min|h|d|kPa|psi|lb|lbf|N|kN|kg|%|°C|°F|mesh)\b|[%°])",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex BeforeUnit();
}
