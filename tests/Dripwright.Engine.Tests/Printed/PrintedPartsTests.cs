using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Tests.Layout;
using Dripwright.Engine.Tests.Parts;
using Dripwright.Engine.Tests.Planning;

namespace Dripwright.Engine.Tests.Printed;

/// <summary>What a rig has printed fits its tubes, its printer and its loads.</summary>
public sealed class PrintedPartsTests
{
    private static readonly Rig s_braced = TestRigs.TenPots with
    {
        Stand = TestRigs.TenPots.Stand with { Bracing = Bracing.Both, ExtraFrames = 1, WallLeft = 1 },
    };

    [Fact]
    public void A_tube_of_its_cut_length_fills_the_space_between_the_floors_of_its_two_sockets()
    {
        foreach (var arrangement in Enum.GetValues<Arrangement>())
        {
            var rig = s_braced.WithRow(row => row with { Arrangement = arrangement });
            var layout = TestRigs.Layout(rig);
            var printed = PrintedParts.Of(rig, layout, strength: null);
            Assert.Empty(printed.Refused);
            double Floor(Vector3 at, Vector3 way)
            {
                var part = Assert.Single(
                    printed.Parts,
                    p => p.Place?.Directions.Count > 0 && p.Place.Joints.Any(j => j.At.DistanceTo(at) < 1e-6)
                );
                // Joints that are alike may be turned about the vertical, so only the rise of the way must agree.
                return part
                    .Design.Sockets.Where(s => Math.Abs(part.Design.InUse.Turned(s.Way).Z - way.Z) < 1e-6)
                    .Select(s => part.Design.InUse.Of(s.Floor).Length)
                    .Distinct(new Near())
                    .Single();
            }

            StandMember[] socketed =
            [
                .. layout.Stand.Members.Where(m => m.Role is MemberRole.Rail or MemberRole.Leg or MemberRole.Cross),
            ];
            Assert.NotEmpty(socketed);
            foreach (var tube in socketed)
            {
                var way = new Vector3(tube.To.X - tube.From.X, tube.To.Y - tube.From.Y, tube.To.Z - tube.From.Z);
                var space = tube.From.DistanceTo(tube.To) - Floor(tube.From, way.Unit()) - Floor(tube.To, -way.Unit());
                Assert.Equal(space, tube.Length, 1e-9);
            }
        }
    }

    [Fact]
    public void The_rails_lie_at_the_height_asked_for_when_foot_leg_and_joint_are_put_together()
    {
        var layout = TestRigs.Layout(s_braced);
        var leg = layout.Stand.Members.First(m => m.Role == MemberRole.Leg);
        var top = StandLayout.FootFloor + leg.Length + s_braced.Stand.JointCentre + (layout.Stand.Tube.Outside / 2);
        Assert.Equal(s_braced.Rows[0].StandHeight, top, 1e-9);
    }

    [Fact]
    public void Parts_are_made_for_the_printer_the_plastic_and_the_tube_that_the_rig_names()
    {
        var rig = s_braced with
        {
            Printing = new Printing
            {
                TubeOutside = 0.0249,
                Clearance = 0.00035,
                BedWidth = 0.12,
                BedDepth = 0.1,
                BedHeight = 0.11,
                Nozzle = 0.0006,
                Layer = 0.0003,
                Plastic = PrintPlastic.Asa,
                Warmest = 318.15,
            },
        };

        var printed = PrintedParts.Of(rig, TestRigs.Layout(rig), strength: null);

        Assert.All(
            printed.Parts,
            part =>
            {
                var made = part.Design.Parameters;
                Assert.Equal((0.0249, 0.00035, "ASA"), (made.TubeOutside, made.Clearance, made.Plastic.Name));
                Assert.Equal((0.12, 0.1, 0.11), (made.Printer.BedWidth, made.Printer.BedDepth, made.Printer.Height));
                Assert.Equal((0.0006, 0.0003), (made.Printer.Nozzle, made.Printer.Layer));
            }
        );
        // The coupon is longer than this bed: that is said, not hidden.
        Assert.False(printed.Parts.Single(p => p.Number == PrintedParts.Coupon).Design.Bed.Fits);
        Assert.Contains(PartsPlanTests.Plan(rig).Lines, line => line.Part == "filament-asa" && line.Buy == line.Needed);
    }

