using System.Globalization;
using System.Numerics;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Solids.Tests;

public sealed class PrintMeshTests
{
    public static TheoryData<PrintedKind, TubeShape> KindsAndShapes =>
        new(
            from kind in PrintGen.Kinds
            from shape in new[] { TubeShape.Round, TubeShape.Square }
            select new TheoryDataRow<PrintedKind, TubeShape>(kind, shape)
        );

    [Theory]
    [MemberData(nameof(KindsAndShapes))]
    public void A_fitting_of_common_measures_is_a_sound_solid(PrintedKind kind, TubeShape shape) =>
        Judge(PrintDesigner.For(kind, new() { TubeShape = shape, Number = "A12" }));

    [Theory]
    [MemberData(nameof(KindsAndShapes))]
    public void A_heavily_loaded_fitting_is_a_sound_solid(PrintedKind kind, TubeShape shape) =>
        Judge(PrintDesigner.For(kind, new() { TubeShape = shape, Load = new(25, 300) }));

    [Fact]
    public void Any_fitting_that_can_be_made_is_a_sound_solid() => Sample(60, 30, Judge);

    [Fact]
    public void No_part_takes_more_plastic_than_the_parts_list_counts_with() =>
        Sample(
            60,
            25,
            fitting =>
            {
                var mesh = Meshes.Of(fitting).CubicMillimetres * 1e-9;
                Assert.InRange(fitting.Shape.MostVolume, mesh * (1 - 1e-4), double.MaxValue);
                // Where a formula is known, the bound is no guess.
                Assert.True(fitting.Volume is not { } exact || Math.Abs(fitting.Shape.MostVolume - exact) < 1e-12);
                // A joint's bound is not so far off that a second spool is bought for nothing.
                Assert.True(fitting.Sockets.Count == 0 || fitting.Shape.MostVolume < 1.4 * mesh);
            }
        );

    [Theory]
    [MemberData(nameof(KindsAndShapes))]
    public void A_tube_goes_into_each_socket_with_the_clearance_asked_for(PrintedKind kind, TubeShape shape)
    {
        foreach (var clearance in new[] { -0.00005, 0.0001, 0.00035 })
        {
            var fitting = PrintDesigner.For(kind, new() { TubeShape = shape, Clearance = clearance });
            var mesh = Meshes.Of(fitting);
            foreach (var socket in fitting.Sockets)
            {
                var gap = NearestWall(mesh, socket) - (fitting.Parameters.TubeOutside * 500);
                var asked = kind == PrintedKind.Coupon ? (socket.Half * 1000) - 12.7 : clearance * 1000;
                Assert.Equal(asked, gap, 0.002);
            }
        }
    }

    [Fact]
    public void The_coupon_offers_five_gaps_from_a_tenth_to_half_a_millimetre()
    {
        var coupon = PrintDesigner.For(PrintedKind.Coupon, new());

        Assert.Equal([0.1, 0.2, 0.3, 0.4, 0.5], coupon.Sockets.Select(s => Math.Round((s.Half * 1000) - 12.7, 6)));
    }

    [Theory]
    [MemberData(nameof(KindsAndShapes))]
    public void The_piece_number_stands_out_of_the_part(PrintedKind kind, TubeShape shape)
    {
        var bare = PrintDesigner.For(kind, new() { TubeShape = shape });
        var lettered = PrintDesigner.For(kind, new() { TubeShape = shape, Number = "W12" });

        var grown = Meshes.Of(lettered).CubicMillimetres - Meshes.Of(bare).CubicMillimetres;

        // Three letters, strokes over half a millimetre wide and half a millimetre high.
        Assert.InRange(grown, 3, 60);
        Assert.Equal(Letters(lettered.Shape) * 1e9, grown, 0.02);
    }

