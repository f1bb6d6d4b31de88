using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;
using Dripwright.Engine.Stands.Sections;
using Dripwright.Engine.Tests.Layout;

namespace Dripwright.Engine.Tests.Stands;

public sealed class StandPlanTests
{
    private static readonly StandOptions s_braced = new() { Bracing = Bracing.Both };

    [Fact]
    public void Every_tube_of_the_layout_is_in_the_frame()
    {
        var layout = TestRigs.Layout(TestRigs.TenPots);

        var frame = Assert.Single(StandFrame.Of(layout));

        Assert.Equal(layout.Stand.Members, frame.Tubes.Select(t => t.Member));
        Assert.Equal(
            layout.Stand.Members.Sum(m => m.From.DistanceTo(m.To)),
            frame.Model.Elements.Select((_, e) => frame.Model.LengthOf(e)).Sum(),
            1e-9
        );
        Assert.Equal(6, frame.Feet.Count);
    }

    [Fact]
    public void All_weight_reaches_the_floor()
    {
        var row = Row(TestRigs.TenPots, s_braced);
        foreach (var c in row.Cases)
        {
            var floor = c.FeetOf(row.Frame).Sum(f => f.Force.Z);
            var up = c.Loads.Acting.Sum(a => Math.Max(a.Force.Z, 0));

            Assert.Equal(c.Loads.Weight - up, floor, 1e-6 * c.Loads.Weight);
        }
    }

    [Fact]
    public void What_the_loads_are_made_of_adds_up_to_the_weight()
    {
        foreach (var c in Row(TestRigs.TenPots, s_braced).Cases)
        {
            var listed = c
                .Loads.Shares.Where(s => s.Name is not ("strings" or "a person leaning, sideways"))
                .Sum(s => s.Weight * s.Factor);
            var down = -c.Loads.Acting.Where(a => a.Force.Z < 0).Sum(a => a.Force.Z);

            Assert.Equal(down, listed, 1e-9 * down);
        }
    }

    [Fact]
    public void A_knock_down_stand_without_braces_falls_to_a_leaning_person_and_braces_cure_that()
    {
        var bare = Row(TestRigs.TenPots, new());
        var braced = Row(TestRigs.TenPots, s_braced);

        Assert.True(bare.Fallen is not null || bare.Buckling < RowStand.LeastBuckling);
        Assert.False(bare.Holds);
        Assert.Null(braced.Fallen);
    }

    [Fact]
    public void Sag_takes_slope_from_the_drain_on_one_side_of_the_span_only()
    {
        var full = Row(TestRigs.TenPots, s_braced).Cases[0];

        Assert.True(full.Drain!.LowestSlope < full.Drain.LaidSlope);
        Assert.Equal(0.25 / 12, full.Drain.LaidSlope, 1e-9);
    }

    [Fact]
    public void Braces_stiffen_the_stand_in_every_combination()
    {
        // A brace draws load to itself and could in principle buckle first: here it does not.
        var bare = Row(TestRigs.TenPots, new());
        var braced = Row(TestRigs.TenPots, s_braced);

        for (var i = 0; i < bare.Cases.Count; i++)
        {
            Assert.True(braced.Cases[i].Buckling!.Factor > bare.Cases[i].Buckling!.Factor);
        }
    }

    [Fact]
    public void Worn_tube_is_used_up_more()
    {
        var as_new = Row(TestRigs.TenPots, s_braced).Utilisation;
        var worn = Row(TestRigs.TenPots, s_braced with { WallLoss = 0.2 }).Utilisation;

        Assert.True(worn > 1.1 * as_new);
    }

    [Fact]
    public void Dividing_tubes_changes_little_but_the_buckling_of_single_tubes()
    {
        var once = Row(TestRigs.TenPots, s_braced);
        var often = Row(TestRigs.TenPots, s_braced with { Divisions = 3 });

        for (var i = 0; i < once.Cases.Count; i++)
        {
            var use = once.Cases[i].Worst!.Utilisation;
            Assert.Equal(use, often.Cases[i].Worst!.Utilisation, 0.01 * use);
        }
    }

