using CsCheck;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water.Drain;

public class PotDrainTests
{
    private static readonly DrainedPot s_pot = new()
    {
        Shape = new BoxVessel(0.25, 0.30, 0.25),
        SillHeight = 0.05,
        Bore = 0.0158,
    };

    [Fact]
    public void Head_is_the_inverse_of_flow() =>
        Gen.Select(Gen.Double[1e-8, 1e-3], Gen.Double[0.008, 0.05], Gen.Double[0, 0.08])
            .Holds(
                (flow, bore, behind) =>
                {
                    var head = PotOutlet.HeadFor(flow, bore, behind);
                    Assert.True(head > behind);
                    Assert.Equal(1, PotOutlet.Flow(head, bore, behind) / flow, 1e-4);
                }
            );

    [Fact]
    public void Flow_grows_with_head_and_bore_and_falls_with_water_behind() =>
        Gen.Select(Gen.Double[0.001, 0.2], Gen.Double[0.008, 0.05], Gen.Double[0, 1])
            .Holds(
                (head, bore, part) =>
                {
                    var flow = PotOutlet.Flow(head, bore);
                    Assert.True(PotOutlet.Flow(head * 1.01, bore) > flow);
                    Assert.True(PotOutlet.Flow(head, bore * 1.01) > flow);
                    Assert.True(PotOutlet.Flow(head, bore, part * head) <= flow * (1 + 1e-4));
                }
            );

    [Fact]
    public void Deep_water_turns_the_weir_into_an_orifice()
    {
        const double bore = 0.016;
        var orifice = 0.6 * Math.PI * bore * bore / 4 * Math.Sqrt(2 * 9.80665 * (0.3 - bore / 2));
        Assert.Equal(1, PotOutlet.Flow(0.3, bore) / orifice, 1e-4);
    }

    [Fact]
    public void A_just_covered_outlet_passes_what_strips_of_it_would()
    {
        // Plain sum over thin strips, as a check of the quadrature.
        const double d = 0.02;
        foreach (var (head, behind) in new[] { (0.02, 0.0), (0.01, 0.0), (0.025, 0.008), (0.05, 0.03) })
        {
            const int strips = 400_000;
            var sum = 0.0;
            for (var i = 0; i < strips; i++)
            {
                var z = (i + 0.5) * d / strips;
                sum += z < head ? Math.Sqrt(head - Math.Max(z, behind)) * 2 * Math.Sqrt(z * (d - z)) * d / strips : 0;
            }

            Assert.Equal(1, PotOutlet.Flow(head, d, behind) / (0.6 * Math.Sqrt(2 * 9.80665) * sum), 1e-4);
        }
    }

    [Fact]
    public void Emptying_a_deep_tank_agrees_with_the_closed_form()
    {
        // Floor outlet far under water all the time: the closed form's case.
        var tank = new DrainedPot
        {
            Shape = new BoxVessel(1, 1, 2),
            SillHeight = 0,
            Bore = 0.02,
        };
        var closed = PotOutlet.TimeByOrifice(1, Math.PI * 0.02 * 0.02 / 4, 2 - 0.01, 0.5 - 0.01);
        Assert.Equal(1, PotDrain.TimeToDrain(tank, 2, 0.5)!.Value / closed, 1e-4);
    }

    [Fact]
    public void Longer_falls_and_more_inflow_take_longer()
    {
        var plain = PotDrain.TimeToDrain(s_pot, 0.20)!.Value;
        Assert.True(PotDrain.TimeToDrain(s_pot, 0.25)!.Value > plain);
        var trickle = PotOutlet.Flow(PotDrain.RestHead, s_pot.Bore) / 2;
        Assert.True(PotDrain.TimeToDrain(s_pot, 0.20, inflow: trickle)!.Value > plain);
        Assert.Null(PotDrain.TimeToDrain(s_pot, 0.20, inflow: 1e-5));
        Assert.Equal(0, PotDrain.TimeToDrain(s_pot, 0.05));
    }

    [Fact]
    public void A_fall_in_two_parts_takes_as_long_as_in_one()
    {
        var whole = PotDrain.TimeToDrain(s_pot, 0.25, 0.002)!.Value;
        var parts = PotDrain.TimeToDrain(s_pot, 0.25, 0.05)!.Value + PotDrain.TimeToDrain(s_pot, 0.10, 0.002)!.Value;
        Assert.Equal(1, parts / whole, 1e-5);
    }

    [Fact]
    public void Grains_take_room_and_time_in_proportion()
    {
        var grains = s_pot with { FreeFraction = 0.4 };
        Assert.Equal(0.4 * PotDrain.TimeToDrain(s_pot, 0.2)!.Value, PotDrain.TimeToDrain(grains, 0.2)!.Value, 1e-6);
        Assert.Equal(0.4 * 0.25 * 0.30 * 0.05, PotDrain.Running(grains, 0).StandingVolume, 1e-12);
    }

    [Fact]
    public void A_pot_without_inflow_stands_at_its_sill()
    {
        var water = PotDrain.Running(s_pot, 0);
        Assert.Equal(0.05, water.Level, 12);
        Assert.Equal(0, water.VolumeOverSill, 12);
        Assert.False(water.PondsBack);
    }

    [Fact]
    public void Water_in_the_drain_over_the_sill_stands_in_the_pot()
    {
        var water = PotDrain.Running(s_pot, 1e-6, 0.12);
        Assert.True(water.PondsBack);
        Assert.True(water.Level > 0.12);
        Assert.False(water.Floods);
        Assert.True(PotDrain.Running(s_pot, 1e-6, 0.30).Floods);
        Assert.False(PotDrain.Running(s_pot, 1e-6, 0.04).PondsBack);
    }

    [Fact]
    public void A_stuck_drain_spills_when_the_room_is_filled()
    {
        Assert.Equal(0.25 * 0.30 * 0.20 / 1e-6, PotDrain.TimeToSpill(s_pot, 0.05, 1e-6)!.Value, 1e-6);
        Assert.Null(PotDrain.TimeToSpill(s_pot, 0.05, 0));
    }
}
