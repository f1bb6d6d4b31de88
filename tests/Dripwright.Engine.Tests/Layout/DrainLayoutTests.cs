using CsCheck;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Rigs;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Layout;

public sealed class DrainLayoutTests
{
    [Fact]
    public void The_drain_of_the_ten_foot_row_falls_a_quarter_inch_in_each_foot()
    {
        var row = TestRigs.Layout(TestRigs.TenPots).Rows[0];
        var high = row.Drain.At(row.Drain.End);
        var low = row.Drain.At(row.Drain.End - (10 * 0.3048));
        Assert.Equal(2.5 * 0.0254, high.Z - low.Z, 1e-9);
        Assert.Equal(row.Base - 0.0254 - (row.Drain.Pipe.OutsideDiameter / 2), high.Z, 1e-9);
    }

    [Fact]
    public void Water_falls_from_every_pot_to_the_mouth() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            var slope = rig.Drain.Slope;
            foreach (var row in layout.Rows)
            {
                var exit = row.Drain.At(row.DrainExit);
                foreach (var hole in row.Drain.Holes)
                {
                    var fall = row.Drain.At(hole.Station).Z - exit.Z;
                    Assert.Equal(slope * Math.Abs(hole.Station - row.DrainExit), fall, 1e-9);
                }

                // Follow the water: wherever a run ends, the next one begins there or lower.
                Assert.True(exit.Z >= layout.Tank.Mouth.Z - 1e-9);
            }

            foreach (var run in layout.Returns.Where(r => r.Label[0] is 'R' or 'C'))
            {
                var fall = Math.Abs(run.At(run.Start).Z - run.At(run.End).Z);
                Assert.Equal(slope * (run.End - run.Start), fall, 1e-9);
            }
        });

    [Fact]
    public void Returns_join_where_they_meet() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            Vector3[] ends =
            [
                .. layout.Returns.Concat(layout.Rows.Select(r => r.Drain)).SelectMany(r => r.Path),
                .. layout.Returns.SelectMany(r => r.Fittings.Select(f => r.At(f.Station))),
                layout.Tank.Mouth,
            ];
            foreach (var drop in layout.Returns.Where(r => r.Label[0] is 'L' or 'K' or 'T'))
            {
                Assert.Contains(ends, e => e.DistanceTo(drop.Path[0]) < 1e-6);
            }

            foreach (var drop in layout.Returns.Where(r => r.Label[0] is 'L' or 'K'))
            {
                // Rows whose drains lie closer than two tees push the tees apart: sideways, never in height.
                Assert.Contains(
                    ends,
                    e =>
                        Math.Abs(e.Z - drop.Path[^1].Z) < 0.02
                        && Math.Abs(e.X - drop.Path[^1].X) < 1e-6
                        && Math.Abs(e.Y - drop.Path[^1].Y) < 0.25
                );
            }
        });

    [Fact]
    public void The_mouth_is_over_the_tank() =>
        TestRigs.Any.Holds(rig =>
        {
            var tank = TestRigs.Layout(rig).Tank;
            Assert.InRange(tank.Mouth.X, tank.Left, tank.Right);
            Assert.InRange(tank.Mouth.Y, tank.Front, tank.Back);
        });

    [Fact]
    public void Every_pot_has_its_hole_in_the_drain_under_it() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var row in TestRigs.Layout(rig).Rows)
            {
                Assert.Equal(
                    row.Pots.Select(p => (p.Number, p.Station)),
                    row.Drain.Holes.Select(h => (h.Pot, h.Station))
                );
            }
        });

    [Fact]
    public void Feed_enters_where_the_rig_says()
    {
        foreach (var entry in Enum.GetValues<FeedEntry>())
        {
            var rig = TestRigs.TenPots with { Feed = TestRigs.TenPots.Feed with { Entry = entry } };
            var row = TestRigs.Layout(rig).Rows[0];
            double[] expected = entry switch
            {
                FeedEntry.BothEnds => [0, row.Length],
                FeedEntry.Middle => [row.Length / 2],
                _ => [0],
            };
            Assert.Equal(expected.Length, row.FeedEntries.Count);
            for (var i = 0; i < expected.Length; i++)
            {
                Assert.Equal(expected[i], row.FeedEntries[i], 1e-9);
            }

            Assert.Equal(entry == FeedEntry.Loop ? 4 : 1, row.Feed.Count);
            Assert.Equal(20, row.Feed.Sum(f => f.Holes.Count));
        }
    }

    [Fact]
    public void Header_links_reach_every_entry_once_and_add_up_to_their_runs() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            string[] names = [.. layout.Supply.Select(l => l.To)];
            Assert.Equal(names.Length, names.Distinct().Count());
            foreach (var row in layout.Rows)
            {
                Assert.Contains(Invariant($"near-{row.Number}"), names);
                Assert.Equal(rig.Feed.Entry == FeedEntry.BothEnds, names.Contains(Invariant($"far-{row.Number}")));
            }

            foreach (var links in layout.Supply.GroupBy(l => l.Run.Label))
            {
                Assert.All(links, l => Assert.True(l.Length > 0 && l.Loss >= 0));
                Assert.Equal(links.First().Run.Length, links.Sum(l => l.Length), 1e-9);
            }
        });

    [Fact]
    public void The_siphon_break_lies_over_the_water_and_on_no_fitting()
    {
        var rig = TestRigs.TenPots;
        var layout = TestRigs.Layout(rig with { Feed = rig.Feed with { SiphonBreak = true } });
        var header = layout.Supply[0].Run;
        var hole = Assert.Single(header.Holes);
        Assert.Equal(HoleUse.SiphonBreak, hole.Use);
        Assert.True(header.At(hole.Station).Z > layout.Tank.Full + 0.02);
        Assert.All(header.Fittings, f => Assert.True(Math.Abs(f.Station - hole.Station) > f.Reach));
    }

    [Fact]
    public void The_room_used_holds_rows_drains_and_reservoir() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            Vector3[] corners = [.. layout.Returns.Concat(layout.Rows.Select(r => r.Drain)).SelectMany(r => r.Path)];
            Assert.All(corners, c => Assert.True(c.Y <= layout.DepthUsed + 1e-9));
            Assert.True(layout.Tank.Back <= layout.DepthUsed + 1e-9);
            Assert.True(corners.Max(c => c.X) - corners.Min(c => c.X) <= layout.LengthUsed + 1e-9);
        });
}
