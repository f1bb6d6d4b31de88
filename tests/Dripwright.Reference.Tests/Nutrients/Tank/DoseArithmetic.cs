using Dripwright.Engine.Nutrients.Correcting;

namespace Dripwright.Reference.Tests.Nutrients.Tank;

/// <summary>Worked doses, C1 V1 = C2 V2 (textbook), recomputed; tolerance 0.1 %.</summary>
public class DoseArithmetic
{
    private static readonly StockPair s_stock = new(2.0, 0.01);

    [Fact]
    public void Raising_EC_with_the_added_volume_counted()
    {
        Assert.Equal(100, s_stock.Strength, 1e-9);
        var plan = Plan(1.6, 0.2, 2.0, 0.4, 0.3);
        Assert.Equal(0.408, plan.StockEach * 1000, 0.001 * 0.408);
        Assert.Equal(0, plan.Water);
    }

    [Fact]
    public void Raising_EC_with_the_added_volume_ignored() =>
        Assert.Equal(0.400, s_stock.LabelDose(0.2, 2.0 - 1.6) * 1000, 0.0004);

    [Fact]
    public void Diluting_with_water_that_is_not_clean()
    {
        var plan = Plan(3.0, 0.2, 2.2, 0.4, 0.3);
        Assert.Equal(88.9, plan.Water * 1000, 0.001 * 88.9);
        Assert.Equal(0, plan.Drained);
    }

    [Fact]
    public void Evaporation_alone()
    {
        var left = Blend.Evaporated(0.2, 2.0, 0.03);
        Assert.Equal(2.353, left, 0.001 * 2.353);
        Assert.Equal(2.075, Blend.Mixed(0.17, left, 0.03, 0.5), 0.001 * 2.075);
    }

    [Fact]
    public void Holding_EC()
    {
        // 180 mL with the stock's volume ignored; counted, it replaces a little of the water: 180.7.
        var uptake = new Uptake(0.03, 1.6);
        var each = uptake.StockEachToHold(0.03, 0.4, s_stock);
        Assert.Equal(0.180, each * 1000, 0.005 * 0.180);
        Assert.Equal(0.03 * 1.6, Blend.Mixed(0.03 - (2 * each), 0.4, 2 * each, 100) * 0.03, 1e-12);
    }

    private static TankPlan Plan(double ec, double volume, double want, double water, double capacity) =>
        TankCorrection
            .Plan(new TankReading(ec, 6, volume), new TankTarget(want), s_stock, new MakeUpWater(water), capacity)
            .Value!;
}
