using CsCheck;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

public class SpreadTests
{
    private static double Flow(int emitter, double head) => head > 0 ? 1e-6 * Math.Sqrt(head) : 0;

    [Fact]
    public void Shares_add_up_to_one() =>
        Gen.Select(Gen.Double[2, 4].Array[5], Gen.Double[0, 1].Array[5], Gen.Double[0.001, 0.2])
            .Holds(
                (heads, heights, variation) =>
                {
                    var shares = Spread.SplitByHead(heads, heights, Flow, variation);
                    Assert.Equal(1, shares.Pressure + shares.Height + shares.Manufacture + shares.Rest, 1e-12);
                }
            );

    [Fact]
    public void A_flat_row_with_equal_pressure_varies_by_manufacture_only()
    {
        var shares = Spread.SplitByHead([3, 3, 3], [0, 0, 0], Flow, 0.05);
        Assert.Equal(1, shares.Manufacture, 12);
        Assert.Equal(0.05, shares.CoefficientOfVariation, 12);
    }

    [Fact]
    public void A_row_without_loss_varies_by_height_only()
    {
        // Total head 4 m everywhere, outlets at different heights.
        var shares = Spread.SplitByHead([4, 3.5, 3], [0, 0.5, 1], Flow, 0);
        Assert.Equal(1, shares.Height, 12);
        Assert.Equal(0, shares.Pressure, 12);
    }

    [Fact]
    public void A_level_row_with_loss_varies_by_pressure_only()
    {
        var shares = Spread.SplitByHead([4, 3.5, 3.2], [1, 1, 1], Flow, 0);
        Assert.Equal(1, shares.Pressure, 12);
        Assert.Equal(0, shares.Height, 12);
    }

    [Fact]
    public void Height_that_makes_up_for_lost_pressure_leaves_no_spread()
    {
        var shares = Spread.SplitByHead([3, 3, 3], [1, 0.8, 0.6], Flow, 0);
        Assert.Equal(new SpreadShares(0, 0, 0, 0, 0), shares);
    }
}
