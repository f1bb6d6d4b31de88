using CsCheck;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

public class FrictionLawTests
{
    private static readonly Gen<double> s_roughness = Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 0.05]);

    [Fact]
    public void Head_loss_never_falls_as_flow_grows() =>
        Gen.Select(s_roughness, Gen.Double[0, 20], Gen.Double[1e-6, 0.5])
            .Holds(
                (roughness, logRe, part) =>
                {
                    var curve = new FrictionCurve(roughness);
                    var re = Math.Exp(logRe);
                    Assert.True(curve.At(re).Slope > 0);
                    Assert.True(curve.At(re * (1 + part)).Value > curve.At(re).Value);
                },
                iter: 20_000
            );

    [Fact]
    public void The_stated_slope_is_the_slope() =>
        Gen.Select(s_roughness, Gen.Double[0, 16])
            .Holds(
                (roughness, logRe) =>
                {
                    var curve = new FrictionCurve(roughness);
                    var re = Math.Exp(logRe);
                    var step = re * 1e-5;
                    var secant = (curve.At(re + step).Value - curve.At(re - step).Value) / (2 * step);
                    Assert.Equal(secant, curve.At(re).Slope, 1e-3 * secant);
                },
                iter: 10_000
            );

    [Theory]
    [InlineData(Friction.LaminarLimit)]
    [InlineData(Friction.TurbulentLimit)]
    public void Factor_and_slope_have_no_jump_where_the_regimes_meet(double re)
    {
        foreach (var roughness in new[] { 0, 1e-4, 0.01, 0.05 })
        {
            var curve = new FrictionCurve(roughness);
            var (below, slopeBelow) = curve.At(re * (1 - 1e-12));
            var (above, slopeAbove) = curve.At(re * (1 + 1e-12));
            Assert.Equal(below, above, 1e-10 * above);
            Assert.Equal(slopeBelow, slopeAbove, 1e-8 * slopeAbove);
        }
    }

    [Fact]
    public void Loss_backward_is_loss_forward_turned_round() =>
        Gen.Double[0, 1e-2]
            .Holds(flow =>
            {
                var law = new PipeLaw(new Pipe(3, 0.02, 1e-5, 4), 1e-6);
                Assert.Equal(law.At(flow).Head, -law.At(-flow).Head);
                Assert.Equal(law.At(flow).Slope, law.At(-flow).Slope);
            });

    [Fact]
    public void Still_water_loses_nothing_and_its_slope_is_the_laminar_one()
    {
        var loss = new PipeLaw(new Pipe(3, 0.02, 0, 4), 1e-6).At(0);
        Assert.Equal(0, loss.Head);
        // Hagen-Poiseuille: h = 128 ν L Q / (π g D⁴).
        var expected = 128 * 1e-6 * 3 / (Math.PI * StandardGravity.Value * Math.Pow(0.02, 4));
        Assert.Equal(expected, loss.Slope, 1e-9 * expected);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-0.01)]
    [InlineData(60.01)]
    public void Water_outside_its_range_is_refused(double celsius)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterProperties.Density(celsius));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterProperties.KinematicViscosity(celsius));
    }

    [Theory]
    [InlineData(0, 0.02, 0, 0, true)]
    [InlineData(-1, 0.02, 0, 0, false)]
    [InlineData(1, 0, 0, 0, false)]
    [InlineData(1, 0.02, 0.002, 0, false)]
    [InlineData(1, 0.02, 0, -1, false)]
    [InlineData(double.NaN, 0.02, 0, 0, false)]
    public void Impossible_pipes_are_refused(double length, double bore, double roughness, double k, bool possible)
    {
        PipeLaw Make() => new(new Pipe(length, bore, roughness, k), 1e-6);
        if (possible)
        {
            Assert.True(double.IsFinite(Make().At(1e-4).Head));
        }
        else
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Make());
        }
    }
}