    [Fact]
    public void Every_socket_carries_the_moment_that_the_frame_brings_it_and_a_heavier_load_makes_thicker_walls()
    {
        var rig = s_braced with { Stand = s_braced.Stand with { ExtraFrames = 0, Leaning = true } };
        var layout = TestRigs.Layout(rig);
        var strength = StandPlanner.Of(layout, StandOptions.Of(rig));
        var bare = PrintedParts.Of(rig, layout, strength: null);
        var made = PrintedParts.Of(rig, layout, strength);

        Assert.Empty(made.Refused);
        PrintedPart[] ruled = [.. made.Parts.Where(p => p.Moment == MomentSource.Frame)];
        Assert.NotEmpty(ruled);
        foreach (var part in ruled)
        {
            var moment = part.Design.Parameters.Load.Moment;
            Assert.True(moment > JointLoad.Usual.Moment);
            Assert.True(part.Design.Strength!.BearingMoment >= moment && part.Design.Strength.FlatMoment >= moment);
            Assert.True(part.Design.Wall >= bare.Parts.Single(p => p.Number == part.Number).Design.Wall);
            // The largest moment of any tube and combination is the bound: a joint never gets more than its tube bears.
            Assert.True(moment <= strength.Rows[0].Cases.SelectMany(c => c.Uses).Max(u => u.Moment) + 1e-9);
        }

        Assert.Contains(ruled, part => part.Design.Wall > bare.Parts.Single(p => p.Number == part.Number).Design.Wall);
    }

    [Fact]
    public void A_part_that_no_wall_makes_strong_enough_is_refused_with_what_to_do()
    {
        var plan = Plans.From("""{ "printing": { "plastic": "pla", "warmest": "48 C" } }""", 0);

        var refused = Assert.Single(plan.Printed.Refused, r => r.Number == "J1");

        Assert.Contains("PLA", refused.Fault.Found.Told(), StringComparison.Ordinal);
        Assert.Contains("plastic that tolerates the heat", refused.Fault.Remedy.Told(), StringComparison.Ordinal);
        // It still counts among the parts, under its number.
        var line = Assert.Single(plan.Parts.Lines, l => l.Part == "joint-three-way");
        Assert.Contains("cannot be printed", line.Note.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void Joints_on_hand_need_no_filament()
    {
        var bare = PartsPlanTests.Plan(s_braced);
        OnHand[] have =
        [
            .. bare
                .Lines.Where(l => l.Section == "printed" && !l.Part.StartsWith("filament", StringComparison.Ordinal))
                .Select(l => new OnHand { Part = l.Part, Count = l.Needed }),
        ];

        var plan = PartsPlanTests.Plan(s_braced with { OnHand = have });

        Assert.Contains(bare.Lines, l => l.Part == "filament-petg");
        Assert.DoesNotContain(plan.Lines, l => l.Part == "filament-petg");
    }

    [Fact]
    public void A_thousand_pots_have_as_few_kinds_of_part_as_ten()
    {
        var rig = s_braced.WithPots(1000);
        var layout = TestRigs.Layout(rig);

        var printed = PrintedParts.Of(rig, layout, strength: null);

        Assert.Equal(
            PrintedParts.Of(s_braced, TestRigs.Layout(s_braced), strength: null).Parts.Select(p => p.Number),
            printed.Parts.Select(p => p.Number)
        );
        Assert.Equal(
            layout.Stand.Joints.Count(j => j.Part != StandLayout.Clamp),
            printed.Places.Sum(place => place.Joints.Count)
        );
    }

    private sealed class Near : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) < 1e-9;

        public int GetHashCode(double obj) => 0;
    }
}
