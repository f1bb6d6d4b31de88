using System.Globalization;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Findings;

/// <summary>The rules by which water, targets and recipes are judged: rows of the one book of rules.</summary>
public static class NutrientRules
{
    /// <summary>Every rule by its key. Limits are in mol/m³, S/m, or plain ratios.</summary>
    public static IReadOnlyDictionary<string, Rule> All => RuleBook.Rules;

    /// <summary>The limit of a rule.</summary>
    /// <param name="key">Its name.</param>
    /// <returns>[SI or -] Its limit, of the judged quantity's kind.</returns>
    /// <exception cref="KeyNotFoundException">There is no such rule, or it has no limit of its own.</exception>
    public static double Limit(string key) => RuleBook.Limit(key);

    internal static Finding Finding(
        string rule,
        string place,
        string field,
        string what,
        string value,
        string limit,
        string remedy
    )
    {
        var from = All[rule];
        return new Finding
        {
            Rule = rule,
            Level = from.Level,
            Source = from.Source,
            Places = [new Place(Phrase.Plain(place))],
            Fields = field.Length > 0 ? [field] : [],
            What = Phrase.Plain(what),
            Value = Phrase.Plain(value),
            Limit = Phrase.Plain(limit),
            Remedy = Phrase.Plain(remedy),
        };
    }

    internal static string Number(double value) =>
        value.ToString(
            Math.Abs(value) is >= 100 or 0 ? "0"
                : Math.Abs(value) >= 10 ? "0.#"
                : Math.Abs(value) >= 0.1 ? "0.##"
                : "0.####",
            CultureInfo.InvariantCulture
        );

    internal static string Percent(double share) => (share * 100).ToString("0.#", CultureInfo.InvariantCulture) + " %";
}
