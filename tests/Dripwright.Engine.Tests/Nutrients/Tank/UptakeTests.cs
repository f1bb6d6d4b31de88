using CsCheck;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;

namespace Dripwright.Engine.Tests.Nutrients.Tank;

public class UptakeTests
{
    private static readonly StockPair s_stock = new(2.0, 0.01);

    [Fact]
    public void What_was_taken_is_found_again_from_two_readings() =>
        Gen.Select(
                Gen.Double[0.1, 0.3],
                Gen.Double[1, 3],
                Gen.Double[0.005, 0.03],
                Gen.Double[0.2, 3],
                Gen.Double[0, 0.03]
            )
            .Holds(
                (volume, ec, water, strength, filled) =>
                {
                    var left = volume - water + filled;
                    var reads = ((volume * ec) - (water * strength) + (filled * 0.4)) / left;
                    var uptake = Uptake
                        .Between(
                            new TankReading(ec, 6, volume),
                            new TankReading(reads, 6, left),
                            [new Poured(filled, 0.4)],
                            1
                        )
                        .Value!;
                    Assert.Equal(water, uptake.Volume, 1e-9);
                    Assert.Equal(strength, uptake.DecisiemensPerMetre, 1e-6);
                }
            );

    [Fact]
    public void Topping_up_by_the_uptake_holds_the_tank() =>
        Gen.Select(Gen.Double[0.01, 0.05], Gen.Double[0.4, 3])
            .Holds(
                (water, strength) =>
                {
                    var each = new Uptake(water, strength).StockEachToHold(water, 0.4, s_stock);
                    var back = ((water - (2 * each)) * 0.4) + (2 * each * s_stock.Strength);
                    Assert.Equal(water * strength, back, 1e-9);
                }
            );

    [Theory]
    [InlineData(0.3, TopUpStrength.Water)]
    [InlineData(1.2, TopUpStrength.Half)]
    [InlineData(1.9, TopUpStrength.Full)]
    [InlineData(2.6, TopUpStrength.Full)]
    public void The_nearest_of_water_half_and_full(double uptake, TopUpStrength expected) =>
        Assert.Equal(expected, new Uptake(0.03, uptake).Nearest(0.4, 2.0));

    [Fact]
    public void Evaporation_alone_is_an_uptake_of_nought()
    {
        var uptake = Uptake.Between(new TankReading(2, 6, 0.2), new TankReading(2.353, 6, 0.17), [], 0.3).Value!;
        Assert.Equal(0, uptake.DecisiemensPerMetre, 0.01);
    }

    [Fact]
    public void Salt_from_nowhere_and_water_from_nowhere_are_explained()
    {
        var salt = Uptake.Between(new TankReading(2, 6, 0.2), new TankReading(3, 6, 0.19), [], 0.3);
        var water = Uptake.Between(new TankReading(2, 6, 0.2), new TankReading(2, 6, 0.21), [], 0.3);
        Assert.Contains("salt cannot come", salt.Refusals[0].What.Told(), StringComparison.Ordinal);
        Assert.Contains("rain or a filling", water.Refusals[0].What.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void Renewal_brings_sodium_to_its_limit_and_not_below() =>
        Gen.Select(Gen.Double[8.5, 20], Gen.Double[0, 3])
            .Holds(
                (sodium, refill) =>
                {
                    var tank = Composition.Of((Constituent.Sodium, sodium), (Constituent.Chloride, 5));
                    var renewal = Renewal
                        .Below(
                            tank,
                            Composition.Of((Constituent.Sodium, refill)),
                            new Dictionary<Constituent, double>
                            {
                                [Constituent.Sodium] = 8,
                                [Constituent.Chloride] = 10,
                            }
                        )
                        .Value!;
                    Assert.Equal(8, renewal.After[Constituent.Sodium], 1e-9);
                    Assert.Equal(Constituent.Sodium, renewal.Because);
                }
            );

    [Fact]
    public void A_refill_over_the_limit_is_refused()
    {
        var brackish = Composition.Of((Constituent.Sodium, 12));
        var renewal = Renewal.Below(
            brackish * 2,
            brackish,
            new Dictionary<Constituent, double> { [Constituent.Sodium] = 8 }
        );
        Assert.False(renewal.Found);
        Assert.Contains("sodium", renewal.Refusals[0].What.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void Renewal_brings_every_ion_within_its_tolerance_and_one_just_so()
    {
        var wanted = Composition.Of((Constituent.Potassium, 6), (Constituent.Calcium, 4));
        var drifted = Composition.Of((Constituent.Potassium, 2), (Constituent.Calcium, 7));
        var renewal = Renewal.Balanced(drifted, wanted, 0.2);
        Assert.Equal(Constituent.Calcium, renewal.Because);
        Assert.Equal(4.8, renewal.After[Constituent.Calcium], 1e-9);
        Assert.InRange(renewal.After[Constituent.Potassium], 4.8, 7.2);
        Assert.Equal(0, Renewal.Balanced(wanted, wanted).Share);
    }
}
