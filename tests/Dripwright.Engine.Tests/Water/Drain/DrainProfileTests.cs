using CsCheck;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water.Drain;

public class DrainProfileTests
{
    private static readonly Gen<DrainRun> s_runs = Gen.Select(
            Gen.Double[0.02, 0.1],
            Gen.Double[0, 0.05],
            Gen.Double[0, 0.013],
            Gen.Double[0, 5e-5].Array[1, 40],
            Gen.Double[0, 0.5]
        )
        .Select(
            (diameter, slope, roughness, flows, tail) =>
                Run(diameter, slope, roughness, flows, tail < 0.25 ? 0 : (tail - 0.25) * 0.3)
        );

    private static DrainRun Run(double diameter, double slope, double roughness, double[] flows, double tail = 0) =>
        new()
        {
            Diameter = diameter,
            Length = 0.3 * (flows.Length + 1),
            Slope = slope,
            Roughness = roughness,
            OutletWaterDepth = tail,
            Inflows = [.. flows.Select((flow, i) => new DrainInflow(0.3 * (i + 1), flow))],
        };

    private static double[] Equal(int count, double flow) => [.. Enumerable.Repeat(flow, count)];

    [Fact]
    public void More_slope_never_deepens_the_drain() =>
        Gen.Select(s_runs, Gen.Double[0, 0.05])
            .Holds(
                (run, more) =>
                {
                    var flat = DrainProfile.Of(run);
                    var steep = DrainProfile.Of(run with { Slope = run.Slope + more });
                    Assert.True(steep.GreatestDepth <= flat.GreatestDepth * (1 + 1e-9));
                    for (var i = 0; i < flat.Points.Count; i++)
                    {
                        Assert.True(steep.Points[i].Depth <= flat.Points[i].Depth * (1 + 1e-9) + 1e-12);
                    }
                }
            );

    [Fact]
    public void More_inflow_never_lowers_the_deepest_point_of_a_freely_falling_drain() =>
        // Not so with a drowned outlet: stronger fast flow can push the standing water out of the pipe.
        Gen.Select(s_runs, Gen.Double[1, 3])
            .Holds(
                (drowned, factor) =>
                {
                    var run = drowned with { OutletWaterDepth = 0 };
                    var more = run with
                    {
                        Inflows = [.. run.Inflows.Select(inflow => inflow with { Flow = inflow.Flow * factor })],
                    };
                    Assert.True(DrainProfile.Of(more).GreatestDepth >= DrainProfile.Of(run).GreatestDepth * (1 - 1e-9));
                }
            );

    [Fact]
    public void Force_is_kept_along_a_level_pipe_without_friction() =>
        Gen.Select(Gen.Double[0.02, 0.1], Gen.Double[1e-7, 5e-5].Array[1, 40])
            .Holds(
                (diameter, flows) =>
                {
                    var profile = DrainProfile.Of(Run(diameter, 0, 0, flows));
                    var forces = profile.Points.Select(point => Force(diameter, point)).ToList();
                    Assert.All(forces, force => Assert.Equal(1, force / forces[^1], 1e-8));
                }
            );

    private static double Force(double diameter, DrainPoint point)
    {
        var area = CircularSection.Area(Math.Min(point.Depth, diameter), diameter);
        var moment =
            point.Depth > diameter
                ? area * (point.Depth - diameter / 2)
                : CircularSection.SurfaceMoment(point.Depth, diameter);
        return moment + point.Flow * point.Flow / (9.80665 * area);
    }

    [Fact]
    public void No_inflow_leaves_the_pipe_dry()
    {
        var profile = DrainProfile.Of(Run(0.05, 0.01, 0.01, [0, 0, 0]));
        Assert.Equal(0, profile.GreatestDepth);
        Assert.Equal(0, profile.StoredVolume);
        Assert.Equal(0, DrainProfile.Of(Run(0.05, 0.01, 0.01, [])).GreatestDepth);
    }

