using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Drawing;

public sealed class ViewTest
{
    [Theory]
    [InlineData(2.4, 0.9, Units.Metric, 20)]
    [InlineData(0.15, 0.1, Units.Metric, 1)]
    [InlineData(2.4, 0.9, Units.UnitedStates, 16)]
    [InlineData(6.5, 1.0, Units.Metric, 50)]
    public void The_largest_standard_scale_that_fits_is_taken(double width, double height, Units units, double expected)
    {
        var view = View.Fit(new Extent(0, 0, width, height), new(20, 10, 160, 120), Scale.Of(units));
        Assert.Equal(expected, view.Scale.Denominator);
    }

    [Fact]
    public void The_view_stands_in_the_middle_of_its_box_and_up_is_up()
    {
        var box = new Box(20, 10, 160, 120);
        var view = View.Fit(new Extent(1, 1, 3, 2), box, Scale.Metric);
        Assert.Equal(box.Centre, view[2, 1.5]);
        Assert.True(view[2, 2].Y < view[2, 1].Y);
        Assert.Equal(50, view.Length(1), 1e-9);
    }

    [Fact]
    public void What_fits_at_no_scale_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            View.Fit(new Extent(0, 0, 1000, 1), new(0, 0, 100, 100), Scale.Metric)
        );
}
