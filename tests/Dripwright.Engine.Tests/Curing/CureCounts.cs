using System.Globalization;
using System.Text;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Curing;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Rigs;

namespace Dripwright.Engine.Tests.Curing;

/// <summary>Of how many stops and mends of random rigs a cure is proven, rule by rule.</summary>
internal sealed class CureCounts
{
    private static readonly PlanOptions s_whole = new() { Draws = 0 };

    private readonly SortedDictionary<string, Count> _rules = new(StringComparer.Ordinal);

    /// <summary>Rigs that were counted.</summary>
    public int Planned { get; private set; }

    /// <summary>Stops and mends in all, and those with a proven cure.</summary>
    public (int Found, int Cured) Sum => (_rules.Values.Sum(r => r.Found), _rules.Values.Sum(r => r.Cured));

    /// <summary>The random rigs of the count: always the same ones.</summary>
    public static IEnumerable<Rig> Rigs(int count)
    {
        var draws = PCG.Parse("0N0XIzNsQ0O2");
        for (var n = 0; n < count; n++)
        {
            yield return RigGen.Rigs.Generate(draws, null, out _);
        }
    }

    /// <summary>Plans a rig, proves its cures and counts them.</summary>
    public void Add(Rig rig)
    {
        Planned++;
        var plan = Planner.Of(rig, [], PartsCatalogue.Default, s_whole);
        var proven = ProvenCures.Of(plan, new CureOptions { Most = 1, MostTrials = 40 });
        foreach (var finding in proven.Findings)
        {
            Assert.All(finding.Cures, cure => Serves(plan, finding, cure));
        }

        foreach (var (finding, then) in plan.Findings.Zip(proven.Findings))
        {
            if (finding.Level == FindingLevel.Note)
            {
                continue;
            }

            var rule = _rules.TryGetValue(finding.Rule, out var known)
                ? known
                : _rules[finding.Rule] = new Count(finding.Level);
            rule.Found++;
            rule.Proposed += finding.Cures.Count > 0 ? 1 : 0;
            rule.Cured += then.Cures.Count > 0 ? 1 : 0;
        }
    }

    /// <summary>Asserts that a cure, applied and planned anew in full, takes its finding away and brings no new stop.</summary>
    public static void Serves(Plan plan, Finding finding, Cure cure)
    {
        var trial = CureTrial.Of(plan, finding, cure, s_whole);
        var what =
            $"{finding.Rule}: {string.Join(", ", cure.Changes.Select(c => $"{c.Field} = {c.Text ?? "left out"}"))}";
        Assert.True(trial.Faults.Count == 0, $"{what} makes no rig: {string.Join("; ", trial.Faults)}");
        Assert.True(trial.Cured, $"{what} cures nothing");
        Assert.DoesNotContain(trial.New, f => f.Level == FindingLevel.Stop);
    }

    /// <summary>The table of the page.</summary>
    public string Table()
    {
        var text = new StringBuilder(
            "| rule | level | found | its rule proposes | with a proven cure | share |\n|---|---|---|---|---|---|\n"
        );
        foreach (var (key, rule) in _rules)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"| {key} | {rule.Level.ToString().ToLowerInvariant()} | {rule.Found} | {rule.Proposed} | {rule.Cured} | {100.0 * rule.Cured / rule.Found:0} % |\n"
            );
        }

        var (found, cured) = Sum;
        return text.Append(
                CultureInfo.InvariantCulture,
                $"| all | | {found} | {_rules.Values.Sum(r => r.Proposed)} | {cured} | {100.0 * cured / Math.Max(1, found):0.0} % |\n"
            )
            .ToString();
    }

    private sealed class Count(FindingLevel level)
    {
        public FindingLevel Level => level;

        public int Found { get; set; }

        public int Proposed { get; set; }

        public int Cured { get; set; }
    }
}
