using CsCheck;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Printed.Makers;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Layout;
using Dripwright.Engine.Tests.Parts;

namespace Dripwright.Engine.Tests.Printed;

/// <summary>Small parts go where the rig has a place for them, and are counted just where they are asked for.</summary>
public sealed class SmallPartsTests
{
    private static readonly SmallPartsWanted s_all = new()
    {
        LineRests = true,
        HoseClips = true,
        HoseClamp = true,
        StakeHolders = true,
        DrillGuides = true,
        Couplers = 3,
    };

    [Fact]
    public void Ten_pots_have_the_small_parts_that_a_pencil_counts()
    {
        var plan = PartsPlanTests.Plan(Wanting(TestRigs.TenPots, s_all));

        int Needed(string key) => plan.Lines.Where(line => line.Part == key).Sum(line => line.Needed);
        Assert.Equal(10, Needed("line-rest"));
        Assert.Equal(2, Needed("hose-clip"));
        Assert.Equal(1, Needed("clamp-block"));
        Assert.Equal(2, Needed("clamp-screw"));
        Assert.Equal(20, Needed("stake-holder"));
        Assert.Equal(1, Needed("drill-guide"));
        Assert.Equal(3, Needed("joint-coupler"));
    }

    [Fact]
    public void What_is_not_asked_for_stands_in_no_list_and_is_offered()
    {
        var rig = TestRigs.TenPots;
        var layout = TestRigs.Layout(rig);

        var offers = PrintedParts.Small(rig, layout);

        string[] keys = [.. offers.SelectMany(offer => offer.Parts).Select(part => part.Key!)];
        Assert.Equal(6, keys.Length);
        Assert.All(offers, offer => Assert.False(offer.Wanted));
        Assert.DoesNotContain(PartsPlanTests.Plan(rig).Lines, line => keys.Contains(line.Part));
        Assert.DoesNotContain(PrintedParts.Of(rig, layout, null).Parts, part => keys.Contains(part.Key));
    }

    [Fact]
    public void Asking_for_one_leaves_the_numbers_and_the_shapes_of_all_others() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            var offers = PrintedParts.Small(rig, layout);
            var asked = PrintedParts.Of(rig, layout, null);
            var bare = PrintedParts.Of(Wanting(rig, new()), layout, null);

