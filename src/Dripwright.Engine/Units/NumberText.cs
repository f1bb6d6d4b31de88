using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Dripwright.Engine.Units;

/// <summary>A number as a person writes it, kept as an exact fraction.</summary>
/// <param name="Over">Numerator with its sign.</param>
/// <param name="Under">Denominator, above zero.</param>
/// <param name="Text">As it was written.</param>
internal readonly record struct NumberText(decimal Over, decimal Under, string Text)
{
    /// <summary>Reads a number at the start of the text: "3", "-2.5", "1/2", "1 1/2", "1-1/2", "1e-6".</summary>
    /// <param name="text">Text in the shape that <see cref="Tidy"/> gives.</param>
    /// <param name="number">The number read.</param>
    /// <returns>False when no number stands there, or one that is beyond all bounds.</returns>
    public static bool TryRead(string text, out NumberText number)
    {
        number = default;
        var mixed = s_mixed.Match(text);
        if (mixed.Success)
        {
            var whole = 0m;
            var good =
                TryDecimal(mixed.Groups["over"].Value, out var over)
                & TryDecimal(mixed.Groups["under"].Value, out var under)
                & (!mixed.Groups["whole"].Success || TryDecimal(mixed.Groups["whole"].Value, out whole));
            // A million sixteenths is no fraction that a person writes; and the product must stay within a decimal.
            if (!good || under is 0 or > 10_000 || over > 1_000_000 || whole > 1_000_000_000)
            {
                return false;
            }
            var sign = mixed.Groups["sign"].Value == "-" ? -1 : 1;
            number = new NumberText(sign * ((whole * under) + over), under, mixed.Value);
            return true;
        }
        var plain = s_plain.Match(text);
        if (!plain.Success || !TryDecimal(plain.Value, out var value))
        {
            return false;
        }
        number = new NumberText(value, 1, plain.Value);
        return true;
    }

    /// <summary>The SI value of so many of these units.</summary>
    /// <exception cref="OverflowException">The number is beyond all bounds.</exception>
    public double In(MeasureUnit unit) =>
        Under == 1 && unit is { Numerator: 1, Denominator: 1, Offset: 0 }
            ? double.Parse(Text, NumberStyles.Float, CultureInfo.InvariantCulture) + 0.0 // a decimal has no 10⁻³⁰
            : unit.ToSi(Over, Under);

    /// <summary>Puts a point where a decimal comma stands, as in "2,5". Text in the shape that <see cref="Tidy"/> gives.</summary>
    /// <remarks>
    /// "1,000" may be a thousand or one, "1,000.5" and "1, 5" are no decimals at all: these are left and told. "0,500" and
    /// "12,5" can only be meant in one way.
    /// </remarks>
    /// <param name="tidy">The text; the same with points where null is given back.</param>
    /// <returns>Null where all is good; the number whose comma can be read in two ways; empty where no comma of a number can be a decimal one.</returns>
    public static string? PutPoint(ref string tidy)
    {
        var letters = tidy.ToCharArray();
        for (var at = tidy.IndexOf(',', StringComparison.Ordinal); at >= 0; at = tidy.IndexOf(',', at + 1))
        {
            var (from, to) = (at, at + 1);
            while (from > 0 && IsOfNumber(tidy[from - 1]))
            {
                from--;
            }
            while (to < tidy.Length && IsOfNumber(tidy[to]))
            {
                to++;
            }
            var number = tidy[from..to];
            var (before, after) = (at - from, to - at - 1);
            if (number.Length == 1)
            {
                continue;
            }
            if (
                before == 0
                || after == 0
                || number.IndexOfAny(['.', ',']) != before
                || number.LastIndexOfAny(['.', ',']) != before
            )
            {
                return "";
            }
            if (after == 3 && before <= 3 && number[0] != '0')
            {
                return number;
            }
            letters[at] = '.';
        }
        tidy = new string(letters);
        return null;
    }

    /// <summary>The number that a text in quotes holds, as a file writes it without them; null where it holds no plain one.</summary>
    public static string? Unquoted(string text)
    {
        var tidy = text.Trim();
        return PutPoint(ref tidy) is null && s_json.IsMatch(tidy) ? tidy : null;
    }

    /// <summary>Brings the many typographic forms to one: "½" is " 1/2", a prime is a quote, spaces are single.</summary>
    public static string Tidy(string text)
    {
        var tidy = new StringBuilder(text.Length + 8);
        foreach (var letter in text)
        {
            var fraction = Fractions.IndexOf(letter, StringComparison.Ordinal);
            if (fraction >= 0)
            {
                // The space behind keeps "½3" from becoming a twenty-third.
                tidy.Append(' ').Append(s_fractionTexts[fraction]).Append(' ');
            }
            else if (char.IsWhiteSpace(letter))
            {
                tidy.Append(' ');
            }
            else
            {
                tidy.Append(
                    letter switch
                    {
                        '′' or '’' or '‘' => '\'',
                        '″' or '”' or '“' => '"',
                        '⁄' => '/',
                        '−' or '–' or '‑' => '-',
                        '²' => '2',
                        '³' => '3',
                        '₂' => '2',
                        'µ' => 'μ',
                        _ => letter,
                    }
                );
            }
        }
        return s_spaces.Replace(tidy.ToString(), " ").Trim().Replace("- ", "-", StringComparison.Ordinal);
    }

    private const string Fractions = "½⅓⅔¼¾⅛⅜⅝⅞";

    private static readonly string[] s_fractionTexts = ["1/2", "1/3", "2/3", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8"];

    private static bool IsOfNumber(char letter) => char.IsAsciiDigit(letter) || letter is '.' or ',';

    private static bool TryDecimal(string text, out decimal value) =>
        decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);

    // Without backtracking the time grows with the length only, whatever the text.
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture;

    private static readonly Regex s_mixed = new(
        "^(?<sign>[+-]?)((?<whole>[0-9]+)[ -])?(?<over>[0-9]+)/(?<under>[0-9]+)",
        Linear
    );

    private static readonly Regex s_plain = new("^[+-]?([0-9]+(\\.[0-9]*)?|\\.[0-9]+)([eE][+-]?[0-9]{1,3})?", Linear);

    private static readonly Regex s_json = new("^-?(0|[1-9][0-9]*)(\\.[0-9]+)?$", Linear);

    private static readonly Regex s_spaces = new(" {2,}", Linear);
}
