using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>
/// Dimensions after ISO 129 (from memory): narrow lines, the text above the line and readable from below or from the
/// right. The caller words the texts; these draw them and keep them apart.
/// </summary>
public static partial class DimensionLine
{
    /// <summary>[mm] Height of the strip that a single row of dimensions needs beside the thing.</summary>
    public const double Pitch = 8;

    private const double Gap = 1;
    private const double Overshoot = 1.5;
    private const double Lift = 1;
    private static readonly TextStyle s_style = TextStyle.Note.Middle;

    /// <summary>Distance between two points, level. Points may differ in height.</summary>
    /// <param name="a">One point.</param>
    /// <param name="b">The other point.</param>
    /// <param name="y">[mm] Height of the dimension line on the sheet.</param>
    /// <param name="text">What it says.</param>
    public static Group Horizontal(Point a, Point b, double y, string text)
    {
        var (left, right) = a.X <= b.X ? (a, b) : (b, a);
        return Span(new(new(0, y), 0), new(left.X, left.Y - y), new(right.X, right.Y - y), text);
    }

    /// <summary>Distance between two points, plumb. The text reads from the right.</summary>
    /// <param name="a">One point.</param>
    /// <param name="b">The other point.</param>
    /// <param name="x">[mm] Where the dimension line stands on the sheet.</param>
    /// <param name="text">What it says.</param>
    public static Group Vertical(Point a, Point b, double x, string text)
    {
        // In the frame turned by -90° "along" is up the sheet and "down" is to its right.
        var (low, high) = a.Y >= b.Y ? (a, b) : (b, a);
        return Span(new(new(x, 0), -90), new(-low.Y, low.X - x), new(-high.Y, high.X - x), text);
    }

    /// <summary>True distance between two points.</summary>
    /// <param name="a">One point.</param>
    /// <param name="b">The other point.</param>
    /// <param name="offset">[mm] Distance of the dimension line, above the thing when positive, else below.</param>
    /// <param name="text">What it says.</param>
    /// <exception cref="ArgumentException">The points are the same.</exception>
    public static Group Aligned(Point a, Point b, double offset, string text)
    {
        var (left, right) = a.X < b.X || (a.X == b.X && a.Y > b.Y) ? (a, b) : (b, a);
        var way = right - left;
        if (way.Length <= 0)
        {
            throw new ArgumentException("A dimension needs two different points.", nameof(b));
        }

        var direction = double.RadiansToDegrees(Math.Atan2(way.Y, way.X));
        var frame = new Frame(left + new Point(0, -offset).Turn(direction), direction);
        return Span(frame, new(0, offset), new(way.Length, offset), text);
    }

    /// <summary>Diameter or any note on a line with an arrow: from the text along a level landing to the tip.</summary>
    /// <param name="tip">What is meant.</param>
    /// <param name="knee">Where the landing starts; the text runs away from the tip.</param>
    /// <param name="text">What it says; line feeds make more lines.</param>
    /// <param name="dot">End with a dot, within a surface, instead of an arrow.</param>
    public static Group Leader(Point tip, Point knee, string text, bool dot = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = text.Split('\n');
        var width = lines.Max(line => TextMeasure.Width(line, s_style));
        var side = knee.X >= tip.X ? 1 : -1;
        var way = tip - knee;
        var elements = new List<Element>
        {
            new Polyline([tip, knee, knee.Move(side * (width + 1), 0)], Pen.Explain),
            dot ? Arrow.Dot(tip) : Arrow.Head(tip, double.RadiansToDegrees(Math.Atan2(way.Y, way.X))),
        };
        var style = s_style with { Anchor = Anchor.Start };
        var x = side > 0 ? knee.X + 0.5 : knee.X - width - 0.5;
        // The first line stands on the landing, more lines hang below it.
        elements.AddRange(
            lines.SelectMany(
                (line, i) =>
                    Masked(new(line, new(x, knee.Y - Lift + (i == 0 ? 0 : (i * style.LineHeight) + 0.8)), style))
            )
        );
        return new(elements);
    }

    /// <summary>A plain dimension in its frame: along the line, points above (negative) or below it.</summary>
    private static Group Span(Frame frame, Point a, Point b, string text)
    {
        var length = b.X - a.X;
        var width = TextMeasure.Width(text, s_style);
        var inside = length >= (2 * Arrow.Length) + 1;
        var elements = new List<Element> { Extension(frame, a), Extension(frame, b) };
        var textFits = width + 1 <= length && (inside || width + 1 <= length);
        var from = inside ? a.X : a.X - (2 * Arrow.Length);
        var to = inside ? b.X : b.X + (2 * Arrow.Length);
        var middle = (a.X + b.X) / 2;
        if (!textFits)
        {
            // Moved out over the lengthened line at the right end.
            var start = b.X + (inside ? 1 : (2 * Arrow.Length) + 0.5);
            middle = start + (width / 2);
            to = start + width;
        }

        elements.Add(new Line(frame.At(from, 0), frame.At(to, 0), Pen.Explain));
        elements.Add(Arrow.Head(frame.At(a.X, 0), frame.Direction + (inside ? 180 : 0)));
        elements.Add(Arrow.Head(frame.At(b.X, 0), frame.Direction + (inside ? 0 : 180)));
        elements.AddRange(Words(frame, middle, -Lift, text));
        return new(elements) { Class = "dimension" };
    }

    private static IEnumerable<Element> Words(Frame frame, double along, double down, string text) =>
        Masked(new(text, frame.At(along, down), s_style with { Rotation = frame.Direction }));

    /// <summary>A text on a patch of paper, so that lines drawn before do not run through it.</summary>
    private static IEnumerable<Element> Masked(Text text) =>
        [Polyline.Polygon(TextMeasure.Corners(text), null, Fill.Paper), text];

    /// <summary>From near the point to a little beyond the dimension line.</summary>
    private static Line Extension(Frame frame, Point point)
    {
        var sign = point.Y >= 0 ? 1 : -1;
        var start = Math.Abs(point.Y) > Gap + 0.5 ? point.Y - (sign * Gap) : point.Y;
        return new(frame.At(point.X, start), frame.At(point.X, -sign * Overshoot), Pen.Explain);
    }

    /// <summary>Coordinates along and below a dimension line.</summary>
    private sealed record Frame(Point Origin, double Direction)
    {
        public Point At(double along, double down) => Origin + new Point(along, down).Turn(Direction);
    }
}
