using System.Collections.Concurrent;
using System.Reflection;

namespace Dripwright.Engine.Tests.Planning;

/// <summary>For every rule a rig that breaks it, with its plan: the table of <see cref="FindingTests"/> for other tests.</summary>
internal static class BrokenRigs
{
    private static readonly ConcurrentDictionary<(string, int), Lazy<Plan>> s_plans = new();

    /// <summary>Each rule with the text of a rig that breaks it.</summary>
    public static IReadOnlyList<(string Rule, string Rig)> All { get; } =
    [
        .. typeof(FindingTests)
            .GetMethod(nameof(FindingTests.Every_rule_speaks_for_a_rig_that_breaks_it))!
            .GetCustomAttributesData()
            .Where(a => a.AttributeType == typeof(InlineDataAttribute))
            .Select(a => (IReadOnlyList<CustomAttributeTypedArgument>)a.ConstructorArguments[0].Value!)
            .Select(values => ((string)values[0].Value!, (string)values[1].Value!)),
    ];

    /// <summary>Those whose rigs say nothing of nutrients.</summary>
    public static IEnumerable<(string Rule, string Rig)> OfTheRig =>
        All.Where(broken => !broken.Rig.Contains("nutrients", StringComparison.Ordinal));

    /// <summary>The plan of a rig of the table; each is planned once for all tests.</summary>
    public static Plan Plan(string rule, string rig)
    {
        var draws = rule == "weak-pot-likely" ? 2000 : 0;
        return s_plans.GetOrAdd((rig, draws), key => new Lazy<Plan>(() => Plans.From(key.Item1, key.Item2))).Value;
    }
}
