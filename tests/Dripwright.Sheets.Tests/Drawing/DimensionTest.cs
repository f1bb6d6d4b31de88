using CsCheck;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Drawing;

public sealed class DimensionTest
{
    // Pieces from hair-thin to wide: the short ones are what goes wrong.
    private static readonly Gen<double[]> s_pieces = Gen.Double[0.5, 30].Array[1, 14];

    [Fact]
    public void Texts_of_a_chain_never_overlap() =>
        s_pieces.Holds(pieces =>
        {
            var points = Running(pieces);
            string[] texts = [.. pieces.Select((_, i) => i % 3 == 0 ? "7" : "1 ¹¹⁄₁₆ in")];
            AssertApart(DimensionLine.HorizontalChain(points, 90, texts));
            AssertApart(DimensionLine.HorizontalChain(points, 110, texts));
            AssertApart(DimensionLine.VerticalChain([.. points.Select(Upright)], 90, texts));
        });

    [Fact]
    public void Texts_of_running_dimensions_never_overlap() =>
        s_pieces.Holds(pieces =>
        {
            var points = Running(pieces);
            string[] texts = [.. points.Select((_, i) => i == 0 ? "0" : "1234")];
            AssertApart(DimensionLine.HorizontalRunning(points, 90, texts));
            AssertApart(DimensionLine.HorizontalRunning(points, 110, texts, below: true));
            AssertApart(DimensionLine.VerticalRunning([.. points.Select(Upright)], 90, texts));
            AssertApart(DimensionLine.VerticalRunning([.. points.Select(Upright)], 110, texts, right: true));
        });

    [Fact]
    public void Running_texts_stay_in_the_order_of_their_points() =>
        Gen.Double[0, 100]
            .Array[1, 30]
            .Holds(places =>
            {
                var sorted = places.Order().ToList();
                var spread = DimensionLine.Spread(sorted, 4);
                Assert.All(spread.Zip(spread.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 4 - 1e-9));
                Assert.Equal(sorted.Average(), spread.Average(), 1e-9);
            });

    [Fact]
    public void A_text_that_fits_stands_between_the_arrows_and_one_that_does_not_stands_outside()
    {
        var wide = TextBox(DimensionLine.Horizontal(new(50, 50), new(90, 50), 40, "40"));
        Assert.InRange(wide.Centre.X, 69.99, 70.01);
        Assert.True(wide.Bottom < 40.5);
        var narrow = TextBox(DimensionLine.Horizontal(new(50, 50), new(53, 50), 40, "1 ¹¹⁄₁₆ in"));
        Assert.True(narrow.X > 53);
    }

    [Fact]
    public void Plumb_dimensions_read_from_the_right()
    {
        var group = DimensionLine.Vertical(new(50, 90), new(50, 50), 40, "40");
        var text = SheetText.Of([group]).Single();
        Assert.Equal(-90, text.Text.Style.Rotation);
        Assert.True(text.Bounds.Right < 40.8, "the text stands to the left of its line");
        Assert.InRange(text.Bounds.Centre.Y, 69.9, 70.1);
    }

    [Fact]
    public void The_order_of_the_two_points_does_not_matter()
    {
        var (a, b) = (new Point(50, 50), new Point(90, 60));
        Assert.Equal(
            SheetText.Of([DimensionLine.Aligned(a, b, 6, "x")]).Single().Bounds,
            SheetText.Of([DimensionLine.Aligned(b, a, 6, "x")]).Single().Bounds
        );
        Assert.Throws<ArgumentException>(() => DimensionLine.Aligned(a, a, 6, "x"));
        Assert.Throws<ArgumentException>(() => DimensionLine.HorizontalChain([a, b], 6, []));
    }

    private static List<Point> Running(double[] pieces)
    {
        var x = 20.0;
        return [new(x, 100), .. pieces.Select(piece => new Point(x += piece, 100))];
    }

    private static Point Upright(Point point) => new(point.Y, 600 - point.X);

    private static Box TextBox(Group group) => SheetText.Of([group]).Single().Bounds;

    private static void AssertApart(Group group)
    {
        var boxes = SheetText.Of([group]).Select(text => text.Bounds).ToList();
        for (var i = 0; i < boxes.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                Assert.False(boxes[i].Overlaps(boxes[j], 0.01), $"{boxes[i]} overlaps {boxes[j]}");
            }
        }
    }
}
