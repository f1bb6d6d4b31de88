using System.Globalization;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Units;

public sealed class QuantityWordsTests
{
    private static readonly QuantityWords s_us = new(UnitSystem.Us);
    private static readonly QuantityWords s_metric = new(UnitSystem.Metric);

    [Fact]
    public void Numbers_are_told_as_short_as_they_go()
    {
        Assert.Equal("1 to 4, 7, 8, 12", PlanWords.Numbers([12, 3, 1, 2, 4, 7, 8, 8]));
        Assert.Equal("", PlanWords.Numbers([]));
    }

    [Fact]
    public void A_shift_is_never_told_smaller_than_it_must_be()
    {
        Assert.Equal("1/16 in", s_us.Shift(0.0254 / 16));
        Assert.Equal("1/8 in", s_us.Shift((0.0254 / 16) + 1e-6));
        Assert.Equal("4 mm", s_metric.Shift(3.01e-3));
    }

    [Fact]
    public void Head_is_never_told_in_sixteenths_and_a_drill_only_where_it_is_one()
    {
        Assert.Equal("10.9 ft", s_us.Head(3.33));
        Assert.Equal("3.33 m", s_metric.Head(3.33));
        Assert.Equal("3/16 in", s_us.Size(0.1875 * 0.0254));
        Assert.Equal("0.165 in", s_us.Size(0.165 * 0.0254));
        Assert.Equal("4.2 mm", s_metric.Size(4.2e-3));
    }

    [Fact]
    public void Nothing_is_ever_minus_zero()
    {
        Assert.Equal("0", QuantityWords.Number(-0.001));
        Assert.Equal("0 %", QuantityWords.Percent(-1e-9));
    }

    [Fact]
    public void Words_are_the_same_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("1.5 m/s", s_metric.Velocity(1.5));
            Assert.Equal("9.5 %", QuantityWords.Percent(0.095));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
