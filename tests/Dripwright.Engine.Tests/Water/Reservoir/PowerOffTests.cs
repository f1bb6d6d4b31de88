using CsCheck;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water.Reservoir;

public class PowerOffTests
{
    // One square metre by half a metre: a millimetre is a litre.
    private static readonly PowerOffState s_state = new()
    {
        Reservoir = new BoxVessel(1, 1, 0.5),
        RunningLevel = 0.40,
        OverflowLevel = 0.45,
        PumpInlet = 0.05,
    };

    [Fact]
    public void All_that_comes_back_is_kept_or_spilt() =>
        Gen.Select(Gen.Double[0, 0.05], Gen.Double[0, 0.05], Gen.Double[0, 0.05])
            .Holds(
                (line, film, pots) =>
                {
                    var result = PowerOff.Follow(
                        s_state with
                        {
                            FeedLineReturn = line,
                            DrainFilm = film,
                            PotsOverSill = pots,
                        }
                    );
                    Assert.Equal(line + film + pots, result.LevelAfterReturn - 0.40 + result.Overflow, 1e-12);
                    Assert.True(result.LevelAfterReturn <= 0.45 + 1e-12);
                    Assert.True(result.Overflow == 0 || result.Spare == 0);
                }
            );

    [Fact]
    public void What_does_not_fit_runs_over()
    {
        var result = PowerOff.Follow(s_state with { FeedLineReturn = 0.03, DrainFilm = 0.02, PotsOverSill = 0.01 });
        Assert.Equal(0.01, result.Overflow, 12);
        Assert.Equal(0.45, result.LevelAfterReturn, 12);
        Assert.False(result.SiphonsOut);
    }

    [Theory]
    // Outlet lower than the pump inlet: stops at the inlet. Outlet between: stops at the outlet. Break hole: stops there.
    [InlineData(-1.0, null, 0.05)]
    [InlineData(0.20, null, 0.20)]
    [InlineData(-1.0, 0.35, 0.35)]
    public void A_siphon_draws_down_to_the_highest_that_breaks_it(double outlet, double? hole, double expected)
    {
        var result = PowerOff.Follow(s_state with { LowestOutlet = outlet, SiphonBreak = hole });
        Assert.True(result.SiphonsOut);
        Assert.Equal(expected, result.SiphonLevel, 12);
        Assert.Equal(0.40 - expected, result.SiphonedOut, 12);
    }

    [Fact]
    public void A_shut_line_or_an_outlet_over_the_water_does_not_siphon()
    {
        Assert.False(PowerOff.Follow(s_state with { LowestOutlet = -1, LineIsShut = true }).SiphonsOut);
        var high = PowerOff.Follow(s_state with { LowestOutlet = 0.9 });
        Assert.False(high.SiphonsOut);
        Assert.Equal(0, high.SiphonedOut);
    }

    [Fact]
    public void Days_and_times_follow_the_working_volume()
    {
        var working = ReservoirDays.WorkingVolume(s_state.Reservoir, 0.1, 0.4);
        Assert.Equal(0.3, working, 12);
        // 300 litres, ten plants, three litres a day.
        Assert.Equal(10, ReservoirDays.Days(working, 3, 10), 9);
        Assert.Equal(3000, ReservoirDays.TimeToEmpty(working, 1e-4), 9);
        Assert.Equal(0, ReservoirDays.WorkingVolume(s_state.Reservoir, 0.4, 0.1));
    }
}
