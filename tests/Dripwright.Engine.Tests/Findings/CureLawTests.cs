using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Tests.Rigs;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Findings;

/// <summary>A cure that is offered cures.</summary>
public sealed class CureLawTests
{
    private static readonly PlanOptions s_waterOnly = new() { Draws = 0, Strength = false };

    [Fact]
    public void Every_cure_that_is_offered_for_any_rig_takes_its_finding_away() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = Plans.Of(rig);
                foreach (var finding in plan.Findings)
                {
                    // What nutrients cost and bring has laws of its own.
                    foreach (var cure in finding.Cures.Where(c => !c.Changes.Any(OfTheNutrients)))
                    {
                        Holds(plan, finding, cure, s_waterOnly);
                    }
                }
            },
            iter: 40
        );

    [Fact]
    public void Every_rule_that_can_work_out_its_cure_offers_one_that_cures()
    {
        HashSet<string> offered = [];
        foreach (var (rule, rig) in BrokenRigs.OfTheRig)
        {
            var plan = BrokenRigs.Plan(rule, rig);
            foreach (var finding in plan.Findings.Where(f => f.Rule == rule && f.Cures.Count > 0))
            {
                offered.Add(rule);
                Assert.All(finding.Cures, cure => Holds(plan, finding, cure, new PlanOptions { Draws = 0 }));
            }
        }

        Assert.Equal(
            [
                "aisle-narrow",
                "break-hole-over-rim",
                "drain-half-full",
                "drain-level",
                "drain-narrow",
                "drain-share-low",
                "drain-steep",
                "drain-under-floor",
                "drain-under-rim",
                "drain-unvented",
                "hook-pulls-out",
                "inlet-cover-thin",
                "lamps-close",
                "lid-missing",
                "lines-fill-long",
                "medium-dries",
                "medium-never-drains",
                "metal-in-loop",
                "one-emitter",
                "plants-starve",
                "plants-thirst",
                "pot-dry",
                "pots-collide",
                "reservoir-runs-out",
                "rise-differs",
                "row-short",
                "runs-dry",
                "stand-narrow",
                "stand-tips",
                "stand-walks",
                "strainer-coarse",
                "strainer-missing",
                "tank-in-stand",
                "tank-past",
                "tank-siphons",
                "valves-missing",
                "valves-shut",
                "wire-low",
                "wire-over-room",
            ],
            offered.Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [InlineData("""{ "stand": { "bracing": "none", "extraFrames": 0 } }""")]
    [InlineData("""{ "stand": { "extraFrames": 0 } }""")]
    [InlineData("""{ "stand": { "extraFrames": 0 }, "drain": { "slope": "0.5 %" } }""")]
    [InlineData("""{ "rows": [ { "pots": 8, "count": 2 }, { "pots": 4 } ], "stand": { "bracing": "none" } }""")]
    public void What_was_tried_for_a_stand_and_is_enough_takes_its_findings_away(string rig)
    {
        var options = new PlanOptions { Draws = 0, Cures = true };
        var reading = RigReader.Read(rig, "test.rig.json", PartsCatalogue.Default);
        var plan = Planner.Of(reading.Rig!, [], PartsCatalogue.Default, options);
        Finding[] cured = [.. plan.Findings.Where(f => f.Rule != "stand-tips" && f.Cures.Any(OfTheStand))];
        Assert.NotEmpty(cured);
        foreach (var finding in cured)
        {
            Assert.All(finding.Cures, cure => Holds(plan, finding, cure, options with { Cures = false }));
        }
    }

    [Fact]
    public void A_trial_tells_what_a_cure_makes_worse()
    {
        // Little room: the wider aisles that cure one thing push the rows through the wall.
        var plan = Plans.From("""{ "rows": [ { "count": 2, "aisle": "12 in" } ], "site": { "roomWidth": "4 ft" } }""");
        var narrow = plan.Said("aisle-narrow")!;
        Assert.Null(plan.Said("room-narrow"));

        var trial = CureTrial.Of(plan, narrow, Assert.Single(narrow.Cures), new PlanOptions { Draws = 0 });

        Assert.True(trial.Cured);
        Assert.Equal(["aisle-narrow"], trial.Gone.Select(f => f.Rule));
        Assert.Equal(["room-narrow"], trial.New.Select(f => f.Rule));
    }

    [Fact]
    public void A_change_that_makes_no_rig_is_told_and_cures_nothing()
    {
        var plan = Plans.From("""{ "reservoir": { "lid": false } }""");

        var trial = CureTrial.Of(plan, plan.Said("lid-missing")!, Cure.Field("reservoir.lid", "\"perhaps\""));

        Assert.False(trial.Cured);
        Assert.Null(trial.After);
        Assert.Equal("reservoir.lid", Assert.Single(trial.Faults).Path);
    }

    [Fact]
    public void A_cure_of_rows_alike_cures_all_of_them()
    {
        var plan = Plans.From(
            """{ "rows": [ { "pots": 4, "aisle": "12 in" }, { "pots": 6, "aisle": "12 in" } ], "site": { "roomWidth": "30 ft" } }"""
        );
        var narrow = plan.Said("aisle-narrow")!;

        Assert.Equal([1, 2], narrow.Places.Select(p => p.Row));
        Assert.Equal(["rows[0].aisle", "rows[1].aisle"], narrow.Fields);
        Assert.Equal(["rows[0].aisle", "rows[1].aisle"], Assert.Single(narrow.Cures).Changes.Select(c => c.Field));
        Holds(plan, narrow, narrow.Cures[0], s_waterOnly);
    }

    private static bool OfTheNutrients(FieldChange change) =>
        change.Field.StartsWith("nutrients.", StringComparison.Ordinal);

    private static bool OfTheStand(Cure cure) =>
        cure.Changes.Any(c => c.Field.StartsWith("stand.", StringComparison.Ordinal));

    private static void Holds(Plan plan, Finding finding, Cure cure, PlanOptions options)
    {
        var trial = CureTrial.Of(plan, finding, cure, options);
        var what =
            $"{finding.Rule}: {string.Join(", ", cure.Changes.Select(c => $"{c.Field} = {c.Text ?? "left out"}"))}";
        Assert.True(trial.Faults.Count == 0, $"{what} makes no rig: {string.Join("; ", trial.Faults.Told())}");
        Assert.True(trial.Cured, $"{what} cures nothing at {finding.Told().Place}");
    }
}
