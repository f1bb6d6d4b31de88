using System.Text;

namespace Dripwright.Engine.Units;

/// <summary>Regular expressions that match every text <see cref="QuantityText"/> reads, for editors that know JSON Schema.</summary>
/// <remarks>
/// They match a little more than is read: a sum with its smaller unit first, a fraction with zero below, a number beyond
/// all bounds. Plain ECMA syntax without flags, so capitals are spelt out.
/// </remarks>
public static class QuantityPattern
{
    private const string Space = "\\s*";
    private const string Fraction = "(?:[0-9]+\\s*/\\s*[0-9]+|[0-9]+[⁄/][0-9]+|[½⅓⅔¼¾⅛⅜⅝⅞])";

    // A comma before three digits and behind one to three may part thousands, unless a nought stands first.
    private const string Comma = "(?![1-9][0-9]{0,2},[0-9]{3}(?![0-9]))[0-9]+,[0-9]+";
    private const string Plain = "(?:" + Comma + "|[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+\\-−–‑]?[0-9]{1,3})?";
    private const string Number =
        $"[+\\-−–‑]?\\s*(?:(?:[0-9]+(?:\\s+|\\s*[\\-−–‑]\\s*|(?=[½⅓⅔¼¾⅛⅜⅝⅞])))?{Fraction}|{Plain})";

    /// <summary>The expression for a dimension.</summary>
    /// <param name="dimension">What the quantity measures.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such dimension.</exception>
    public static string Of(Dimension dimension)
    {
        var units = Units(UnitTable.Of(dimension));
        var body = dimension switch
        {
            Dimension.Length or Dimension.Duration =>
                $"{Number}{Space}{units}(?:{Space}[\\-−–‑]?{Space}{Number}{Space}{units})*",
            Dimension.Slope =>
                $"{Number}{Space}(?:{units}|:{Space}{Number}|{Units(UnitTable.Lengths)}(?:{Space}/{Space}|\\s+[pP][eE][rR]\\s+)(?:{Number}{Space})?{Units(UnitTable.Lengths)})",
            Dimension.Flow =>
                $"{Number}{Space}(?:{units}|{Units(UnitTable.Volumes)}(?:{Space}/{Space}|\\s+[pP][eE][rR]\\s+){Units(UnitTable.Durations)})",
            _ => $"{Number}{Space}{units}",
        };
        return $"^{Space}{body}{Space}$";
    }

    private static string Units(IReadOnlyList<MeasureUnit> units)
    {
        // Longest first: an engine takes the first that fits.
        var names = units
            .SelectMany(unit => unit.Names)
            .OrderByDescending(name => name.Length)
            .ThenBy(name => name, StringComparer.Ordinal);
        return $"(?:{string.Join('|', names.Select(AnyCase))})";
    }

    private static string AnyCase(string name)
    {
        var pattern = new StringBuilder();
        foreach (var letter in name)
        {
            pattern.Append(
                letter switch
                {
                    ' ' => "\\s+",
                    '.' or '^' or '/' => $"\\{letter}",
                    '\'' => "['′’‘]",
                    '"' => "[\"″”“]",
                    'μ' => "[μµΜ]",
                    '2' => "[2²₂]",
                    '3' => "[3³]",
                    >= 'a' and <= 'z' => $"[{letter}{char.ToUpperInvariant(letter)}]",
                    _ => letter.ToString(),
                }
            );
        }
        return pattern.ToString();
    }
}
