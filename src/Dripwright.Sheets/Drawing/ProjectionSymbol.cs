using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>Which way neighbouring views are laid out.</summary>
public enum Projection
{
    /// <summary>The view from above lies below (Europe).</summary>
    FirstAngle,

    /// <summary>The view from above lies above (United States).</summary>
    ThirdAngle,
}

/// <summary>The symbol of the projection (ISO 5456, from memory): a cut cone and its end view.</summary>
public static class ProjectionSymbol
{
    /// <summary>The symbol, 13 mm wide and 6 mm high.</summary>
    /// <param name="centre">Its middle.</param>
    /// <param name="projection">Which.</param>
    public static Group Draw(Point centre, Projection projection)
    {
        var side = projection == Projection.FirstAngle ? 1 : -1;
        var rings = centre.Move(side * 3.5, 0);
        var cone = centre.Move(-side * 3, 0);
        // The rings are the cone seen from the left, so its narrow end points left in both; only the place of the view
        // differs.
        return new([
            new Circle(rings, 2.5, Pen.Thin),
            new Circle(rings, 1.25, Pen.Thin),
            Polyline.Polygon(
                [cone.Move(-3, -1.25), cone.Move(3, -2.5), cone.Move(3, 2.5), cone.Move(-3, 1.25)],
                Pen.Thin
            ),
            new Line(rings.Move(-3, 0), rings.Move(3, 0), Pen.Explain),
            new Line(rings.Move(0, -3), rings.Move(0, 3), Pen.Explain),
            new Line(cone.Move(-3.5, 0), cone.Move(3.5, 0), Pen.Explain),
        ])
        {
            Title =
                projection == Projection.FirstAngle
                    ? Words.Of("sheet.projection.first")
                    : Words.Of("sheet.projection.third"),
        };
    }
}
