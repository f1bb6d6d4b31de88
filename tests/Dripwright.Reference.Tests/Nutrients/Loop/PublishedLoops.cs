using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Loop;

namespace Dripwright.Reference.Tests.Nutrients.Loop;

/// <summary>Build-up in a closed loop (textbook algebra), and limits.</summary>
public class PublishedLoops
{
    // Textbook algebra of one well-mixed volume, recomputed: 200 L, 40 L a day, water of 1.5 mmol/L; tolerance 0.1 %.
    [Theory]
    [InlineData(10, 4.5)]
    [InlineData(20, 7.5)]
    [InlineData(40, 13.5)]
    public void Sodium_that_nobody_takes_rises_in_a_straight_line(double days, double expected) =>
        Assert.Equal(expected, Sodium(1.5, 1.5, 0, 0, days), 0.001 * expected);

    [Theory]
    [InlineData(10, 3.947)]
    [InlineData(20, 5.951)]
    [InlineData(40, 8.934)]
    [InlineData(1e4, 15)]
    public void Sodium_taken_in_proportion_levels_off(double days, double expected) =>
        Assert.Equal(expected, Sodium(1.5, 1.5, 0.1, 0, days), 0.001 * expected);

    // (c - u)/(C - c) of what the plants drink.
    [Theory]
    [InlineData(1.5, 0, 8, 0.2308)]
    [InlineData(2.0, 0.4, 8, 0.2667)]
    public void Bleed_holds_a_limit(double water, double uptake, double held, double bleed)
    {
        var end = Sodium(water, water, 0, bleed, 1e4, uptake);
        Assert.Equal(held, end, 0.001 * held);
    }

    // D. Savvas et al., Eur. J. Hort. Sci., 2005: it stops rising once uptake over water equals the water's own.
    [Fact]
    public void Sodium_in_closed_cucumber_levels_off_where_uptake_equals_the_water() =>
        Assert.Equal(5.0, 0.3 * Sodium(1, 5, 0.3, 0, 1e4), 0.001 * 5);

    [Theory]
    [InlineData("tomato", 8, 15.0)]
    [InlineData("sweet-pepper", 6, 10.0)]
    public void Sodium_limits(string crop, double classic, double newer)
    {
        // Growers' association and trade press (glastuinbouwnederland.nl, onderglas.nl).
        Assert.Equal(classic, SodiumLimit.Of(PartsCatalogue.Default.Crops[crop]).Classic);
        Assert.Equal(newer, SodiumLimit.Of(PartsCatalogue.Default.Crops[crop]).Newer);
    }

    [Fact]
    public void Sodium_limit_of_cucumber() =>
        // A horticultural laboratory's table of 2016 on sodium in irrigation water.
        Assert.Equal(6, SodiumLimit.Of(PartsCatalogue.Default.Crops["cucumber"]).Classic);

    /// <summary>[mol/m³] Sodium in the pots of a loop of 200 L that takes 40 L a day and goes round so fast that it is one volume.</summary>
    private static double Sodium(
        double start,
        double water,
        double proportion,
        double bleedPerUptake,
        double days,
        double uptake = 0
    )
    {
        Composition Of(double amount) => Composition.Of((Constituent.Sodium, amount));
        var end = LoopDay.Run(
            new LoopSystem(0.15, 0.05, 400),
            new LoopState(Of(start), Of(start)),
            new LoopUptake(1, 0.04, Of(uptake), Of(proportion)),
            Of(water),
            bleedPerUptake * 0.04,
            days
        );
        Assert.Equal(end.State.Reservoir[Constituent.Sodium], end.State.Pots[Constituent.Sodium], 0.001 * water);
        return end.State.Pots[Constituent.Sodium];
    }
}
