using System.Text.Json;
using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Cases;

/// <summary>What came of a case.</summary>
/// <param name="Right">True where the plan says what a grower would.</param>
/// <param name="Why">What it said instead, or what it said.</param>
internal sealed record CaseVerdict(bool Right, string Why);

/// <summary>Plans a case's rig, holds the plan against what a grower would say, and tries the cure.</summary>
internal static class CaseJudge
{
    private static readonly PlanOptions s_whole = new() { Draws = 0 };
    private static readonly PlanOptions s_waterOnly = new() { Draws = 0, Strength = false };

    public static CaseVerdict Of(GrowerCase asked)
    {
        var reading = Read(asked);
        if (reading.Resolved is not { } rig)
        {
            return new CaseVerdict(false, "the file cannot say it: " + string.Join("; ", reading.Faults.Told()));
        }

        Plan plan;
        try
        {
            plan = Planner.Of(rig, reading.Assumed, OptionsOf(asked));
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return new CaseVerdict(false, $"the planner broke down: {e.GetType().Name}: {e.Message}");
        }

        return asked.Expect switch
        {
            Expected.Silent => Silence(asked, plan),
            Expected.Figure => Figure(asked, plan),
            _ => Speech(asked, plan),
        };
    }

    /// <summary>The rig of a case, read as its file would be.</summary>
    public static RigReading Read(GrowerCase asked)
    {
        if (asked.Start is { } start)
        {
            var units = start.Units == "us" ? UnitSystem.Us : UnitSystem.Metric;
            var first = RigStarter.Rig(
                new StarterAnswers(Units: units, Rows: start.Rows, Pots: start.Pots, Gravity: start.Gravity),
                PartsCatalogue.Default
            );
            return RigReader.Read(RigWriter.Write(first), "case", PartsCatalogue.Default);
        }

        return RigReader.Read(asked.Rig!.ToJsonString(), "case", PartsCatalogue.Default);
    }

    /// <summary>The rig with the case's cure in it.</summary>
    public static RigReading Cured(Rig rig, JsonObject cure) =>
        RigCure.Applied(
            rig,
            Cure.Of([.. cure.Select(change => new FieldChange(change.Key, change.Value?.ToJsonString()))]),
            PartsCatalogue.Default
        );

    // Whether the stands hold costs more than all else, and is left out where neither the case nor its cure touches them.
    private static PlanOptions OptionsOf(GrowerCase asked)
    {
        var whole = asked.Expect == Expected.Silent && asked.Rules.Count == 0;
        var ofStand = asked
            .Rules.Append(asked.Rule ?? "")
            .Any(rule => rule.StartsWith("stand-", StringComparison.Ordinal));
        var moved =
            asked.Cure?.Any(change =>
                change.Key.StartsWith("rows", StringComparison.Ordinal)
                || change.Key.StartsWith("stand", StringComparison.Ordinal)
            ) == true;
        return whole || ofStand || moved ? s_whole : s_waterOnly;
    }

    private static CaseVerdict Silence(GrowerCase asked, Plan plan)
    {
        Finding[] said =
        [
            .. plan.Findings.Where(f =>
                asked.Rules.Count > 0 ? asked.Rules.Contains(f.Rule) : f.Level != FindingLevel.Note
            ),
        ];
        return said.Length == 0 ? new CaseVerdict(true, "silent") : new CaseVerdict(false, "says " + Rules(said));
    }

    private static CaseVerdict Speech(GrowerCase asked, Plan plan)
    {
        Finding[] said = [.. plan.Findings.Where(f => Speaks(asked, f))];
        if (said.Length == 0)
        {
            return new CaseVerdict(false, "does not say it; says " + Rules(plan.Findings));
        }

        if (asked.Cure is not { } cure)
        {
            return new CaseVerdict(true, "says " + Rules(said));
        }

        if (asked.Rule is not null && !said.Any(f => PointsAt(f, cure)))
        {
            return new CaseVerdict(
                false,
                $"says {Rules(said)}, but points at {string.Join(", ", said.SelectMany(f => f.Fields))}"
            );
        }

        var reading = Cured(plan.Rig, cure);
        if (reading.Resolved is not { } changed)
        {
            return new CaseVerdict(false, "the cure makes no rig: " + string.Join("; ", reading.Faults.Told()));
        }

        var after = Planner.Of(changed, reading.Assumed, OptionsOf(asked));
        Finding[] left = [.. after.Findings.Where(f => Speaks(asked, f))];
        string[] stops = [.. StopsOf(after).Except(StopsOf(plan))];
        return left.Length > 0 ? new CaseVerdict(false, "the cure leaves " + Rules(left))
            : stops.Length > 0 ? new CaseVerdict(false, "the cure brings " + string.Join(", ", stops))
            : new CaseVerdict(true, "says it, and the cure cures");
    }

    private static bool Speaks(GrowerCase asked, Finding finding) =>
        finding.Level.ToString() == asked.Expect.ToString()
        && (asked.Rule is { } rule ? finding.Rule == rule : asked.Fields.Any(finding.Fields.Contains));

    // Whoever names the wrong field has the wrong cause.
    private static bool PointsAt(Finding finding, JsonObject cure) =>
        cure.Any(change =>
            finding.Fields.Contains(change.Key)
            || finding.Cures.Any(c => c.Changes.Any(offered => offered.Field == change.Key))
        );

    private static CaseVerdict Figure(GrowerCase asked, Plan plan)
    {
        var bounds = asked.Figure!;
        var found = bounds.Of switch
        {
            "tankLitres" => plan.Reservoir.RimVolume * 1000,
            "phAtRest" => plan.Nutrients?.PH,
            "siliconMilligramsPerLitre" => plan.Nutrients?.Recipe.Composition[Constituent.Silicon] * 28.085,
            "ironMilligramsPerLitre" => plan.Nutrients?.Recipe.Composition[Constituent.Iron] * 55.845,
            "chlorideMilligramsPerLitre" => plan.Nutrients?.Recipe.Composition[Constituent.Chloride] * 35.45,
            "potassiumMilligramsPerLitre" => plan.Nutrients?.Recipe.Composition[Constituent.Potassium] * 39.098,
            _ when TankFigures.Of(bounds.Of, asked.Tank, plan) is { } figure => figure,
            _ => throw new JsonException($"No figure is called '{bounds.Of}'."),
        };
        return new CaseVerdict(found >= bounds.Least && !(found > bounds.Most), $"{bounds.Of} is {found:0.####}");
    }

    private static IEnumerable<string> StopsOf(Plan plan) =>
        plan.Findings.Where(f => f.Level == FindingLevel.Stop).Select(f => f.Rule).Distinct();

    private static string Rules(IEnumerable<Finding> findings) =>
        string.Join(", ", findings.Select(f => $"{f.Rule} ({f.Level})").Distinct());
}
