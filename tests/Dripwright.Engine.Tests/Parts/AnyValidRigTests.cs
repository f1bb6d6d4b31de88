using CsCheck;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Layout;
using Dripwright.Engine.Tests.Rigs;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>Laws for rigs that a reader lets through, sensible or not: rows too short for their pots, tanks under the floor.</summary>
public sealed class AnyValidRigTests
{
    [Fact]
    public void Every_number_of_layout_and_parts_is_finite() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var layout = TestRigs.Layout(rig);
                var plan = PartsPlanTests.Plan(rig, layout);
                IEnumerable<double> numbers =
                [
                    .. layout.Runs.SelectMany(r => r.Path).SelectMany(p => new[] { p.X, p.Y, p.Z }),
                    .. layout.Runs.SelectMany(r => r.Fittings.Select(f => f.Station)),
                    .. layout.Runs.SelectMany(r => r.Pieces.Select(p => p.Length)),
                    .. layout.Conflicts.Select(c => c.Shift),
                    .. layout.Supply.SelectMany(l => new[] { l.Length, l.Height, l.Loss }),
                    .. plan.Holes.SelectMany(h => new[] { h.FromEnd, h.Step }),
                ];
                Assert.All(numbers, n => Assert.True(double.IsFinite(n)));
                Assert.All(plan.Lines, l => Assert.True(l.Needed >= 0 && l.Buy >= 0));
            },
            iter: 50
        );

    [Fact]
    public void Every_hole_is_marked_or_named_as_one_that_cannot_be() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var layout = TestRigs.Layout(rig);
                var plan = PartsPlanTests.Plan(rig, layout);
                var named = plan.CutTroubles.Count(t => t.What.Key == "cut.hole-unmarked");
                Assert.Equal(layout.Runs.Sum(r => r.Holes.Count), plan.Holes.Count + named);
                // What cannot be marked is always in conflict, with a shift where one exists.
                Assert.True(named <= layout.Conflicts.Count);
            },
            iter: 50
        );

    [Fact]
    public void Fittings_of_the_supply_and_the_returns_never_overlap() =>
        RigGen.Rigs.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            foreach (var run in layout.Supply.Select(l => l.Run).Concat(layout.Returns))
            {
                for (var i = 1; i < run.Fittings.Count; i++)
                {
                    var apart = run.Fittings[i].Station - run.Fittings[i - 1].Station;
                    var least = run.Fittings[i].Reach + run.Fittings[i - 1].Reach;
                    Assert.True(
                        apart * run.Stretch >= least - 1e-6,
                        Invariant($"{run.Fittings[i - 1].Label} {run.Fittings[i].Label}: {apart} < {least}")
                    );
                }
            }
        });

    [Fact]
    public void Every_shift_cures_its_hole() =>
        RigGen.Rigs.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            foreach (var conflict in layout.Conflicts.Where(c => c.Shift != 0))
            {
                var run = layout.Runs.Single(r => r.Label == conflict.Run);
                var at = conflict.Hole.Station + conflict.Shift;
                var radius = conflict.Hole.Diameter / 2;
                Assert.InRange(at, run.Start + radius - 1e-6, run.End - radius + 1e-6);
                Assert.All(run.Fittings, f => Assert.True(Math.Abs(f.Station - at) >= f.Reach + radius - 1e-6));
                Assert.All(
                    layout.Rows[run.Row - 1].Joints,
                    j => Assert.True(Math.Abs(j - at) >= (layout.Parts.Tube.Outside / 2) + radius - 1e-6)
                );
            }
        });

    [Fact]
    public void The_mouth_is_over_the_tank_and_not_above_any_row() =>
        RigGen.Rigs.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            Assert.InRange(layout.Tank.Mouth.X, layout.Tank.Left - 1e-9, layout.Tank.Right + 1e-9);
            Assert.All(layout.Rows, r => Assert.True(layout.Tank.Mouth.Z <= r.Drain.Path.Min(p => p.Z) + 1e-9));
        });

    [Fact]
    public void The_bill_of_pots_and_emitters_is_that_of_the_rig_file() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = PartsPlanTests.Plan(rig);
                foreach (var kind in rig.Rows.GroupBy(r => r.Pot))
                {
                    var pots = plan.Lines.Where(l => l.Part == kind.Key).Sum(l => l.Needed);
                    Assert.Equal(kind.Sum(r => r.Count * r.Pots), pots);
                }

                var planted = rig.Rows.Sum(r => r.Count * Planted(r, rig.Feed));
                Assert.Equal(planted, plan.Lines.Where(l => l.Part == rig.Feed.Emitter).Sum(l => l.Needed));
            },
            iter: 50
        );

    /// <summary>Emitters of one row, pot by pot; a later entry overrules an earlier one.</summary>
    private static int Planted(Row row, Feed feed)
    {
        var sum = 0;
        for (var pot = 1; pot <= row.Pots; pot++)
        {
            var empty = feed.EmittersAtEmptyPots ? feed.EmittersPerPot : 0;
            var at = row.Planting is null ? feed.EmittersPerPot : empty;
            foreach (var entry in row.Planting ?? [])
            {
                at = PotRange.Parse(entry.Pots, row.Pots).Contains(pot) ? entry.Emitters ?? feed.EmittersPerPot : at;
            }

            sum += at;
        }

        return sum;
    }
}
