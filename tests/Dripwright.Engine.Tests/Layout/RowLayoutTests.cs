using CsCheck;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Layout;

public sealed class RowLayoutTests
{
    private const double Inch = 0.0254;

    [Fact]
    public void Ten_pots_at_one_foot_with_two_emitters_have_twenty_holes_six_inches_apart()
    {
        // Common practice for a ten-foot row.
        var line = Assert.Single(TestRigs.Layout(TestRigs.TenPots).Rows[0].Feed);
        Assert.Equal(20, line.Holes.Count);
        for (var i = 0; i < 20; i++)
        {
            Assert.Equal((3 + (6 * i)) * Inch, line.Holes[i].Station, 1e-12);
            Assert.Equal(i + 1, line.Holes[i].Number);
            Assert.Equal((i / 2) + 1, line.Holes[i].Pot);
        }
    }

    [Fact]
    public void The_ten_foot_row_has_no_hole_on_anything() => Assert.Empty(TestRigs.Layout(TestRigs.TenPots).Conflicts);

    [Fact]
    public void Pots_keep_their_spacing_and_equal_ends_but_where_all_move_off_a_joint_of_the_stand() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var row in TestRigs.Layout(rig).Rows)
            {
                var edge = (row.Length - ((row.Spec.Pots - 1) * row.Spec.Spacing)) / 2;
                Assert.Equal(row.Spec.Pots, row.Pots.Count);
                Assert.True(edge >= (row.Pot.Length / 2) - 1e-9);
                // In steps of an eighth of an inch, and no pot over the stand's end.
                var moved = row.Pots[0].Station - edge;
                Assert.Equal(Math.Round(moved / (Inch / 8)), moved / (Inch / 8), 1e-6);
                Assert.True(Math.Abs(moved) <= edge - (row.Pot.Length / 2) + 1e-9);
                for (var i = 0; i < row.Pots.Count; i++)
                {
                    Assert.Equal(edge + moved + (i * row.Spec.Spacing), row.Pots[i].Station, 1e-9);
                }

                Assert.Equal(row.Modules + 1, row.Joints.Count);
                Assert.Equal(row.Length, row.Joints[^1], 1e-9);
            }
        });

    [Fact]
    public void One_module_fewer_would_not_carry_the_pots() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var row in TestRigs.Layout(rig).Rows)
            {
                var needed = ((row.Spec.Pots - 1) * row.Spec.Spacing) + row.Pot.Length;
                Assert.True(row.Modules == 1 || (row.Modules - 1) * row.Spec.ModuleLength < needed);
            }
        });

    [Fact]
    public void Rows_keep_their_aisles_and_end_in_line_next_to_the_reservoir() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            double back = 0;
            foreach (var row in layout.Rows)
            {
                Assert.Equal(row.Spec.Aisle, row.CentreY - (row.Depth / 2) - back, 1e-9);
                back = row.CentreY + (row.Depth / 2);
            }

            var ends = layout.Rows.Select(r => rig.Reservoir.At == RowEnd.Left ? r.OriginX : r.OriginX + r.Length);
            Assert.True(ends.Max() - ends.Min() < 1e-9);
        });

    [Fact]
    public void In_a_wide_row_the_emitters_stay_within_reach_of_their_pot()
    {
        var wide = TestRigs.TenPots.WithRow(r => r with { Pots = 3, Spacing = 3 });
        var row = TestRigs.Layout(wide).Rows[0];
        var reach = (row.Pot.Length / 2) + (wide.Feed.MicrotubeLength / 2);
        Assert.All(row.Emitters, e => Assert.True(Math.Abs(e.Station - row.Pots[e.Pot - 1].Station) <= reach + 1e-12));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(500)]
    [InlineData(5000)]
    public void Any_number_of_pots_is_laid_out_whole(int pots)
    {
        var row = TestRigs.Layout(TestRigs.TenPots.WithPots(pots)).Rows[0];
        Assert.Equal(pots, row.Pots.Count);
        Assert.Equal(2 * pots, row.Emitters.Count);
        Assert.Equal(pots, row.Drain.Holes.Count);
        Assert.Equal(2 * pots, row.Feed.Sum(f => f.Holes.Count));
    }

    [Fact]
    public void Pots_on_the_floor_have_no_stand()
    {
        var layout = TestRigs.Layout(TestRigs.TenPots.WithRow(r => r with { StandHeight = 0 }));
        Assert.Empty(layout.Stand.Members);
        Assert.Empty(layout.Stand.Joints);
    }

    [Fact]
    public void A_staggered_row_sets_every_second_pot_back_and_drains_between_the_lines()
    {
        var row = TestRigs.Layout(TestRigs.TenPots.WithRow(r => r with { Arrangement = Arrangement.Staggered })).Rows[
            0
        ];
        Assert.All(row.Pots, p => Assert.Equal(p.Number % 2 == 0, p.BackLine));
        Assert.All(row.Drain.Path, p => Assert.Equal(row.CentreY, p.Y));
        Assert.Equal(row.Spec.LineDistance, row.Pots[1].Base.Y - row.Pots[0].Base.Y, 1e-12);
    }
}
