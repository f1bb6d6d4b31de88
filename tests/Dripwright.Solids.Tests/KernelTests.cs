using Dripwright.Engine.Numerics;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Solids.Tests;

public sealed class KernelTests
{
    [Fact]
    public void A_tube_of_128_sides_has_the_volume_of_its_polygons()
    {
        // n/2 r² sin(2π/n) h for outside 31.4 mm, inside 25.7 mm, 40 mm long.
        var tube = new Extrusion([Inscribed(128, 0.0157), Inscribed(128, 0.01285).Hole()], 0.040);

        Assert.Equal(10220.8358, tube.Volume!.Value * 1e9, 0.0001);
        Assert.Equal(10220.8358, Volume(tube), 0.05);
    }

    [Fact]
    public void Two_crossing_cylinders_share_what_Archimedes_says()
    {
        // 16 r³/3 = 5333.33 for r = 10; as polygons of 256 sides, drawn outside the circle, a little more.
        var upright = new Extrusion(Loop.Around(256, 0.010), 0.040).Shifted(0, 0, -0.020);
        var lying = upright.Placed(new(new(0, 1, 0), Vector3.Up, new(1, 0, 0), default));

        var shared = Volume(upright) + Volume(lying) - Volume(new Union([upright, lying]));

        Assert.Equal(16_000.0 / 3, shared, 1.6);
    }

    [Fact]
    public void A_turned_cone_and_a_tapered_polygon_are_as_large_as_their_formulas_say()
    {
        var lathe = new Lathe(new([new(0.004, 0), new(0.010, 0.002), new(0.006, 0.009), new(0.004, 0.009)]), 48);
        var taper = new Taper(Outlines.CutSquare(0.012, 0.003), 0.4, 0.007);

        Assert.Equal(lathe.Volume!.Value * 1e9, Volume(lathe), 1e-2);
        Assert.Equal(taper.Volume!.Value * 1e9, Volume(taper), 1e-2);
    }

    [Fact]
    public void A_cut_that_leaves_nothing_is_refused()
    {
        var block = new Extrusion(Loop.Rectangle(0, 0, 0.01, 0.01), 0.01);
        var more = new Extrusion(Loop.Rectangle(-0.01, -0.01, 0.02, 0.02), 0.02);

        Assert.Throws<ArgumentException>(() => SolidKernel.Shared.MeshOf(new Difference(block, [more])));
    }

    [Fact]
    public void The_same_description_gives_the_same_mesh_from_any_thread_and_kernel()
    {
        var lathe = new Lathe(new([new(0.004, 0), new(0.010, 0.002), new(0.006, 0.009), new(0.004, 0.009)]), 48);
        var first = SolidKernel.Shared.MeshOf(lathe);
        using var other = new SolidKernel();

        Parallel.For(
            0,
            8,
            i => Assert.Equal(first.Points, (i % 2 == 0 ? other : SolidKernel.Shared).MeshOf(lathe).Points)
        );
    }

    private static double Volume(Solid solid) => SolidKernel.Shared.MeshOf(solid).CubicMillimetres;

    private static Loop Inscribed(int sides, double radius) => Loop.Around(sides, radius * Math.Cos(Math.PI / sides));
}
