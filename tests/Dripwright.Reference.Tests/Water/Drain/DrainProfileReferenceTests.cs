using System.Runtime.InteropServices;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water.Drain;

public class DrainProfileReferenceTests
{
    private const double GallonPerMinute = 6.30902e-5;

    [Theory]
    // Level frictionless rectangular side channel, uniform inflow, critical at its free end:
    // (x/L)² = (y/yc) [1.5 - 0.5 (y/yc)²]. Novak et al., Hydraulic Structures, ch. 4, eqs 4.25-4.29 (scan of a textbook
    // whose content matches). The scan's text has lost the root sign (it reads x/L = ...): with Q = q x, kept
    // force reads q²x²/(g y) + y²/2 = 3/2 yc², which is quadratic in x. So the values below are those of (x/L)².
    [InlineData(1.0, 1.000)]
    [InlineData(1.2, 0.936)]
    [InlineData(1.4, 0.728)]
    [InlineData(1.5, 0.5625)]
    [InlineData(1.6, 0.352)]
    [InlineData(1.7, 0.0935)]
    public void Level_rectangular_side_channel(double depthOverCritical, double placeSquared)
    {
        const int count = 2000;
        const double length = 10;
        const double flow = 0.02;
        var section = new OpenBox(0.3);
        var inflows = Enumerable
            .Range(0, count)
            .Select(i => new DrainInflow((i + 0.5) * length / count, flow / count))
            .ToList();
        var line = WaterSurface.Solve(section, 0, 0, length, inflows, 0);
        var critical = section.CriticalDepth(flow);
        var node = Array.FindIndex(line.Depths, 1, depth => depth <= depthOverCritical * critical * (1 + 1e-9));
        // Printed to three places, and one pot's spacing (twice, by the square).
        Assert.Equal(placeSquared, Math.Pow(line.Nodes[node].Distance / length, 2), 0.0005 + 2.0 / count);
    }

    [Fact]
    public void Closed_end_of_the_level_rectangular_channel_stands_at_root_three()
    {
        var section = new OpenBox(0.3);
        var line = WaterSurface.Solve(section, 0, 0, 10, [new DrainInflow(2, 0.004), new DrainInflow(7, 0.016)], 0);
        Assert.Equal(Math.Sqrt(3), line.Depths[0] / section.CriticalDepth(0.02), 1e-9);
    }

    [Theory]
    // Level frictionless round pipe, same law (force is kept): flow gpm, critical depth mm, closed-end depth mm.
    // Recomputed by hand from Q²/g = A³/T and M(y0) = M(yc) + Q²/(g A); 2 in Schedule 40, 52.5 mm.
    [InlineData(0.0525, 1, 9.15, 13.74)]
    [InlineData(0.0525, 2, 13.03, 19.73)]
    [InlineData(0.0525, 4, 18.64, 28.61)]
    [InlineData(0.0525, 6, 23.02, 35.84)]
    public void Level_round_pipe(double diameter, double gallonsPerMinute, double criticalMm, double closedEndMm)
    {
        var flow = gallonsPerMinute * GallonPerMinute;
        Assert.Equal(criticalMm / 1000, PartlyFullPipe.CriticalDepth(flow, diameter), 0.005 * criticalMm / 1000);
        Assert.Equal(closedEndMm / 1000, ClosedEnd(diameter, flow), 0.005 * closedEndMm / 1000);
    }

    [Theory]
    // The same for 1-1/2 in, 40.9 mm: depth ratio at the closed end; six gallons a minute just fill it.
    [InlineData(1, 0.362)]
    [InlineData(2, 0.525)]
    [InlineData(4, 0.774)]
    [InlineData(6, 0.993)]
    public void Level_round_pipe_smaller(double gallonsPerMinute, double ratio) =>
        Assert.Equal(ratio, ClosedEnd(0.0409, gallonsPerMinute * GallonPerMinute) / 0.0409, 0.005 * ratio);

    [Fact]
    public void Theory_exceeds_the_roof_gutter_code_for_a_half_round_gutter()
    {
        // EN 12056-3, level short half-round gutter with free outfall: 2.78e-5 A^1.25 L/s, A in mm² (from memory).
        // Theory, closed end just full (depth half of D): 3.469e-5 A^1.25. 100 mm: 0.864 against 1.079 L/s.
        const double diameter = 0.1;
        var code = 2.78e-5 * Math.Pow(Math.PI * 100 * 100 / 8, 1.25) / 1000;
        Assert.Equal(0.864e-3, code, 1e-6);
        var growth = DrainCapacity.GrowthTo(Level(diameter, code), 0.5);
        Assert.Equal(1.079e-3, growth * code, 0.005 * 1.079e-3);
        Assert.True(growth > 1);
    }

    private static double ClosedEnd(double diameter, double flow) =>
        DrainProfile.Of(Level(diameter, flow)).GreatestDepth;

    private static DrainRun Level(double diameter, double flow) =>
        new()
        {
            Diameter = diameter,
            Length = 3,
            Slope = 0,
            Roughness = 0,
            Inflows = [.. Enumerable.Range(0, 10).Select(i => new DrainInflow(0.15 + 0.3 * i, flow / 10))],
        };

    [StructLayout(LayoutKind.Auto)]
    private readonly struct OpenBox(double width) : IFlowSection
    {
        public double Height => double.PositiveInfinity;

        public SectionGeometry At(double depth) => new(width * depth, width + 2 * depth, width);

        public double SurfaceMoment(double depth) => width * depth * depth / 2;

        public double CriticalDepth(double flow) => Math.Cbrt(flow / width * (flow / width) / 9.80665);

        public double Conveyance(in SectionGeometry geometry, double depth) =>
            geometry.Area * Math.Cbrt(Math.Pow(geometry.Area / geometry.Perimeter, 2));
    }
}