    [Theory]
    [InlineData(Arrangement.Single)]
    [InlineData(Arrangement.Staggered)]
    public void Rows_of_any_make_are_computed_or_named(Arrangement arrangement)
    {
        foreach (var pots in (int[])[1, 4, 23])
        {
            foreach (var height in (double[])[0.3, 0.6, 1.2])
            {
                var rig = TestRigs.TenPots.WithRow(r =>
                    r with
                    {
                        Arrangement = arrangement,
                        Pots = pots,
                        StandHeight = height,
                    }
                );
                var row = Row(rig, new());

                Assert.All(
                    row.Cases,
                    c =>
                    {
                        Assert.True(c.Fault is not null || c.Uses.All(u => double.IsFinite(u.Utilisation)));
                        Assert.NotEqual(
                            "",
                            c.Fault is { } fault ? fault.Sentence(row.Frame.Places[fault.Node]).Told() : "stands"
                        );
                    }
                );
            }
        }
    }

    [Fact]
    public void Pots_on_the_floor_need_no_stand()
    {
        var rig = TestRigs.TenPots.WithRow(r => r with { StandHeight = 0 });

        Assert.Empty(StandPlanner.Of(TestRigs.Layout(rig)).Rows);
    }

    [Fact]
    public void Conduit_counts_as_the_weakest_tube_and_says_so()
    {
        var steel = StandFrame
            .Of(TestRigs.Layout(TestRigs.TenPots with { Stand = TestRigs.TenPots.Stand with { Tube = "emt-1" } }))[0]
            .Steel;

        Assert.True(steel.Assumed);
        Assert.Equal(Steels.Weakest.Yield, steel.Yield);
    }

    [Fact]
    public void Two_lines_of_pots_are_loaded_line_by_line() =>
        Assert.Contains(StandCase.Of(true, 2), c => c.Pots == PotsFull.BackLine);

    [Fact]
    public void Ties_hold_what_tips_a_bare_frame_and_dried_out_pots()
    {
        var tied = Row(TestRigs.TenPots, s_braced with { Tied = true });

        Assert.Equal([StandCase.DryLean, StandCase.BareLean], tied.LightTies.Select(t => t.Case));
        foreach (var (light, force) in tied.LightTies)
        {
            // By hand: what is left of the moment that tips it, over the height of the ties, shared by all of them.
            var loads = StandLoads.Of(tied.Frame, light);
            var feet = tied.Frame.Feet.Select(n => tied.Frame.Model.Nodes[n].At.Y).ToArray();
            var tip = TipOver.Worst(loads.Acting, feet.Min(), feet.Max(), tied.Frame.Row.Floor);
            var height = tied.Frame.Model.Nodes[tied.Frame.Ties[0]].At.Z - tied.Frame.Row.Floor;
            var least = (tip.Overturning - tip.Restoring) / height / tied.Frame.Ties.Count;

            Assert.True(force >= least && force > 0);
            Assert.True(tied.TieForce >= force);
        }
    }

    [Fact]
    public void A_bare_frame_asks_its_ties_for_what_a_person_pushes_less_what_its_own_weight_holds()
    {
        var tied = Row(TestRigs.TenPots, s_braced with { Tied = true });
        var bare = StandLoads.Of(tied.Frame, StandCase.BareLean);
        var weightless = bare.Acting.Where(a => a.Force.Y > 50).Sum(a => a.Force.Y);

        Assert.Equal(100, weightless, 1);
        Assert.InRange(tied.LightTies[1].Force, 100.0 / tied.Frame.Ties.Count / 2, 100);
    }

    private static RowStand Row(Rig rig, StandOptions options) =>
        Assert.Single(StandPlanner.Of(TestRigs.Layout(rig), options).Rows);
}