            var wanted = offers.Where(offer => offer.Wanted).SelectMany(offer => offer.Parts);
            Assert.Equal(
                bare.Parts.Concat(wanted).Select(part => (part.Number, part.Count, part.Use)),
                asked.Parts.Select(part => (part.Number, part.Count, part.Use))
            );
        });

    [Fact]
    public void No_two_things_of_a_rig_have_one_number() =>
        TestRigs.Any.Holds(rig =>
        {
            var all = Wanting(rig, s_all);
            var layout = TestRigs.Layout(all);
            var printed = PrintedParts.Of(all, layout, null);
            string[] numbers =
            [
                .. printed.Parts.Select(part => part.Number),
                .. printed.Refused.Select(part => part.Number),
                .. layout.Runs.Select(run => run.Label),
                .. layout.Wires.Select(wire => wire.Label),
                StandLayout.ClampNumber,
            ];

            Assert.Equal(numbers.Distinct(), numbers);
        });

    [Fact]
    public void A_line_rest_sits_on_a_rim_under_the_line_with_no_hole_or_fitting_in_its_way() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(Wanting(rig, s_all));
            foreach (var part in Of(rig, PrintedKind.LineRest))
            {
                var half = LineRestMaker.Along(part.Design.Parameters) / 2;
                foreach (var spot in part.Spots)
                {
                    var row = layout.Rows[spot.Row - 1];
                    var station = spot.At.X - row.OriginX;
                    PipeRun run = row.Feed.First(run =>
                        Math.Abs(run.Path[0].Y - spot.At.Y) < 1e-9 && Math.Abs(run.Path[^1].Y - spot.At.Y) < 1e-9
                    );
                    PotPlace pot = row.Pots.MinBy(pot =>
                        Math.Abs(Math.Abs(pot.Station - station) - (row.Pot.Length / 2))
                        + Math.Abs(pot.Base.Y - spot.At.Y)
                    )!;
                    var away = Math.Sqrt(
                        Math.Pow(pot.Station - station, 2) + Math.Pow(row.Pot.Round ? pot.Base.Y - spot.At.Y : 0, 2)
                    );

                    Assert.Equal(row.Pot.Length / 2, away, 1e-9);
                    Assert.Equal(pot.Base.Z + row.Pot.Height, spot.At.Z, 1e-9);
                    Assert.All(
                        run.Holes,
                        hole => Assert.True(Math.Abs(hole.Station - station) >= half + (hole.Diameter / 2) - 1e-9)
                    );
                    Assert.All(
                        run.Fittings,
                        fitting => Assert.True(Math.Abs(fitting.Station - station) >= half + fitting.Reach - 1e-9)
                    );
                    Assert.InRange(station, run.Start, run.End);
                }

                Assert.Equal(part.Spots.Count, part.Count);
                Assert.Equal(part.Spots.Count, part.Spots.Distinct().Count());
            }
        });

    [Fact]
    public void A_hose_clip_meets_nothing_else_on_its_leg() =>
        Gen.Select(TestRigs.Any, Gen.Int[0, 3], Gen.Int[0, 1])
            .Holds(
                (any, braces, frames) =>
                {
                    var rig = any with { Stand = any.Stand with { Bracing = (Bracing)braces, ExtraFrames = frames } };
                    var layout = TestRigs.Layout(rig);
                    foreach (var clip in Of(rig, PrintedKind.HoseClip).SelectMany(part => part.Spots))
                    {
                        Assert.All(
                            layout.Stand.Joints.Where(joint =>
                                Math.Abs(joint.At.X - clip.At.X) + Math.Abs(joint.At.Y - clip.At.Y) < 1e-6
                            ),
                            joint => Assert.True(Math.Abs(joint.At.Z - clip.At.Z) > 0.02)
                        );
                    }
                }
            );

    [Fact]
    public void A_rest_takes_the_place_of_the_ties_at_the_module_joints()
    {
        static string Ties(Rig rig) =>
            PartsPlanTests.Plan(rig).Lines.Single(line => line.Part == "cable-tie").Where.Told();

        Assert.Contains("module joint", Ties(TestRigs.TenPots), StringComparison.Ordinal);
        var rested = Ties(Wanting(TestRigs.TenPots, new() { LineRests = true }));
        Assert.Contains("line rest", rested, StringComparison.Ordinal);
        Assert.DoesNotContain("module joint", rested, StringComparison.Ordinal);
    }

    [Fact]
    public void A_guide_sets_distances_that_the_pipe_has_between_its_holes() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            foreach (var part in Of(rig, PrintedKind.DrillGuide))
            {
                var pitch = part.Design.Parameters.HolePitch;
                double[] steps =
                [
                    .. layout
                        .Rows.SelectMany(row => row.Feed.Append(row.Drain))
                        .Where(run =>
                            !run.Pipe.Flexible && run.Pipe.OutsideDiameter == part.Design.Parameters.PipeOutside
                        )
                        .SelectMany(run =>
                            run.Holes.Zip(run.Holes.Skip(1), (a, b) => run.At(a.Station).DistanceTo(run.At(b.Station)))
                        ),
                ];

                // Half of the tenth of a millimetre to which distances are told apart.
                Assert.Contains(steps, step => Math.Abs(step - pitch) <= 0.5001e-4);
                Assert.All(
                    part.Spots,
                    spot => Assert.Contains(part.Spots, other => Math.Abs(other.At.DistanceTo(spot.At) - pitch) < 1e-4)
                );
            }
        });

    [Fact]
    public void A_line_that_hangs_over_the_pots_has_no_rest_and_that_is_said()
    {
        var rig = Wanting(TestRigs.TenPots, s_all) with { Feed = TestRigs.TenPots.Feed with { LineHeight = 0.8 } };

        var printed = PrintedParts.Of(rig, TestRigs.Layout(rig), null);

        var refused = Assert.Single(printed.Refused);
        Assert.Equal("A1", refused.Number);
        Assert.Contains("feed.lineHeight", refused.Fault.Expected.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void Pots_on_the_floor_have_small_parts_without_a_stand()
    {
        var rig = Wanting(TestRigs.TenPots.WithRow(row => row with { StandHeight = 0 }), s_all);

        var printed = PrintedParts.Of(rig, TestRigs.Layout(rig), null);

        Assert.Equal(["A1", "M2", "E1", "Z1"], printed.Parts.Select(part => part.Number));
        Assert.Equal(["M1", "Y1"], printed.Refused.Select(part => part.Number));
        Assert.Contains(PartsPlanTests.Plan(rig).Lines, line => line.Part == "filament-petg");
    }

    [Fact]
    public void A_drain_whose_hanger_has_no_room_hangs_by_strap()
    {
        var rig = TestRigs.TenPots.WithPots(20) with { Drain = TestRigs.TenPots.Drain with { Pipe = "pvc40-3" } };
        var printed = PrintedParts.Of(rig, TestRigs.Layout(rig), null);
        Assert.Contains(printed.Refused, part => part.Number == "P1");

        var lines = PartsPlanTests.Plan(rig).Lines;

        Assert.DoesNotContain(lines, line => line.Part == "drain-hanger");
        Assert.Equal(TestRigs.Layout(rig).Stand.Hangers.Count, lines.Single(line => line.Part == "pipe-strap").Needed);
    }

    private static Rig Wanting(Rig rig, SmallPartsWanted small) =>
        rig with
        {
            Printing = rig.Printing with { SmallParts = small },
        };

    private static IEnumerable<PrintedPart> Of(Rig rig, PrintedKind kind)
    {
        var all = Wanting(rig, s_all);
        return PrintedParts.Of(all, TestRigs.Layout(all), null).Parts.Where(part => part.Design.Kind == kind);
    }
}
