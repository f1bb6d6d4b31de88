using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Nutrition.Rules;

/// <summary>The rules by which water, targets and recipes are judged, as data.</summary>
public static class NutritionRules
{
    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter() },
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    };

    private static readonly Lazy<IReadOnlyDictionary<string, Rule>> s_rules = new(Load);

    /// <summary>Every rule by its key. Limits are in mol/m³, S/m, or plain ratios.</summary>
    public static IReadOnlyDictionary<string, Rule> All => s_rules.Value;

    /// <summary>The limit of a rule.</summary>
    /// <param name="key">Its name.</param>
    /// <exception cref="KeyNotFoundException">There is no such rule, or it has no limit of its own.</exception>
    public static double Limit(string key) =>
        All[key].Limit ?? throw new KeyNotFoundException($"Rule {key} has no limit of its own.");

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
        return new Finding(rule, from.Level, place, field, what, value, limit, remedy, from.Source);
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

    private static Dictionary<string, Rule> Load()
    {
        using var data =
            typeof(NutritionRules).Assembly.GetManifestResourceStream(
                "Dripwright.Engine.Nutrition.Rules.Data.nutrition-rules.json"
            ) ?? throw new InvalidOperationException("The rules of nutrition are missing from the engine.");
        return JsonSerializer.Deserialize<Rule[]>(data, s_options)!.ToDictionary(rule => rule.Key);
    }
}
