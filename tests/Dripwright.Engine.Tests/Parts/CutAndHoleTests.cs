using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Layout;
using Dripwright.Engine.Units;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Parts;

public sealed class CutAndHoleTests
{
    [Fact]
    public void Every_piece_of_the_layout_is_cut_exactly_once() =>
        TestRigs.Any.Holds(
            rig =>
            {
                var layout = TestRigs.Layout(rig);
                var plan = PartsPlanTests.Plan(rig, layout);
                if (plan.CutTroubles.Any(t => t.What.Key != "cut.hole-unmarked"))
                {
                    // A stand lower than its joints: said in words, and tested below.
                    Assert.Contains(layout.Stand.Members, m => m.Length < 0.001);
                    return;
                }

                var cut = plan
                    .Cuts.SelectMany(c => c.Stocks)
                    .SelectMany(s => s.Pieces)
                    .GroupBy(p => p.Label)
                    .ToDictionary(g => g.Key, g => g.ToList());
                foreach (var piece in layout.Runs.SelectMany(r => r.Pieces))
                {
                    var placed = Assert.Single(cut[piece.Label]);
                    Assert.InRange(placed.Length - piece.Length, -1e-8, 1.1e-5);
                }

                foreach (var members in layout.Stand.Members.GroupBy(m => m.Label))
                {
                    Assert.Equal(members.Count(), cut[members.Key].Count);
                    Assert.All(members, m => Assert.Equal(m.Length, cut[members.Key][0].Length, 1.1e-5));
                }
            },
            iter: 60
        );

    [Fact]
    public void Members_that_share_a_label_are_cut_alike() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var members in TestRigs.Layout(rig).Stand.Members.GroupBy(m => m.Label))
            {
                Assert.True(members.Max(m => m.Length) - members.Min(m => m.Length) < 1e-9, members.Key);
            }
        });

    [Fact]
    public void Bought_lengths_are_those_of_the_cut_plans() =>
        TestRigs.Any.Holds(
            rig =>
            {
                var plan = PartsPlanTests.Plan(rig);
                var cut = plan.Cuts.Sum(c => c.BoughtLength);
                var lines = plan
                    .Lines.Where(l => l.EachLength > 0 && !l.Part.StartsWith("microtube", StringComparison.Ordinal))
                    .Sum(l => l.Buy * l.EachLength);
                Assert.Equal(cut, lines, 1e-6);
            },
            iter: 60
        );

    [Fact]
    public void Marks_and_steps_lead_back_to_the_stations() =>
        TestRigs.Any.Holds(
            rig =>
            {
                var layout = TestRigs.Layout(rig);
                var plan = PartsPlanTests.Plan(rig, layout);
                var runs = layout.Runs.ToDictionary(r => r.Label);
                var unmarked = plan.CutTroubles.Count(t => t.What.Key == "cut.hole-unmarked");
                Assert.Equal(runs.Values.Sum(r => r.Holes.Count), plan.Holes.Count + unmarked);
                foreach (var marks in plan.Holes.GroupBy(h => h.Piece))
                {
                    double sum = 0;
                    foreach (var mark in marks)
                    {
                        var run = runs[mark.Run];
                        var piece = run.Pieces.Single(p => p.Label == mark.Piece);
                        var hole = run.Holes[mark.Number - 1];
                        sum += mark.Step;
                        Assert.Equal(mark.FromEnd, sum, 1e-9);
                        Assert.InRange(mark.FromEnd, 0, piece.Length);
                        Assert.Equal(hole.Station, piece.From + (mark.FromEnd / run.Stretch), 1e-9);
                        Assert.Equal((hole.Pot, hole.Diameter), (mark.Pot, mark.Diameter));
                    }
                }
            },
            iter: 60
        );

    [Fact]
    public void Holes_have_the_size_of_the_seal_and_not_of_the_pipe()
    {
        var plan = PartsPlanTests.Plan(TestRigs.TenPots);
        var outlet = PartsCatalogue.Default.Outlets["outlet-3/4"];
        HoleMark[] drain = [.. plan.Holes.Where(h => h.Run == "D1")];
        Assert.Equal(10, drain.Length);
        Assert.All(drain, h => Assert.Equal(outlet.PipeHole, h.Diameter));
        Assert.All(drain, h => Assert.Equal("hole saw 1 1/8 in", h.Tool.Told()));
        HoleMark[] feed = [.. plan.Holes.Where(h => h.Run == "F1")];
        Assert.All(feed, h => Assert.Equal("punch 0.12 in", h.Tool.Told()));
    }

    [Fact]
    public void In_rigid_pipe_the_emitters_holes_are_drilled()
    {
        var rig = TestRigs.TenPots;
        var plan = PartsPlanTests.Plan(
            rig with
            {
                Units = UnitSystem.Metric,
                Feed = rig.Feed with { Line = "pvc40-1/2" },
            }
        );
        Assert.All(
            plan.Holes.Where(h => h.Run == "F1"),
            h => Assert.Equal("drill 3 mm", h.Tool.Told(UnitSystem.Metric))
        );
    }

    [Fact]
    public void A_stand_lower_than_its_joints_is_said_in_words()
    {
        var rig = TestRigs.TenPots.WithRow(r => r with { StandHeight = 0.06 });
        var plan = PartsPlanTests.Plan(rig with { Stand = rig.Stand with { JointCentre = 0.1 } });
        Assert.Contains(plan.CutTroubles, t => t.What.Told().StartsWith("S1-leg", StringComparison.Ordinal));
        Assert.NotEmpty(plan.Cuts);
    }

    [Fact]
    public void Lengths_on_hand_are_cut_first()
    {
        var rig = TestRigs.TenPots with
        {
            OnHand =
            [
                new OnHand
                {
                    Part = "pvc40-1-1/2",
                    Count = 1,
                    Length = 3.048,
                },
            ],
        };
        var cuts = PartsPlanTests.Plan(rig).Cuts.Single(c => c.Material.Contains("1-1/2", StringComparison.Ordinal));
        Assert.False(cuts.Stocks[0].IsBought);
        var bare = PartsPlanTests
            .Plan(TestRigs.TenPots)
            .Cuts.Single(c => c.Material.Contains("1-1/2", StringComparison.Ordinal));
        Assert.True(cuts.BoughtLength < bare.BoughtLength, Invariant($"{cuts.BoughtLength} {bare.BoughtLength}"));
    }

    [Fact]
    public void Pipe_on_hand_without_a_length_is_named_and_not_counted()
    {
        var rig = TestRigs.TenPots with { OnHand = [new OnHand { Part = "pvc40-1-1/2", Count = 3 }] };
        Assert.Contains(
            PartsPlanTests.Plan(rig).CutTroubles,
            t => t.What.Told().Contains("length", StringComparison.Ordinal)
        );
    }
}
