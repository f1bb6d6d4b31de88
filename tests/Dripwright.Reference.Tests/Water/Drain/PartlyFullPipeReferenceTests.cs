using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water.Drain;

public class PartlyFullPipeReferenceTests
{
    [Theory]
    // Hydraulic elements of a round pipe: y/D, A/Af, R/Rf, V/Vf, Q/Qf, A R^(2/3)/D^(8/3), to four places. The
    // elements at 0.3 are those of Fair, Geyer & Okun, Water and Wastewater Engineering, Ex. 14.3; the last column at
    // 0.5, 0.8, 1.0 is in Chow, Open-Channel Hydraulics, 1959 (from memory); the other rows recomputed by hand.
    [InlineData(0.05, 0.0187, 0.1302, 0.2569, 0.0048, 0.0015)]
    [InlineData(0.10, 0.0520, 0.2541, 0.4012, 0.0209, 0.0065)]
    [InlineData(0.20, 0.1424, 0.4824, 0.6151, 0.0876, 0.0273)]
    [InlineData(0.25, 0.1955, 0.5865, 0.7007, 0.1370, 0.0427)]
    [InlineData(0.30, 0.2523, 0.6838, 0.7761, 0.1958, 0.0610)]
    [InlineData(0.40, 0.3735, 0.8569, 0.9022, 0.3370, 0.1050)]
    [InlineData(0.50, 0.5000, 1.0000, 1.0000, 0.5000, 0.1558)]
    [InlineData(0.60, 0.6265, 1.1106, 1.0724, 0.6718, 0.2094)]
    [InlineData(0.70, 0.7477, 1.1849, 1.1198, 0.8372, 0.2610)]
    [InlineData(0.80, 0.8576, 1.2168, 1.1397, 0.9775, 0.3047)]
    [InlineData(0.90, 0.9480, 1.1921, 1.1243, 1.0658, 0.3322)]
    [InlineData(1.00, 1.0000, 1.0000, 1.0000, 1.0000, 0.3117)]
    public void Hydraulic_elements(
        double depthRatio,
        double area,
        double radius,
        double velocity,
        double flow,
        double section
    )
    {
        const double d = 0.0525;
        const double half = 5.1e-5;
        var fullArea = Math.PI * d * d / 4;
        Assert.Equal(area, CircularSection.Area(depthRatio * d, d) / fullArea, half);
        Assert.Equal(radius, CircularSection.HydraulicRadius(depthRatio * d, d) / (d / 4), half);
        var full = PartlyFullPipe.FullFlow(d, 0.02, 0.01);
        var partly = PartlyFullPipe.FlowAtDepth(depthRatio * d, d, 0.02, 0.01);
        Assert.Equal(flow, partly / full, half);
        Assert.Equal(velocity, partly / full / (CircularSection.Area(depthRatio * d, d) / fullArea), half);
        Assert.Equal(section, PartlyFullPipe.FlowAtDepth(depthRatio, 1, 1, 1), half);
    }

    [Fact]
    public void Elements_of_the_sewer_example()
    {
        // Fair, Geyer & Okun, Water and Wastewater Engineering, Ex. 14.3, p. 14-10, as transcribed in a public
        // textbook-companion collection (depth 0.3 inferred from the ratios): full 2.5 ft/s, 0.873 cfs.
        const double tolerance = 0.005;
        var area = CircularSection.Area(0.3, 1) / (Math.PI / 4);
        var radius = CircularSection.HydraulicRadius(0.3, 1) / 0.25;
        var flow = PartlyFullPipe.FlowAtDepth(0.3, 1, 1, 1) / PartlyFullPipe.FullFlow(1, 1, 1);
        Assert.Equal(0.252, area, 0.252 * tolerance);
        Assert.Equal(0.684, radius, 0.684 * tolerance);
        Assert.Equal(0.776, flow / area, 0.776 * tolerance);
        Assert.Equal(0.196, flow, 0.196 * tolerance);
        Assert.Equal(1.94, 2.5 * flow / area, 1.94 * tolerance);
        Assert.Equal(0.171, 0.873 * flow, 0.171 * tolerance);
    }

    [Fact]
    public void Slope_of_the_half_full_sewer()
    {
        // Fair, Geyer & Okun, same collection: D 1.5 m half full carries 0.3 m³/s at n 0.02 with slope 0.0001705.
        const double slope = 0.0001705;
        Assert.Equal(0.3, PartlyFullPipe.FlowAtDepth(0.75, 1.5, slope, 0.02), 0.3 * 0.001);
        Assert.Equal(0.75, PartlyFullPipe.NormalDepth(0.3, 1.5, slope, 0.02)!.Value, 0.75 * 0.001);
    }

    [Fact]
    public void Hydraulic_radius_of_the_two_thirds_full_pipe() =>
        // Crane TP-410 Ex. 7-26: inside diameter 24 in, two thirds full; radius 0.17747 m recomputed from the geometry.
        // The example's flow is worked by Darcy, not Manning, and is no check of this method.
        Assert.Equal(0.17747, CircularSection.HydraulicRadius(2 * 0.6096 / 3, 0.6096), 5e-6);

    [Fact]
    public void Manning_velocity() =>
        // Cengel & Cimbala, open-channel example, as tested in a public fluids library: R 0.2859 m, S 0.005236, n 0.03.
        Assert.Equal(1.0468, PartlyFullPipe.Velocity(0.2859, 0.005236, 0.03), 5e-4);

    [Fact]
    public void Greatest_flow_and_its_depth()
    {
        // The classic 0.938 and 1.076 (to more digits: 0.9382, 1.0757).
        Assert.Equal(0.9382, PartlyFullPipe.DepthOfGreatestFlow(1), 5e-5);
        Assert.Equal(1.0757, PartlyFullPipe.GreatestFlow(1, 1, 1) / PartlyFullPipe.FullFlow(1, 1, 1), 5e-5);
    }

    [Theory]
    // Full-flow capacity of Schedule 40 pipe by Manning, US gal/min, recomputed by hand: D m, slope, n, flow.
    [InlineData(0.0409, 1.0 / 48, 0.010, 14.15)]
    [InlineData(0.0409, 1.0 / 96, 0.009, 11.12)]
    [InlineData(0.0525, 1.0 / 48, 0.010, 27.56)]
    [InlineData(0.0525, 1.0 / 96, 0.011, 17.72)]
    [InlineData(0.0779, 1.0 / 48, 0.009, 87.78)]
    public void Full_capacity(double diameter, double slope, double roughness, double gallonsPerMinute) =>
        Assert.Equal(
            gallonsPerMinute,
            PartlyFullPipe.FullFlow(diameter, slope, roughness) / 6.30902e-5,
            0.003 * gallonsPerMinute
        );
}
