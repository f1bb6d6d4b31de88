using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Loop;

namespace Dripwright.Reference.Tests.Nutrients.Loop;

/// <summary>Build-up in a closed loop (textbook algebra), limits, and salt response.</summary>
public class PublishedLoops
{
    [Theory]
    [InlineData(10, 4.5)]
    [InlineData(20, 7.5)]
    [InlineData(40, 13.5)]
    public void Sodium_that_nobody_takes_rises_in_a_straight_line(double day, double expected) =>
        // 200 L, 40 L a day, water of 1.5 mmol/L: recomputed, tolerance 0.1 %.
        Assert.Equal(expected, LoopBalance.Constant(1.5, 1.5, 0, day * 40 / 200), 0.001 * expected);

    [Theory]
    [InlineData(10, 3.947)]
    [InlineData(20, 5.951)]
    [InlineData(40, 8.934)]
    [InlineData(1e4, 15)]
    public void Sodium_taken_in_proportion_levels_off(double day, double expected) =>
        Assert.Equal(expected, LoopBalance.Proportional(1.5, 1.5, 0.1, day * 40 / 200), 0.001 * expected);

    [Theory]
    [InlineData(10, 3.947)]
    [InlineData(20, 5.951)]
    [InlineData(40, 8.934)]
    public void The_loop_of_two_pools_gives_the_same_when_the_feed_goes_round_fast(double days, double expected)
    {
        var system = new LoopSystem(0.15, 0.05, 400);
        Composition sodium = Composition.Of((Constituent.Sodium, 1.5));
        LoopStep end = LoopDay.Run(
            system,
            new LoopState(sodium, sodium),
            new LoopUptake(1, 0.04, Composition.Nothing, Composition.Of((Constituent.Sodium, 0.1))),
            sodium,
            0,
            days
        );
        Assert.Equal(expected, end.State.Reservoir[Constituent.Sodium], 0.001 * expected);
        Assert.Equal(expected, end.State.Pots[Constituent.Sodium], 0.001 * expected);
    }

    [Theory]
    [InlineData(1.5, 0, 8, 0.2308, 0.1875)]
    [InlineData(2.0, 0.4, 8, 0.2667, 0.2105)]
    public void Bleed_that_holds_a_limit(double water, double uptake, double held, double bleed, double leaching)
    {
        double ratio = LoopBalance.BleedPerUptake(water, uptake, held);
        Assert.Equal(bleed, ratio, 0.001 * bleed);
        Assert.Equal(leaching, LoopBalance.LeachingFraction(ratio), 0.001 * leaching);
    }

    [Fact]
    public void Sodium_in_closed_cucumber_levels_off_where_uptake_equals_the_water() =>
        // Savvas et al. 2005, Eur. J. Hort. Sci.: it stops rising once uptake over water equals the water's own.
        Assert.Equal(5.0, 0.3 * LoopBalance.Proportional(1, 5, 0.3, 1e4), 1e-9);

    [Fact]
    public void Refill_from_tissue_and_water_use() =>
        // Langenfeld et al. 2022, Sustainability 14, 10204: 3 g/L; 40 mg/g of nitrogen as an example.
        Assert.Equal(120, LoopBalance.RefillMilligramsPerLitre(40, 3), 1e-9);

    [Theory]
    [InlineData(LoopCrop.Tomato, 3, 95.0)]
    [InlineData(LoopCrop.Tomato, 4, 85.2)]
    [InlineData(LoopCrop.Tomato, 5, 75.2)]
    [InlineData(LoopCrop.Tomato, 6, 65.3)]
    [InlineData(LoopCrop.Cucumber, 3, 93.5)]
    [InlineData(LoopCrop.Cucumber, 4, 80.5)]
    [InlineData(LoopCrop.Cucumber, 5, 67.5)]
    [InlineData(LoopCrop.Cucumber, 6, 54.5)]
    [InlineData(LoopCrop.SweetPepper, 3, 79.0)]
    [InlineData(LoopCrop.SweetPepper, 4, 65.0)]
    [InlineData(LoopCrop.SweetPepper, 5, 51.0)]
    [InlineData(LoopCrop.SweetPepper, 6, 37.0)]
    public void Yield_against_soil_salinity(LoopCrop crop, double ec, double percent) =>
        // Maas 1990 (USDA table); equation FAO. Tolerance 0.1.
        Assert.Equal(percent, SaltResponse.RelativeYieldPercent(crop, ec), 0.1);

    [Theory]
    [InlineData(LoopCrop.Tomato, 7.55)]
    [InlineData(LoopCrop.Cucumber, 6.35)]
    [InlineData(LoopCrop.SweetPepper, 5.07)]
    public void Half_the_yield(LoopCrop crop, double ec) =>
        Assert.Equal(ec, SaltResponse.HalfYieldDecisiemensPerMetre(crop), 0.01);

    [Theory]
    [InlineData(LoopCrop.Tomato, 8, 15.0)]
    [InlineData(LoopCrop.SweetPepper, 6, 10.0)]
    public void Sodium_limits(LoopCrop crop, double classic, double newer)
    {
        // Growers' association and trade press (glastuinbouwnederland.nl, onderglas.nl).
        Assert.Equal(classic, SodiumLimit.Of(crop).Classic);
        Assert.Equal(newer, SodiumLimit.Of(crop).Newer);
    }

    [Fact]
    public void Sodium_limit_of_cucumber() =>
        // A horticultural laboratory's table of 2016 on sodium in irrigation water.
        Assert.Equal(6, SodiumLimit.Of(LoopCrop.Cucumber).Classic);
}
