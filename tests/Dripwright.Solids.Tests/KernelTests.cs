using Dripwright.Engine.Fittings.Shapes;

namespace Dripwright.Solids.Tests;

public sealed class KernelTests
{
    [Fact]
    public void A_tube_of_128_sides_has_the_published_polygon_volume()
    {
        var tube = new Extrusion([Inscribed(128, 0.0157), Inscribed(128, 0.01285).Hole()], 0.040);

        var mesh = SolidKernel.Shared.MeshOf(tube);

        Assert.Equal(10220.8358, tube.Volume!.Value * 1e9, 3);
        Assert.Equal(10220.8358, mesh.CubicMillimetres, 0.1);
    }

    private static Loop Inscribed(int sides, double radius) => Loop.Around(sides, radius * Math.Cos(Math.PI / sides));
}
