using CsCheck;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Drawing;

public sealed class PlotTest
{
    [Fact]
    public void Ticks_are_round_few_rising_and_cover_the_range() =>
        Gen.Select(Gen.Double[-1e4, 1e4], Gen.Double[1e-3, 1e4], Gen.Int[1, 12])
            .Holds(
                (low, width, most) =>
                {
                    var ticks = Ticks.Nice(low, low + width, most);
                    var slack = width * 1e-6;
                    Assert.True(ticks[0] <= low + slack && ticks[^1] >= low + width - slack);
                    Assert.InRange(ticks.Count, 2, most + 2);
                    Assert.All(ticks.Zip(ticks.Skip(1)), pair => Assert.True(pair.First < pair.Second));
                }
            );

    [Theory]
    [InlineData(0, 10, 5, "0 2 4 6 8 10")]
    [InlineData(0.1, 0.3, 4, "0.1 0.15 0.2 0.25 0.3")]
    [InlineData(5, 5, 4, "2 4 6 8")]
    [InlineData(0, 0, 2, "0 0.5 1")]
    public void Ticks_of_known_ranges(double low, double high, int most, string expected) =>
        Assert.Equal(
            expected,
            string.Join(
                ' ',
                Ticks.Nice(low, high, most).Select(t => t.ToString(System.Globalization.CultureInfo.InvariantCulture))
            )
        );

    [Fact]
    public void No_text_leaves_the_box_and_names_of_series_keep_apart()
    {
        var box = new Box(30, 30, 90, 70);
        // Five series that end at the same place.
        var plot = new Plot(new Axis("Flow, L/h"), new Axis("Head, m"))
        {
            Series =
            [
                .. Enumerable.Range(0, 5).Select(i => new Series("series " + new string('i', i), [(0, i), (1, 5)])),
            ],
        };
        var texts = SheetText.Of([plot.Draw(box)]).ToList();
        Assert.All(texts, text => Assert.True(box.Holds(text.Bounds, 0.01), $"{text.Text.Content} {text.Bounds}"));
        var names = texts.Where(t => t.Text.Content.StartsWith("series", StringComparison.Ordinal)).ToList();
        Assert.Equal(5, names.Count);
        Assert.All(names.Zip(names.Skip(1)), pair => Assert.True(pair.Second.Text.At.Y - pair.First.Text.At.Y > 3.5));
    }

    [Fact]
    public void A_plot_without_values_or_with_gaps_can_be_drawn()
    {
        var plot = new Plot(new Axis("x"), new Axis("y"));
        Assert.NotEmpty(plot.Draw(new(0, 0, 80, 60)).Children);
        var gaps = plot with { Series = [new("gaps", [(0, 1), (1, double.NaN), (2, 3), (3, 4)])] };
        Assert.NotEmpty(gaps.Draw(new(0, 0, 80, 60)).Children);
        Assert.Throws<ArgumentOutOfRangeException>(() => plot.Draw(new(0, 0, 20, 20)));
    }
}
