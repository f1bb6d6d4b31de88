using CsCheck;
using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Tests.Water.Reservoir;

public class VesselTests
{
    private static readonly Gen<double> s_size = Gen.Double[0.05, 2];

    private static readonly Gen<VesselShape> s_shapes = Gen.OneOf<VesselShape>(
        Gen.Select(s_size, s_size, s_size, s_size, s_size)
            .Select((a, b, c, d, h) => (VesselShape)new BoxVessel(a, b, c, d, h)),
        Gen.Select(s_size, s_size, s_size).Select((a, b, h) => (VesselShape)new RoundVessel(a, b, h)),
        Gen.Select(s_size, s_size).Select((d, l) => (VesselShape)new LyingDrum(d, l))
    );

    [Fact]
    public void Level_is_the_inverse_of_volume() =>
        Gen.Select(s_shapes, Gen.Double[0, 1])
            .Holds(
                (shape, part) =>
                {
                    var level = part * shape.Height;
                    Assert.Equal(level, shape.LevelOf(shape.VolumeAt(level)), 1e-8 * shape.Height);
                }
            );

    [Fact]
    public void Volume_grows_with_level_by_the_surface() =>
        Gen.Select(s_shapes, Gen.Double[0.05, 0.95])
            .Holds(
                (shape, part) =>
                {
                    var level = part * shape.Height;
                    var step = 1e-5 * shape.Height;
                    var slope = (shape.VolumeAt(level + step) - shape.VolumeAt(level - step)) / (2 * step);
                    Assert.Equal(1, slope / shape.SurfaceAt(level), 1e-6);
                }
            );

    [Fact]
    public void Known_solids()
    {
        Assert.Equal(0.06, new BoxVessel(0.3, 0.4, 0.5).Capacity, 12);
        // Frustum of a square pyramid, floor 1, brim 2, height 3: h/3 (a² + ab + b²) = 7.
        Assert.Equal(7, new BoxVessel(1, 1, 2, 2, 3).Capacity, 12);
        // Cone frustum, diameters 1 and 2: π h/12 (d² + dD + D²) = 7π/4 for h = 3.
        Assert.Equal(7 * Math.PI / 4, new RoundVessel(1, 2, 3).Capacity, 12);
        Assert.Equal(Math.PI / 8, new LyingDrum(1, 1).VolumeAt(0.5), 12);
        Assert.Equal(Math.PI / 4, new RoundVessel(1, 1).Capacity, 12);
    }

    [Fact]
    public void Misuse_is_refused()
    {
        var box = new BoxVessel(1, 1, 1);
        Assert.Throws<ArgumentOutOfRangeException>(() => box.VolumeAt(1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => box.LevelOf(1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RoundVessel(0, 1));
    }
}
