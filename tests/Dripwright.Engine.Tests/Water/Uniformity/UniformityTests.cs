using CsCheck;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

public class UniformityTests
{
    private static readonly Gen<double[]> s_flows = Gen.Double[0.1, 10].Array[6, 60];

    [Fact]
    public void Equal_flows_are_perfectly_even()
    {
        double[] flows = [2, 2, 2, 2, 2, 2, 2];
        Assert.Equal(1, Uniformity.OfLowQuarter(flows), 12);
        Assert.Equal(1, Uniformity.Christiansen(flows), 12);
        Assert.Equal(1, Uniformity.Statistical(flows), 12);
        Assert.Equal(1, Uniformity.ByFillTimes(flows), 12);
    }

    [Fact]
    public void No_measure_changes_with_the_unit_of_flow() =>
        Gen.Select(s_flows, Gen.Double[1e-9, 1e3])
            .Holds(
                (flows, factor) =>
                {
                    var scaled = Array.ConvertAll(flows, flow => flow * factor);
                    Assert.Equal(Uniformity.OfLowQuarter(flows), Uniformity.OfLowQuarter(scaled), 1e-9);
                    Assert.Equal(Uniformity.Christiansen(flows), Uniformity.Christiansen(scaled), 1e-9);
                    Assert.Equal(Uniformity.Statistical(flows), Uniformity.Statistical(scaled), 1e-9);
                    Assert.Equal(Uniformity.ByFillTimes(flows), Uniformity.ByFillTimes(scaled), 1e-9);
                }
            );

    [Fact]
    public void Low_quarter_lies_between_least_over_mean_and_one() =>
        s_flows.Holds(flows =>
            Assert.InRange(Uniformity.OfLowQuarter(flows), flows.Min() / flows.Average() - 1e-12, 1 + 1e-12)
        );

    [Fact]
    public void Low_quarter_does_not_change_when_every_reading_is_taken_four_times() =>
        s_flows.Holds(flows =>
            Assert.Equal(
                // Four copies make every quarter whole, so the rule for broken quarters must agree with the plain one.
                flows.SelectMany(flow => new[] { flow, flow, flow, flow }).Order().Take(flows.Length).Average()
                    / flows.Average(),
                Uniformity.OfLowQuarter(flows),
                1e-9
            )
        );

    [Fact]
    public void Fewer_than_four_readings_take_the_lowest() => Assert.Equal(0.5, Uniformity.OfLowQuarter([1, 3]), 12);

    [Theory]
    [InlineData(0.905, UniformityClass.Excellent)]
    [InlineData(0.9049, UniformityClass.Good)]
    [InlineData(0.78, UniformityClass.Good)]
    [InlineData(0.7799, UniformityClass.Fair)]
    [InlineData(0.6499, UniformityClass.Poor)]
    [InlineData(0.5299, UniformityClass.Unacceptable)]
    [InlineData(-3, UniformityClass.Unacceptable)]
    public void Low_quarter_classes_break_in_the_middle_of_the_gaps(double uniformity, UniformityClass expected) =>
        Assert.Equal(expected, UniformityClasses.OfLowQuarter(uniformity));

    [Theory]
    [InlineData(0.925, UniformityClass.Excellent)]
    [InlineData(0.9249, UniformityClass.Good)]
    [InlineData(0.8249, UniformityClass.Fair)]
    [InlineData(0.7249, UniformityClass.Poor)]
    [InlineData(0.6249, UniformityClass.Unacceptable)]
    public void Statistical_classes_break_in_the_middle_of_the_gaps(double uniformity, UniformityClass expected) =>
        Assert.Equal(expected, UniformityClasses.OfStatistical(uniformity));

    [Theory]
    [InlineData(0.049, ManufactureClass.Excellent)]
    [InlineData(0.05, ManufactureClass.Average)]
    [InlineData(0.08, ManufactureClass.Marginal)]
    [InlineData(0.12, ManufactureClass.Poor)]
    [InlineData(0.16, ManufactureClass.Unacceptable)]
    public void Emitters_are_classed_by_the_makers_coefficient(double variation, ManufactureClass expected) =>
        Assert.Equal(expected, UniformityClasses.OfEmitters(variation));

    [Fact]
    public void Christiansen_is_classed_like_the_low_quarter_of_a_normal_law() =>
        Gen.Double[0.5, 1]
            .Holds(coefficient =>
                Assert.Equal(
                    UniformityClasses.OfLowQuarter(1 - 1.5930955 * (1 - coefficient)),
                    UniformityClasses.OfChristiansen(coefficient)
                )
            );

    [Fact]
    public void A_report_takes_one_emitter_and_equal_emitters() =>
        Gen.Select(Gen.Double[1e-9, 1e-3], Gen.Int[1, 50], Gen.Double[0, 0.3], Gen.Int[1, 4])
            .Holds(
                (flow, count, variation, perPlant) =>
                {
                    var row = RowUniformity.Of([.. Enumerable.Repeat(flow, count)], variation, perPlant);
                    Assert.Equal(UniformityClass.Excellent, row.LowQuarterClass);
                    Assert.Equal(1 - 1.27 * variation / Math.Sqrt(perPlant), row.DesignEmission, 1e-9);
                    Assert.Equal(count == 1, row.Statistical is null);
                }
            );

    [Fact]
    public void Misuse_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Uniformity.OfLowQuarter([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uniformity.OfLowQuarter([0, 0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uniformity.Christiansen([1, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uniformity.Statistical([1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uniformity.OfDesign(0.05, 0, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => UniformityClasses.OfLowQuarter(double.NaN));
    }
}
