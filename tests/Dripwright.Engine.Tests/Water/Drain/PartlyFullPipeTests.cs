using CsCheck;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water.Drain;

public class PartlyFullPipeTests
{
    private static readonly Gen<double> s_diameter = Gen.Double[0.01, 1];

    [Fact]
    public void Depth_of_area_is_the_inverse_of_area() =>
        Gen.Select(Gen.Double[1e-6, 1], s_diameter)
            .Holds(
                (ratio, diameter) =>
                    Assert.Equal(
                        ratio,
                        CircularSection.DepthOfArea(CircularSection.Area(ratio * diameter, diameter), diameter)
                            / diameter,
                        1e-8
                    )
            );

    [Fact]
    public void Area_grows_with_depth_by_the_width_and_moment_by_the_area() =>
        Gen.Select(Gen.Double[0.01, 0.99], s_diameter)
            .Holds(
                (ratio, diameter) =>
                {
                    var y = ratio * diameter;
                    var step = 1e-5 * Math.Min(ratio, 1 - ratio) * diameter;
                    var width =
                        (CircularSection.Area(y + step, diameter) - CircularSection.Area(y - step, diameter))
                        / (2 * step);
                    Assert.Equal(1, width / CircularSection.TopWidth(y, diameter), 1e-5);
                    var area =
                        (
                            CircularSection.SurfaceMoment(y + step, diameter)
                            - CircularSection.SurfaceMoment(y - step, diameter)
                        ) / (2 * step);
                    Assert.Equal(1, area / CircularSection.Area(y, diameter), 1e-5);
                }
            );

    [Fact]
    public void Series_for_small_depth_joins_the_closed_form()
    {
        // Either side of where each switches (wetted angles 0.05 and 0.04).
        foreach (var angle in new[] { 0.04, 0.05 })
        {
            var y = Math.Pow(Math.Sin(angle / 4), 2);
            Assert.Equal(1, CircularSection.Area(y * (1 + 1e-9), 1) / CircularSection.Area(y * (1 - 1e-9), 1), 1e-8);
            Assert.Equal(
                1,
                CircularSection.SurfaceMoment(y * (1 + 1e-9), 1) / CircularSection.SurfaceMoment(y * (1 - 1e-9), 1),
                1e-6
            );
        }
    }

    [Fact]
    public void Full_and_dry_are_exact()
    {
        Assert.Equal(Math.PI / 4, CircularSection.Area(1, 1), 14);
        Assert.Equal(Math.PI / 8, CircularSection.SurfaceMoment(1, 1), 14);
        Assert.Equal(0, CircularSection.HydraulicRadius(0, 1));
        Assert.Equal(0, CircularSection.Area(0, 1));
        Assert.Equal(0, PartlyFullPipe.CriticalDepth(0, 1));
    }

    [Fact]
    public void Normal_depth_carries_the_flow() =>
        Gen.Select(Gen.Double[0.001, 0.93], s_diameter, Gen.Double[0.0005, 0.2])
            .Holds(
                (ratio, diameter, slope) =>
                {
                    var flow = PartlyFullPipe.FlowAtDepth(ratio * diameter, diameter, slope, 0.01);
                    Assert.Equal(
                        ratio,
                        PartlyFullPipe.NormalDepth(flow, diameter, slope, 0.01)!.Value / diameter,
                        1e-7
                    );
                }
            );

    [Fact]
    public void Critical_depth_has_froude_one() =>
        Gen.Select(Gen.Double[-14, 1], s_diameter)
            .Holds(
                (logFlow, diameter) =>
                {
                    var flow = Math.Pow(10, logFlow) * Math.Pow(diameter, 2.5);
                    var y = PartlyFullPipe.CriticalDepth(flow, diameter);
                    Assert.InRange(y, 0, diameter);
                    if (y < 0.999 * diameter)
                    {
                        var area = CircularSection.Area(y, diameter);
                        var froude = flow / area / Math.Sqrt(9.80665 * area / CircularSection.TopWidth(y, diameter));
                        Assert.Equal(1, froude, 1e-6);
                    }
                }
            );

    [Fact]
    public void A_flow_over_the_greatest_has_no_normal_depth()
    {
        Assert.Null(
            PartlyFullPipe.NormalDepth(1.001 * PartlyFullPipe.GreatestFlow(0.05, 0.01, 0.01), 0.05, 0.01, 0.01)
        );
        Assert.Null(PartlyFullPipe.NormalDepth(1e-6, 0.05, 0, 0.01));
    }

    [Fact]
    public void Misuse_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CircularSection.Area(1.1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CircularSection.HydraulicRadius(0, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PartlyFullPipe.CriticalDepth(double.NaN, 1));
    }
}
