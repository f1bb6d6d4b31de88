using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water.Drain;

public class BlockedDrainTests
{
    private static readonly DrainRun s_run = new()
    {
        Diameter = 0.05,
        Length = 3,
        Slope = 0.01,
        Inflows = [],
    };

    // Pots at one height on a level stand: sill 0.20, rim 0.40 over the outlet's invert, five litres between.
    private static BlockedPot Pot(double distance, double? joint = null, double rim = 0.40) =>
        new(distance, 1e-6, 0.20, rim, 0.005, joint);

    [Fact]
    public void Sealed_joints_fill_pipe_and_pots_to_the_rim()
    {
        var result = BlockedDrain.Follow(s_run, [Pot(0.5), Pot(1.5), Pot(2.5)], 3);
        var pipe = Math.PI * 0.05 * 0.05 / 4 * 3;
        Assert.Equal(2, result.Pot);
        Assert.Equal(0.40, result.SpillHeight);
        Assert.Equal(pipe + 0.015, result.HeldVolume, 1e-9);
        Assert.Equal((pipe + 0.015) / 3e-6, result.Time!.Value, 1e-3);
        Assert.Equal([0, 1, 2], result.PondedPots);
    }

    [Fact]
    public void The_lowest_rim_spills_first()
    {
        var result = BlockedDrain.Follow(s_run, [Pot(0.5), Pot(1.5, rim: 0.35), Pot(2.5)], 3);
        Assert.Equal(1, result.Pot);
        Assert.Equal(0.35, result.SpillHeight);
    }

    [Fact]
    public void Open_joints_leak_at_the_pipe_nearest_the_blockage_and_far_sooner()
    {
        // Joints sit on top of the pipe, so on a sloping pipe the lowest one is the lowest along it.
        var pots = new[] { 0.5, 1.5, 2.5 }.Select(at => Pot(at, 0.05 + 0.01 * (3 - at))).ToList();
        var open = BlockedDrain.Follow(s_run, pots, 3);
        Assert.Equal(2, open.Pot);
        Assert.Empty(open.PondedPots);
        Assert.True(open.Time < BlockedDrain.Follow(s_run, [Pot(0.5), Pot(1.5), Pot(2.5)], 3).Time);
    }

    [Fact]
    public void Pots_below_the_blockage_do_not_count()
    {
        var result = BlockedDrain.Follow(s_run, [Pot(0.5), Pot(1.5), Pot(2.5)], 1);
        Assert.Equal(0, result.Pot);
        Assert.Equal(result.HeldVolume / 1e-6, result.Time!.Value, 1e-6);
        Assert.Null(BlockedDrain.Follow(s_run, [Pot(2.5)], 1).SpillHeight);
    }

    [Fact]
    public void A_low_vent_spills_before_any_pot()
    {
        var result = BlockedDrain.Follow(s_run, [Pot(0.5)], 3, ventHeight: 0.15);
        Assert.True(result.AtVent);
        Assert.Null(result.Pot);
        Assert.Equal(0.15, result.SpillHeight);
    }

    [Fact]
    public void Water_already_there_shortens_the_time()
    {
        var empty = BlockedDrain.Follow(s_run, [Pot(0.5)], 3);
        var wet = BlockedDrain.Follow(s_run, [Pot(0.5)], 3, waterAlready: 0.001);
        Assert.Equal(1000, empty.Time!.Value - wet.Time!.Value, 1e-6);
    }
}