    [Theory]
    [MemberData(nameof(KindsAndShapes))]
    public void What_hangs_over_by_more_than_45_degrees_is_a_bridge_as_short_as_stated(
        PrintedKind kind,
        TubeShape shape
    )
    {
        foreach (var moment in new[] { 2.0, 25.0 })
        {
            var fitting = PrintDesigner.For(
                kind,
                new()
                {
                    TubeShape = shape,
                    Number = "W1",
                    Load = new(moment, 300),
                }
            );

            // Letters stand out by half a millimetre, a hole to let water out is 4 mm wide.
            var allowed = Math.Max(fitting.LongestBridge * 1000, 4.2) + 0.05;
            Assert.False(fitting.NeedsSupport);
            Assert.All(Overhangs.Of(Meshes.Of(fitting)), span => Assert.InRange(span, 0, allowed));
        }
    }

    /// <summary>What the letters add: the last union of the description.</summary>
    private static double Letters(Solid solid) =>
        solid switch
        {
            Moved moved => Letters(moved.Part),
            Union { Parts: [_, Moved { Part: Extrusion letters }] } union => letters.Volume!.Value
                - union.Shared!.Value,
            _ => 0,
        };

    // A law would be empty if most draws were refused: more than so many must be made.
    private static void Sample(int draws, int leastMade, Action<PrintDesign> judge)
    {
        var made = 0;
        PrintGen
            .Parameters.Select(Gen.Int[0, PrintGen.Kinds.Length - 1].Select(i => PrintGen.Kinds[i]))
            .Holds(
                (parameters, kind) =>
                {
                    if (PrintDesigner.Check(kind, parameters).Count == 0)
                    {
                        Interlocked.Increment(ref made);
                        judge(PrintDesigner.For(kind, parameters));
                    }
                },
                iter: draws
            );
        Assert.True(made > leastMade, made.ToString(CultureInfo.InvariantCulture));
    }

    private static void Judge(PrintDesign fitting)
    {
        var mesh = SolidKernel.Shared.MeshOf(fitting.Shape);
        var check = MeshCheck.Of(mesh);
        Assert.True(check.Sound, $"{fitting.Kind} {check} {fitting.Parameters}");
        if (fitting.Volume is { } volume)
        {
            Assert.InRange(mesh.CubicMillimetres / (volume * 1e9), 1 - 1e-5, 1 + 1e-5);
        }

        Assert.Equal(0, mesh.Low.Z, 0.001);
        var size = fitting.Box.Size;
        Assert.Equal(size.X * 1000, mesh.High.X - mesh.Low.X, 0.003);
        Assert.Equal(size.Y * 1000, mesh.High.Y - mesh.Low.Y, 0.003);
        Assert.Equal(size.Z * 1000, mesh.High.Z - mesh.Low.Z, 0.003);
    }

    /// <summary>[mm] From the axis of a socket to its nearest wall, between floor and flare.</summary>
    private static double NearestWall(SolidMesh mesh, Socket socket)
    {
        var axis = new Vector3((float)socket.Way.X, (float)socket.Way.Y, (float)socket.Way.Z);
        var floor = 1000 * new Vector3((float)socket.Floor.X, (float)socket.Floor.Y, (float)socket.Floor.Z);
        var nearest = double.MaxValue;
        foreach (var t in mesh.Triangles)
        {
            Vector3[] corners = [At(mesh, t.A) - floor, At(mesh, t.B) - floor, At(mesh, t.C) - floor];
            var normal = Vector3.Normalize(Vector3.Cross(corners[1] - corners[0], corners[2] - corners[0]));
            double high = corners.Max(c => Vector3.Dot(c, axis));
            double low = corners.Min(c => Vector3.Dot(c, axis));
            var middle = (corners[0] + corners[1] + corners[2]) / 3;
            double off = (middle - (Vector3.Dot(middle, axis) * axis)).Length();
            var wall = Math.Abs(Vector3.Dot(normal, axis)) < 1e-3 && high > 2.5 && low < (socket.Depth * 1000) - 1;
            if (wall && off < (socket.Half * 1000 * 1.45))
            {
                // Walls of a bore look at its axis.
                double distance = -Vector3.Dot(normal, corners[0]);
                nearest = distance > 0 ? Math.Min(nearest, distance) : nearest;
            }
        }

        return nearest;
    }

    private static Vector3 At(SolidMesh mesh, int i) => new(mesh.Points[i].X, mesh.Points[i].Y, mesh.Points[i].Z);
}
