using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Layout;

namespace Dripwright.Engine.Tests.Planning;

/// <summary>What stands in one drain pipe backs up into the next; full means the same everywhere.</summary>
public sealed class BackedUpDrainTests
{
    [Fact]
    public void A_collector_that_stands_over_the_rows_outlets_backs_up_into_them()
    {
        var plan = Plans.From(
            """{ "rows": [ { "count": 2, "pots": 6 } ], "reservoir": { "tank": "tank-drum-55-gal", "fill": "90 %" } }"""
        );
        var full = plan.Layout.Tank.Full;
        foreach (var row in plan.Drain.Runs.Where(r => r.Row > 0))
        {
            Assert.False(row.FreeFall);
            var low = row.Surface[^1];
            Assert.InRange(low.Invert + low.Depth, full - 1e-6, full + 0.05);
        }

        Assert.All(plan.Drain.Pots, p => Assert.NotEmpty(p.PondingPots));
    }

    [Fact]
    public void A_row_over_a_collector_that_runs_half_empty_falls_freely()
    {
        var plan = Plans.From("""{ "rows": [ { "count": 3, "pots": 8 } ], "drain": { "pipe": "pvc40-2" } }""");
        Assert.All(plan.Drain.Runs, r => Assert.True(r.FreeFall, r.Run));
        Assert.Null(plan.Said("drain-backs-up"));
    }

    [Fact]
    public void A_drain_has_no_room_to_spare_exactly_where_it_runs_full() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var run in Plans.Of(rig).Drain.Runs.Where(r => r.Flow > 1e-9))
            {
                Assert.True(run.Pressurised ? run.Margin <= 1.002 : run.Margin >= 0.998, $"{run.Run}: {run.Margin}");
            }
        });

    [Fact]
    public void What_is_offered_for_a_full_drain_helps_when_it_is_planned()
    {
        var plan = Plans.From(
            """{ "rows": [ { "pots": 60 } ], "site": { "roomLength": "80 ft" }, "drain": { "pipe": "pvc40-3/4", "slope": "1 %" }, "feed": { "emitter": "drip-turbulent-2gph" }, "pump": { "model": "pump-1200gph" } }"""
        );
        var said = plan.Findings.First(f => f.Rule is "drain-full" or "drain-half-full");
        var cure = Assert.Single(said.Cures);
        var reading = RigCure.Applied(plan.Rig, cure, plan.Layout.Parts.Catalogue);
        var after = Plans.Of(reading.Rig!);
        Assert.DoesNotContain(after.Findings, f => f.Rule is "drain-full" or "drain-half-full");
    }
}
