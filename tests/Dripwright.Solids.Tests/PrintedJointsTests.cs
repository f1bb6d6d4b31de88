using CsCheck;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Shapes;
using Dripwright.Engine.Rigs;

namespace Dripwright.Solids.Tests;

public sealed class PrintedJointsTests
{
    private static readonly Vector3 s_x = new(1, 0, 0);
    private static readonly Vector3 s_y = new(0, 1, 0);

    [Fact]
    public void Every_joint_of_the_schools_stand_has_a_part_with_as_many_sockets_as_tubes_meet()
    {
        var stand = SchoolStand();

        var parts = PrintedJoints.Of(stand);

        Assert.Equal(stand.Joints.Count(joint => joint.Part != "brace-clamp"), parts.Sum(part => part.Joints.Count));
        Assert.Equal(parts.Count, parts.Select(part => part.Number).Distinct().Count());
        Assert.Contains(parts, part => part.Kind == PrintedKind.ThreeWay);
        Assert.Contains(parts, part => part.Kind == PrintedKind.Foot);
        Assert.All(
            parts.Where(part => part.Kind != PrintedKind.TubeClip),
            part =>
                Assert.All(
                    part.Joints,
                    joint => Assert.Equal(part.Directions.Count, PrintedJoints.Directions(stand, joint).Count)
                )
        );
    }

    [Fact]
    public void The_sockets_of_a_part_point_where_its_tubes_lie()
    {
        var stand = SchoolStand();
        foreach (var part in PrintedJoints.Of(stand).Where(part => part.Directions.Count > 0))
        {
            var fitting = PrintDesigner.For(
                part.Kind,
                new()
                {
                    Number = part.Number,
                    Sockets = part.Directions,
                    TubeShape = stand.Tube.Shape,
                    TubeOutside = stand.Tube.Outside,
                }
            );

            var ways = fitting.Sockets.Select(socket => fitting.InUse.Turned(socket.Way)).ToArray();
            Assert.Equal(part.Directions.Count, ways.Length);
            Assert.All(part.Directions, way => Assert.Contains(ways, found => (found - way).Length < 1e-9));
            // The axes of all sockets meet in the joint's centre.
            Assert.All(
                fitting.Sockets.Zip(ways),
                pair =>
                    Assert.True(
                        fitting.InUse.Of(pair.First.Floor).Cross(pair.Second).Length < 1e-9
                            || part.Kind == PrintedKind.Foot
                    )
            );
        }
    }

    [Fact]
    public void Turning_a_joint_does_not_change_its_kind() =>
        Gen.Select(Gen.Int[0, PrintGen.Kinds.Length - 1], Gen.Double[0, 6.28], Gen.Double[0, 6.28])
            .Holds(
                (k, first, second) =>
                {
                    var usual = SocketPattern.Usual(PrintGen.Kinds[k]);
                    if (usual.Count > 0)
                    {
                        var turn = new Placement(
                            new(Math.Cos(first), Math.Sin(first), 0),
                            new(-Math.Sin(first), Math.Cos(first), 0),
                            Vector3.Up,
                            default
                        ).After(
                            new(
                                s_x,
                                new(0, Math.Cos(second), Math.Sin(second)),
                                new(0, -Math.Sin(second), Math.Cos(second)),
                                default
                            )
                        );
                        Assert.Equal(PrintGen.Kinds[k], SocketPattern.KindOf([.. usual.Select(turn.Turned)]));
                    }
                },
                iter: 500
            );

    [Fact]
    public void Every_kind_of_joint_can_be_turned_into_any_place_of_the_room()
    {
        var z = new Vector3(0.3, -0.5, 0.8).Unit();
        var turn = Placement.Along(z, s_x, default);
        foreach (var kind in PrintGen.Kinds.Where(kind => SocketPattern.Usual(kind).Count > 0))
        {
            Vector3[] ways = [.. SocketPattern.Usual(kind).Select(turn.Turned)];

            var fitting = PrintDesigner.For(kind, new() { Sockets = ways });

            Assert.True(MeshCheck.Of(Meshes.Of(fitting)).Sound);
            Assert.All(
                ways,
                way =>
                    Assert.Contains(fitting.Sockets, socket => (fitting.InUse.Turned(socket.Way) - way).Length < 1e-9)
            );
        }
    }

    [Fact]
    public void A_joint_with_a_brace_is_sound_and_holds_the_brace_at_its_angle()
    {
        foreach (var degrees in new[] { 30, 37.5, 45, 60 })
        {
            var a = degrees * Math.PI / 180;
            Vector3 brace = new(Math.Cos(a), 0, -Math.Sin(a));
            Vector3[] ways = [s_x, -s_x, brace, new(0, 0, -1)];
            if (SocketPattern.LeastAngle(ways) < (Math.PI / 6) - 1e-9)
            {
                continue;
            }

            var fitting = PrintDesigner.For(PrintedKind.Joint, new() { Sockets = ways, Number = "J1" });

            Assert.True(MeshCheck.Of(Meshes.Of(fitting)).Sound);
            Assert.False(fitting.NeedsSupport);
            Assert.Contains(fitting.Sockets, socket => (fitting.InUse.Turned(socket.Way) - brace).Length < 1e-9);
        }
    }

    [Fact]
    public void A_socket_that_points_up_has_a_drain_hole()
    {
        // Two posts, one up and one down from a rail: the upper one would hold rain.
        var open = PrintDesigner.For(PrintedKind.Tee, new() { Sockets = [s_x, s_y, -s_y] });
        var blind = PrintDesigner.For(PrintedKind.Tee, new() { Sockets = [s_y, Vector3.Up, -Vector3.Up] });

        Assert.True(Meshes.Of(blind).CubicMillimetres < Meshes.Of(open).CubicMillimetres - 20);
    }

    private static StandLayout SchoolStand()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Dripwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        var file = Directory.EnumerateFiles(Path.Combine(folder, "demo", "school"), "*.rig.json").Single();
        var reading = RigReader.Read(File.ReadAllBytes(file), file, PartsCatalogue.Default);
        return Planner.Of(reading.Rig!, [], PartsCatalogue.Default, new PlanOptions { Draws = 0 }).Layout.Stand;
    }
}
