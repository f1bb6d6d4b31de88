using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>The drain under a row with its drop at each frame, the slope drawn steeper than it is.</summary>
internal static class SlopeFigure
{
    /// <summary>[mm] Height that the figure asks for.</summary>
    public const double Height = 44;

    /// <summary>Frames that can be dimensioned side by side.</summary>
    private const int MostFrames = 9;

    /// <summary>Draws the figure.</summary>
    public static Group Draw(Box box, Plan plan, RowLayout row)
    {
        var words = new Wording(plan.Rig.Units);
        var held = HeldPlaces.Of(row);
        var (left, right) = (box.X + 8, box.Right - 14);
        var (top, high, low) = (box.Y + 9, box.Y + 20, box.Y + 34);
        var (least, most) = (held.Min(s => s.Drop), held.Max(s => s.Drop));
        double X(double station) => left + ((right - left) * station / row.Length);
        double Y(double drop) => most - least < 1e-9 ? high : high + ((low - high) * (drop - least) / (most - least));
        List<Element> elements =
        [
            new Line(new(left, top), new(right, top), Pen.Built),
            new Text(Words.Of("sheet.slope.rails"), new(left, top - 2), TextStyle.Small),
            new Polyline([.. held.Select(s => new Point(X(s.Station), Y(s.Drop)))], Pen.Return),
        ];
        var step = Math.Max(1, (int)Math.Ceiling((held.Count - 1) / (double)MostFrames));
        for (var i = 0; i < held.Count; i++)
        {
            var place = held[i];
            var at = new Point(X(place.Station), Y(place.Drop));
            elements.Add(new Line(new(at.X, top), new(at.X, low + 4), Pen.Thin));
            elements.Add(new Rectangle(new(at.X - 1.2, at.Y + 0.3, 2.4, 1.4), Pen.Thin, Fill.Paper));
            if (i % step == 0 || i == held.Count - 1)
            {
                elements.Add(new Text(Wording.Count(place.Frame), new(at.X, low + 8), TextStyle.Small.Bold.Middle));
            }
        }

        // A short drop has no room for arrows between the lines: the table below has every figure.
        elements.Add(Drop(held[0]));
        if (held.Count > 1)
        {
            elements.Add(Drop(held[^1]));
        }

        return new(elements) { Class = "figure", Title = Words.Of("sheet.slope.figure") };

        Group Drop(HeldPlace place) =>
            DimensionLine.Vertical(
                new(X(place.Station), top),
                new(X(place.Station), Y(place.Drop)),
                X(place.Station) + 7,
                words.Mark(place.Drop)
            );
    }
}
