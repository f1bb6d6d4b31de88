using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Curing;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;

namespace Dripwright.Engine.Tests.Curing;

public sealed class MakeItWorkTests
{
    [Fact]
    public void A_rig_with_several_faults_is_made_to_work_and_what_the_grower_keeps_stays()
    {
        var plan = Plans.From(
            """
            { "rows": [ { "pots": 8, "aisle": "12 in" } ], "reservoir": { "lid": false }, "feed": { "throttle": "5 %" },
              "timer": { "on": "2 min", "off": "3 h" } }
            """
        );
        Assert.True(Grave(plan) >= 3);

        var repair = MakeItWork.Of(plan);

        Assert.All([repair.Fewest!, repair.Cheapest!], WorksWhenReadAndPlannedAnew);
        Assert.Null(repair.Conflict);
        Assert.True(repair.Fewest!.Cure.Changes.Count <= repair.Cheapest!.Cure.Changes.Count);
        Assert.True(repair.Cheapest.Cost <= repair.Fewest.Cost);
        Assert.Equal(8, repair.Fewest.Rig.Rows[0].Pots);

        void WorksWhenReadAndPlannedAnew(RepairedRig works)
        {
            var reading = RigCure.Applied(plan.Rig, works.Cure, PartsCatalogue.Default);
            Assert.Equal(0, Grave(Planner.Of(reading.Resolved!, [], new PlanOptions { Draws = 0 })));
        }
    }

    [Fact]
    public void Nothing_is_changed_where_nothing_is_wrong()
    {
        var repair = MakeItWork.Of(Plans.From("{}"));

        Assert.Empty(repair.Fewest!.Cure.Changes);
    }

    [Fact]
    public void Where_what_is_kept_stands_against_it_that_is_named()
    {
        // Thirty pots want more than three metres of room.
        var plan = Plans.From("""{ "rows": [ { "pots": 30 } ], "site": { "roomLength": "10 ft" } }""");

        var repair = MakeItWork.Of(plan, new RepairOptions { MostTrials = 60 });

        Assert.Null(repair.Fewest);
        Assert.Contains(repair.Conflict!.Left, f => f.Rule == "room-short");
        Assert.Contains("rows.pots", repair.Conflict.Kept);
    }

    [Fact]
    public void A_field_that_is_kept_is_not_changed()
    {
        var plan = Plans.From("""{ "timer": { "on": "2 min", "off": "3 h" } }""");
        var kept = new RepairOptions { Kept = [.. RepairOptions.UsuallyKept, "timer.on"] };

        var repair = MakeItWork.Of(plan, kept);

        Assert.NotEmpty(repair.Fewest!.Cure.Changes);
        Assert.DoesNotContain(repair.Fewest.Cure.Changes, c => c.Field == "timer.on");
    }

    [Fact]
    public void A_stop_is_heard()
    {
        using var stopped = new CancellationTokenSource();
        stopped.Cancel();
        var plan = Plans.From("""{ "reservoir": { "lid": false } }""");

        var repair = MakeItWork.Of(plan, new RepairOptions { Stop = stopped.Token });

        Assert.False(repair.Complete);
        Assert.Null(repair.Fewest);
    }

    private static int Grave(Plan plan) => plan.Findings.Count(f => f.Level != FindingLevel.Note);
}
