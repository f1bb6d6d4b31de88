using Dripwright.Engine.Physics;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Stands.Loads;

namespace Dripwright.Reference.Tests.Stands;

/// <summary>Loads and statics of tipping and floors.</summary>
public sealed class PublishedLoads
{
    // A maker's grow-bag data as copied on a public page: 18 L, dry 2.05 kg, drained for an hour 11.603 kg.
    [Fact]
    public void A_drained_coir_bag_weighs_what_its_maker_says() =>
        Assert.Equal(11.603, WetSubstrate.Mass(0.018, WetSubstrate.Drained), 0.0005);

    // Noguera et al. 2003 as summarised in the Minnesota Stormwater Manual: dry 0.041 to 0.122 g/cm³, water held 165 to
    // 855 mL/L.
    [Fact]
    public void Soaked_coir_is_no_lighter_than_the_heaviest_published() =>
        Assert.InRange(WetSubstrate.Soaked, 122 + 855, 1.03 * (122 + 855));

    // International Residential Code, table R301.5: 40, 30 and 20 lb/ft²; 1 lb/ft² = 47.880259 Pa.
    [Theory]
    [InlineData(FloorLoad.LivingRoom, 40)]
    [InlineData(FloorLoad.SleepingRoom, 30)]
    [InlineData(FloorLoad.Attic, 20)]
    public void Floors_bear_what_the_residential_code_says(double pascals, double poundsPerSquareFoot) =>
        Assert.Equal(poundsPerSquareFoot, pascals / 47.880259, 1e-6);

    // Statics of a rigid body; the expected values are those of the formulas worked by hand.
    [Fact]
    public void A_full_reservoir_on_two_feet_square()
    {
        var mass = 35 * 3.785411784e-3 * 998.2;

        var load = FloorLoad.InLivingRoom("reservoir", mass, Math.Pow(24 * 0.0254, 2));

        Assert.Equal(291.6, load.Mass / 0.45359237, 0.05);
        Assert.Equal(72.9, load.Pressure / 47.880259, 0.05);
        Assert.True(load.Utilisation > 1);
    }

    [Fact]
    public void A_body_tips_at_its_static_angle() =>
        Assert.Equal(18.435, TipOver.StaticAngle(0.4, 0.6) * 180 / Math.PI, 0.0005);

    // Six pots of 19 L at 0.9 kg/L and 10 kg of stand, 0.4 m wide, 100 N at 1.8 m.
    [Fact]
    public void Safety_against_tipping_by_hand()
    {
        var weight = ((6 * 19 * 0.9) + 10) * StandardGravity.Value;

        var check = TipOver.Worst(
            [(new(0, 0, -weight), new(0, 0.2, 0.6)), (new(0, 100, 0), new(0, 0.2, 1.8))],
            0,
            0.4,
            0
        );

        Assert.Equal(220.85, check.Restoring, 0.05);
        Assert.Equal(1.227, check.Factor!.Value, 0.0005);
        Assert.False(check.ToFront);
        Assert.Equal(10.9, TipOver.TippingForce(10 * StandardGravity.Value, 0.4, 1.8), 0.05);
    }
}