    [Fact]
    public void Standing_water_at_the_outlet_reaches_up_the_pipe_at_one_level()
    {
        var profile = DrainProfile.Of(Run(0.05, 0.01, 0.01, [0, 0, 0], 0.01));
        Assert.Equal(0.01, profile.GreatestDepth, 12);
        // 1.2 m at 1 % rises 12 mm: the upper 0.2 m is dry.
        Assert.Equal(0, profile.Points[0].Depth);
        Assert.All(profile.Points.Where(point => point.Depth > 0), point => Assert.Equal(0.01, point.SurfaceHeight, 9));
    }

    [Fact]
    public void A_long_mild_drain_runs_at_normal_depth_far_from_its_end()
    {
        var run = Run(0.05, 0.001, 0.01, [2e-4]) with { Length = 300 };
        var normal = PartlyFullPipe.NormalDepth(2e-4, 0.05, 0.001, 0.01)!.Value;
        var middle = DrainProfile.Of(run).Points.First(point => point.Distance > 100);
        Assert.Equal(1, middle.Depth / normal, 1e-4);
        Assert.True(middle.Froude < 1);
    }

    [Fact]
    public void A_long_steep_drain_runs_fast_at_normal_depth()
    {
        var run = Run(0.05, 0.03, 0.01, [2e-4]) with { Length = 20 };
        var normal = PartlyFullPipe.NormalDepth(2e-4, 0.05, 0.03, 0.01)!.Value;
        var outlet = DrainProfile.Of(run).Points[^1];
        Assert.Equal(1, outlet.Depth / normal, 1e-4);
        Assert.True(outlet.Froude > 1);
    }

    [Fact]
    public void A_drowned_outlet_makes_a_fast_drain_jump()
    {
        var run = Run(0.05, 0.03, 0.01, [2e-4]) with { Length = 5, OutletWaterDepth = 0.04 };
        var profile = DrainProfile.Of(run);
        var jump = Assert.Single(profile.Jumps);
        Assert.InRange(jump, 3.5, 4.9);
        Assert.Equal(0.04, profile.Points[^1].Depth, 12);
    }

    [Fact]
    public void A_drain_that_is_too_small_runs_full_with_the_pressure_line_of_a_full_pipe()
    {
        var run = Run(0.02, 0, 0.01, [4e-4]) with { Length = 5, OutletWaterDepth = 0.03 };
        var profile = DrainProfile.Of(run);
        Assert.True(profile.RunsFull);
        var area = Math.PI * 0.02 * 0.02 / 4;
        var friction = Math.Pow(0.01 * 4e-4 / (area * Math.Pow(0.005, 2.0 / 3)), 2);
        // 0.3 m to the inflow: friction of a full pipe over the 4.7 m below it.
        var below = profile.Points.Last(point => point.Distance == 0.3);
        Assert.Equal(0.03 + friction * 4.7, below.Depth, 1e-9);
        Assert.Equal(profile.Stations[0].Depth - 0.02, profile.Stations[0].HeightOverPipe, 12);
        Assert.Equal(5, Assert.Single(profile.FullStretches).To, 12);
    }

    [Fact]
    public void Flow_in_is_flow_out() =>
        s_runs.Holds(run => Assert.Equal(run.TotalFlow, DrainProfile.Of(run).Points[^1].Flow, 1e-15));

    [Fact]
    public void Nothing_is_ever_not_a_number() =>
        s_runs.Holds(run =>
        {
            var profile = DrainProfile.Of(run);
            Assert.All(
                profile.Points,
                point =>
                {
                    Assert.True(double.IsFinite(point.Depth) && point.Depth >= 0);
                    Assert.True(double.IsFinite(point.Velocity));
                    Assert.True(point.Froude is null || double.IsFinite(point.Froude.Value));
                }
            );
            Assert.True(double.IsFinite(profile.StoredVolume));
            Assert.Equal(run.Inflows.Count, profile.Stations.Count);
        });

