using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>What is tried to cure a stand is what the grower would change in the rig file.</summary>
public sealed class StandTrialTests
{
    private const string Bare = """{ "rows": [ { "pots": 10 } ], "stand": { "bracing": "none", "extraFrames": 0 } }""";

    [Fact]
    public void A_bare_stand_is_cured_by_braces_with_a_frame_in_every_module()
    {
        StandTrial[] enough = [.. Tried(Bare).Where(t => t.Enough)];

        Assert.NotEmpty(enough);
        Assert.Contains(enough, t => t.Cure.Changes.Any(c => c.Field == "stand.bracing"));
    }

    [Fact]
    public void A_trial_is_what_the_plan_of_the_changed_rig_says()
    {
        var rig = Read(Bare);
        foreach (var trial in Tried(Bare))
        {
            var changed = Assert.IsType<Rig>(RigCure.Applied(rig, trial.Cure, PartsCatalogue.Default).Rig);
            var stand = Assert.Single(Stands(changed).Rows);

            Assert.Equal(trial.Enough, stand.Holds);
            Assert.Equal(trial.Utilisation, stand.Utilisation);
        }
    }

    [Fact]
    public void A_stand_that_has_braces_both_ways_is_not_told_to_brace()
    {
        StandTrial[] trials =
        [
            .. Tried(
                """{ "rows": [ { "pots": 10 } ], "stand": { "bracing": "both", "extraFrames": 0, "wallLeft": "60 %" } }"""
            ),
        ];

        Assert.NotEmpty(trials);
        Assert.DoesNotContain(trials, t => t.Kind is CureKind.Brace or CureKind.FrameAndBrace);
    }

    [Fact]
    public void A_new_tube_is_tried_with_its_whole_wall()
    {
        var tube = Tried("""{ "stand": { "extraFrames": 0, "wallLeft": "60 %" } }""")
            .First(t => t.Kind is CureKind.ThickerTube);

        Assert.Contains(tube.Cure.Changes, c => (c.Field, c.Text) == ("stand.wallLeft", "\"100 %\""));
    }

    [Fact]
    public void Nothing_is_tried_where_the_stand_holds() => Assert.Empty(Tried("""{ "rows": [ { "pots": 10 } ] }"""));

    private static IReadOnlyList<StandTrial> Tried(string json)
    {
        var rig = Read(json);
        return Assert.Single(StandTrials.Of(rig, Layout(rig), Stands(rig)).Rows).Trials;
    }

    private static StandPlan Stands(Rig rig) => StandPlanner.Of(Layout(rig), StandOptions.Of(rig));

    private static RigLayout Layout(Rig rig) => RigLayout.Of(ResolvedRig.Of(rig, PartsCatalogue.Default));

    private static Rig Read(string json)
    {
        var reading = RigReader.Read(json, "test.rig.json", PartsCatalogue.Default);
        return reading.Rig ?? throw new InvalidOperationException(string.Join("\n", reading.Faults.Told()));
    }
}
