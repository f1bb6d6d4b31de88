using System.Text.Json;
using System.Text.Json.Serialization;

namespace Dripwright.Engine.Findings;

/// <summary>One rule by which a plan is judged.</summary>
/// <param name="Key">Its name, lower case with dashes.</param>
/// <param name="Level">How grave it is to break it.</param>
/// <param name="Limit">[SI or -] Its limit, of the judged quantity's kind; null where the rig itself sets the limit.</param>
/// <param name="Source">Whose rule it is.</param>
public sealed record Rule(string Key, FindingLevel Level, double? Limit, string Source);

/// <summary>All rules, as data: docs/handbook/findings.md lists them.</summary>
public static class RuleBook
{
    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter() },
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    };

    private static readonly Lazy<IReadOnlyDictionary<string, Rule>> s_rules = new(Load);

    /// <summary>Every rule by its key.</summary>
    public static IReadOnlyDictionary<string, Rule> Rules => s_rules.Value;

    /// <summary>A rule that has a limit.</summary>
    /// <param name="key">Its name.</param>
    /// <returns>[SI or -] Its limit, of the judged quantity's kind.</returns>
    /// <exception cref="KeyNotFoundException">There is no such rule, or it has no limit of its own.</exception>
    public static double Limit(string key) =>
        Rules[key].Limit ?? throw new KeyNotFoundException($"Rule {key} has no limit of its own.");

    private static Dictionary<string, Rule> Load()
    {
        using var data =
            typeof(RuleBook).Assembly.GetManifestResourceStream("Dripwright.Engine.Findings.Data.rules.json")
            ?? throw new InvalidOperationException("The rules are missing from the engine.");
        var rules = JsonSerializer.Deserialize<Rule[]>(data, s_options)!;
        return rules.ToDictionary(r => r.Key);
    }
}