    [Fact]
    public void Twenty_times_finer_steps_change_the_deepest_point_by_less_than_half_a_percent_or_a_hundredth_of_roughness() =>
        s_runs.Holds(
            run =>
            {
                // Places without inflow force more steps and add no water.
                var fine = run with
                {
                    Inflows =
                    [
                        .. run
                            .Inflows.Concat(
                                Enumerable.Range(1, 4000).Select(i => new DrainInflow(run.Length * i / 4001, 0))
                            )
                            .OrderBy(inflow => inflow.Distance),
                    ],
                };
                double Deepest(double rougher) =>
                    DrainProfile.Of(fine with { Roughness = rougher * run.Roughness }).GreatestDepth;
                var depth = DrainProfile.Of(run).GreatestDepth;
                var tolerance = 0.005 * depth;
                if (Math.Abs(Deepest(1) - depth) <= tolerance)
                {
                    return;
                }

                // Where fast water leaves an inflow close to the critical depth, or has just not force enough to pass it, a hair
                // of friction decides how deep it stands: the steps must then count for less than a hundredth of roughness.
                Assert.InRange(depth, Deepest(0.99) - tolerance, Deepest(1.01) + tolerance);
            },
            iter: 20
        );

    [Fact]
    public void A_level_drain_is_deepest_at_its_closed_end() =>
        // As measured on level roof gutters: J. A. Anderson, Hydraulic design of roof drainage gutters, 1994 (abstract).
        s_runs.Holds(run =>
        {
            var profile = DrainProfile.Of(run with { Slope = 0 });
            Assert.Equal(profile.GreatestDepth, profile.Points[0].Depth, 1e-12);
        });

    [Fact]
    public void Inflows_may_share_a_place_and_lie_at_both_ends()
    {
        var run = Run(0.05, 0.01, 0.01, []) with
        {
            Length = 1,
            Inflows = [new(0, 1e-5), new(0, 1e-5), new(0.5, 1e-5), new(0.5, 1e-5), new(1, 1e-5)],
        };
        var profile = DrainProfile.Of(run);
        Assert.Equal(5, profile.Stations.Count);
        Assert.Equal(5e-5, profile.Points[^1].Flow, 1e-18);
    }

    [Fact]
    public void No_drain_however_odd_fails() =>
        // From a hair's breadth to a culvert, from a drop a year to a river, level to one in two.
        Gen.Select(
                Gen.Double[-3, 1],
                Gen.Double[-16, 1],
                Gen.OneOf(Gen.Const(0.0), Gen.Double[-6, -0.31].Select(power => Math.Pow(10, power))),
                Gen.OneOf(Gen.Const(0.0), Gen.Double[-3, -1].Select(power => Math.Pow(10, power))),
                Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 20]),
                Gen.Double[0, 1].Array[1, 30]
            )
            .Holds(
                (logDiameter, logFlow, slope, roughness, tail, parts) =>
                {
                    var run = Run(
                        Math.Pow(10, logDiameter),
                        slope,
                        roughness,
                        Array.ConvertAll(parts, part => part * Math.Pow(10, logFlow)),
                        tail
                    );
                    var profile = DrainProfile.Of(run);
                    Assert.All(profile.Points, point => Assert.True(double.IsFinite(point.Depth + point.Velocity)));
                    Assert.True(double.IsFinite(profile.StoredVolume));
                }
            );

    [Fact]
    public void Five_thousand_pots_are_solved()
    {
        var profile = DrainProfile.Of(Run(0.1, 0.005, 0.01, Equal(5000, 1e-6)));
        Assert.Equal(5000, profile.Stations.Count);
        Assert.InRange(profile.GreatestDepthRatio, 0.3, 5);
    }

    [Fact]
    public void Capacity_brings_the_deepest_place_just_to_the_allowed_ratio()
    {
        var run = Run(0.05, 0, 0.01, Equal(10, 1e-5));
        var growth = DrainCapacity.GrowthTo(run, 0.5);
        var grown = run with
        {
            Inflows = [.. run.Inflows.Select(inflow => inflow with { Flow = inflow.Flow * growth })],
        };
        Assert.Equal(0.5, DrainProfile.Of(grown).GreatestDepthRatio, 1e-4);
        Assert.Equal(0, DrainCapacity.GrowthTo(run with { OutletWaterDepth = 0.04 }, 0.5));
    }

    [Fact]
    public void Misuse_is_refused()
    {
        var run = Run(0.05, 0.01, 0.01, [1e-5]);
        Assert.Throws<ArgumentOutOfRangeException>(() => DrainProfile.Of(run with { Slope = -0.01 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => DrainProfile.Of(run with { Length = 0.1 }));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            DrainProfile.Of(run with { Inflows = [new(0.4, 1), new(0.3, 1)] })
        );
    }
}
