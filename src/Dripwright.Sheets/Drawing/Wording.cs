using System.Text.RegularExpressions;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Sheets.Drawing;

/// <summary>Words and figures of the sheets: true fractions, and units that stay with their numbers.</summary>
internal sealed partial class Wording(UnitSystem units)
{
    private const char Tie = '\u00a0';

    private readonly QuantityWords _words = new(units);

    /// <summary>What the engine has to say, in words and these units.</summary>
    public PlanWords Told { get; } = new(units);

    /// <summary>True for inches and gallons.</summary>
    public bool Us => _words.Us;

    /// <summary>Scales and rulers to draw with.</summary>
    public Units Drawn => Us ? Units.UnitedStates : Units.Metric;

    /// <summary>What the figures of dimensions mean.</summary>
    public string DimensionNote => Us ? Words.Of("sheet.dimensions.us") : Words.Of("sheet.dimensions.metric");

    /// <summary>A dimension's figure without its unit, which the sheet says once.</summary>
    public string Mark(double metres)
    {
        var text = MarkWithUnit(metres);
        return text[..text.LastIndexOf(Tie)];
    }

    /// <summary>"15 × 300": alike distances one after another.</summary>
    public string Repeated(int count, double metres) =>
        count == 1 ? Mark(metres) : $"{Count(count)}{Tie}×{Tie}{Mark(metres)}";

    public string MarkWithUnit(double metres) => Tied(_words.Mark(metres));

    public string Length(double metres) => Tied(_words.Length(metres));

    public string Size(double metres) => Tied(_words.Size(metres));

    public string Head(double metres) => Tied(_words.Head(metres));

    public string Flow(double flow) => Tied(Told.Of(Measured.Flow(flow)));

    public string Velocity(double metresPerSecond) => Tied(_words.Velocity(metresPerSecond));

    public string Volume(double volume) => Tied(_words.Volume(volume));

    public string Pressure(double pascals) => Tied(_words.Pressure(pascals));

    public string Slope(double slope) => Tied(_words.Slope(slope));

    public string Share(double share) => Tied(_words.Share(share));

    public string Time(double seconds) => Tied(_words.Time(seconds));

    public string Mass(double kilograms) => Tied(_words.Mass(kilograms));

    public string Force(double newtons) => Tied(_words.Force(newtons));

    /// <summary>The same length in mm beside inches, with one decimal where it counts.</summary>
    public static string Millimetres(double metres) => $"{QuantityWords.Number(metres * 1000, "0.#")}{Tie}mm";

    public static string Percent(double share) => Tied(QuantityWords.Percent(share));

    public static string Count(int number) => QuantityWords.Count(number);

    /// <summary>"1 pot", "12 pots", from the texts <c>key.one</c> and <c>key.many</c>.</summary>
    public static string Counted(string key, int count) =>
        Words.Of(count == 1 ? $"{key}.one" : $"{key}.many", Count(count));

    /// <summary>Sentences one after another; empty ones are left out.</summary>
    public static string Sentences(params ReadOnlySpan<string> sentences) =>
        string.Join(' ', sentences.ToArray().Where(sentence => sentence.Length > 0));

    /// <summary>A text as it stands at the start of a sentence or cell.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>Any text of the plan with true fractions, and numbers that stay with their units.</summary>
    public static string Sentence(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return BeforeUnit().Replace(Fraction().Replace(text, Fractioned), Tie.ToString());
    }

    /// <summary>A quantity: nothing in it may break.</summary>
    private static string Tied(string quantity) => Sentence(quantity).Replace(' ', Tie);

    private static string Fractioned(Match match)
    {
        var (over, under) = (match.Groups["over"].Value, match.Groups["under"].Value);
        var shown = (over, under) switch
        {
            ("1", "2") => "½",
            ("1", "4") => "¼",
            ("3", "4") => "¾",
            ("1", "8") => "⅛",
            ("3", "8") => "⅜",
            ("5", "8") => "⅝",
            ("7", "8") => "⅞",
            _ => $"{Digits(over, "⁰¹²³⁴⁵⁶⁷⁸⁹")}⁄{Digits(under, "₀₁₂₃₄₅₆₇₈₉")}",
        };
        return match.Groups["whole"].Success ? $"{match.Groups["whole"].Value}{Tie}{shown}" : shown;
    }

    private static string Digits(string digits, string shapes) => string.Concat(digits.Select(d => shapes[d - '0']));

    // A number with a space or a dash before the fraction belongs to a mixed number: "1 1/2", "1-1/2".
    [GeneratedRegex(
        @"(?<![0-9/.])(?:(?<whole>[0-9]+)[ \u00a0-])?(?<over>[0-9]{1,2})/(?<under>2|4|8|16)(?![0-9/])",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Fraction();

    [GeneratedRegex(
        @"(?<=[0-9½¼¾⅛⅜⅝⅞₂₄₆₈]) (?=(?:in|ft|ft/s|mm|cm|m|m/s|km|gal|gph|L|mL|L/h|W|kW|kWh|V|Hz|A|s|min|h|d|kPa|psi|lb|lbf|N|kN|kg|g|%|°C|°F|mesh)\b|[%°])",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex BeforeUnit();
}
