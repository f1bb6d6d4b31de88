using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water.Reservoir;

public class ReservoirReferenceTests
{
    private const double GallonPerMinute = 6.30902e-5;
    private const double Inch = 0.0254;
    private const double Gallon = 3.785411784e-3;

    [Theory]
    // ANSI/HI 9.8 in US form, S(in) = D + 0.574 Q/D^1.5 (gpm, in), from memory; worked by hand. gpm, D in, S in.
    [InlineData(1000, 12, 25.81, 0.02)]
    [InlineData(10, 1.5, 4.62, 0.006)]
    [InlineData(8, 2, 3.62, 0.006)]
    public void Submergence(double gallonsPerMinute, double inches, double expectedInches, double tolerance) =>
        Assert.Equal(
            expectedInches,
            PumpInlet.LeastSubmergence(gallonsPerMinute * GallonPerMinute, inches * Inch) / Inch,
            tolerance
        );

    [Theory]
    // Volume per length, L/m, π D²/4 worked by hand. Inside diameters: poly tube 0.520, 0.600 and 0.620 in.
    [InlineData(0.520, 0.1370)]
    [InlineData(0.600, 0.1824)]
    [InlineData(0.620, 0.1948)]
    public void Volume_of_a_metre_of_line(double inches, double litresPerMetre) =>
        Assert.Equal(litresPerMetre, 1000 * PowerOff.PipeVolume(inches * Inch, 1), 5.1e-5);

    [Fact]
    public void Drain_back_of_a_small_row() =>
        // 30 ft of 3/4 in Schedule 40 (0.3440 L/m, 0.824 in) and 40 ft of 0.600 in line: 1.419 US gal, worked by hand.
        Assert.Equal(
            1.419,
            (PowerOff.PipeVolume(0.824 * Inch, 30 * 0.3048) + PowerOff.PipeVolume(0.6 * Inch, 40 * 0.3048)) / Gallon,
            1e-3
        );

    [Fact]
    public void Spout_of_a_siphon_breaking_hole() =>
        // Cd a √(2 g h) with Cd 0.6, 3 mm, 1 m: 1.13 L/min, worked by hand.
        Assert.Equal(1.13, PowerOff.BreakHoleFlow(0.003, 1) * 60_000, 0.005);
}
