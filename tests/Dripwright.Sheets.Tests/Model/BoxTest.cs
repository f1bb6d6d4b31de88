using CsCheck;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Model;

public sealed class BoxTest
{
    private static readonly Gen<Point> s_points = Gen.Select(
        Gen.Double[-5, 15],
        Gen.Double[-5, 15],
        (x, y) => new Point(x, y)
    );

    [Fact]
    public void A_line_crosses_a_box_when_one_of_its_points_lies_inside() =>
        Gen.Select(s_points, s_points)
            .Holds(
                (a, b) =>
                {
                    var box = new Box(0, 0, 10, 8);
                    var inside = Enumerable.Range(0, 401).Any(i => box.Holds(At(a + ((b - a) * (i / 400.0))), 0));
                    // A corner may be cut between two of the points tried, so only one way holds without exception.
                    Assert.True(!inside || box.Crosses(a, b));
                    // The other way round too, but for lines that only graze an edge.
                    Assert.True(box.Crosses(b, a) || !box.Inset(0.1).Crosses(a, b));
                }
            );

    [Theory]
    [InlineData(-1, 5, 11, 5, true)]
    [InlineData(5, -1, 5, 20, true)]
    [InlineData(-1, 5, -0.5, 5, false)]
    [InlineData(-3, 0.5, 0.5, -3, false)]
    [InlineData(3, 3, 3, 3, true)]
    [InlineData(30, 3, 30, 3, false)]
    public void Known_lines(double x0, double y0, double x1, double y1, bool crosses) =>
        Assert.Equal(crosses, new Box(0, 0, 10, 8).Crosses(new(x0, y0), new(x1, y1)));

    private static Box At(Point p) => new(p.X, p.Y, 0, 0);
}
