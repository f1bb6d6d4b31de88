using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <content>Rows of dimensions: one after another, and running from one end.</content>
public static partial class DimensionLine
{
    /// <summary>Distances one after another along a level line. Texts without room rise to upper rows.</summary>
    /// <param name="points">At least two points.</param>
    /// <param name="y">[mm] Height of the dimension line on the sheet.</param>
    /// <param name="texts">What each piece says, from left to right; one fewer than the points.</param>
    /// <exception cref="ArgumentException">The numbers of points and texts do not match.</exception>
    public static Group HorizontalChain(IReadOnlyList<Point> points, double y, IReadOnlyList<string> texts) =>
        Chain(new(new(0, y), 0), [.. points.Select(p => new Point(p.X, p.Y - y))], texts);

    /// <summary>Distances one after another along a plumb line; texts from the bottom up.</summary>
    /// <param name="points">At least two points.</param>
    /// <param name="x">[mm] Where the dimension line stands on the sheet.</param>
    /// <param name="texts">What each piece says, from the bottom up; one fewer than the points.</param>
    /// <exception cref="ArgumentException">The numbers of points and texts do not match.</exception>
    public static Group VerticalChain(IReadOnlyList<Point> points, double x, IReadOnlyList<string> texts) =>
        Chain(new(new(x, 0), -90), [.. points.Select(p => new Point(-p.Y, p.X - x))], texts);

    /// <summary>
    /// Running dimensions: all measured from the first point, so that a tape laid once gives every mark. Texts stand
    /// upright beyond the line and are spread where they would touch.
    /// </summary>
    /// <param name="points">First the datum, then the others, all on one side of it.</param>
    /// <param name="y">[mm] Height of the dimension line on the sheet.</param>
    /// <param name="texts">What each point says, the datum ("0") first.</param>
    /// <param name="below">Texts below the line instead of above it.</param>
    /// <exception cref="ArgumentException">The numbers of points and texts do not match.</exception>
    public static Group HorizontalRunning(
        IReadOnlyList<Point> points,
        double y,
        IReadOnlyList<string> texts,
        bool below = false
    ) => Running(new(new(0, y), 0), [.. points.Select(p => new Point(p.X, p.Y - y))], texts, below);

    /// <summary>Running dimensions up or down a plumb line, texts to its left (or right).</summary>
    /// <param name="points">First the datum, then the others, all on one side of it.</param>
    /// <param name="x">[mm] Where the dimension line stands on the sheet.</param>
    /// <param name="texts">What each point says, the datum ("0") first.</param>
    /// <param name="right">Texts to the right of the line instead of the left.</param>
    /// <exception cref="ArgumentException">The numbers of points and texts do not match.</exception>
    public static Group VerticalRunning(
        IReadOnlyList<Point> points,
        double x,
        IReadOnlyList<string> texts,
        bool right = false
    ) => Running(new(new(x, 0), -90), [.. points.Select(p => new Point(-p.Y, p.X - x))], texts, right);

    /// <summary>[mm] Room that running dimensions need beyond their line.</summary>
    public static double RunningDepth(IEnumerable<string> texts) =>
        8 + texts.Max(text => TextMeasure.Width(text, s_style));

    private static Group Chain(Frame frame, List<Point> points, IReadOnlyList<string> texts)
    {
        var sorted = points.OrderBy(p => p.X).ToList();
        if (sorted.Count < 2 || texts.Count != sorted.Count - 1)
        {
            throw new ArgumentException("A chain needs two points, and a text for each piece.", nameof(texts));
        }

        var elements = new List<Element>();
        elements.AddRange(sorted.Select(p => Extension(frame, p)));
        elements.Add(new Line(frame.At(sorted[0].X, 0), frame.At(sorted[^1].X, 0), Pen.Explain));
        // One short piece and the whole chain takes strokes, so that neighbours do not mix arrows and strokes.
        var arrows = sorted.Zip(sorted.Skip(1), (a, b) => b.X - a.X).All(l => l >= (2 * Arrow.Length) + 1);
        var side = sorted.Average(p => p.Y) >= 0 ? -1 : 1;
        var rowEnds = new List<double>();
        for (var i = 0; i < texts.Count; i++)
        {
            var (a, b) = (sorted[i].X, sorted[i + 1].X);
            Ends(frame, elements, a, b, arrows);
            var middle = (a + b) / 2;
            var half = (TextMeasure.Width(texts[i], s_style) / 2) + 0.5;
            if (2 * half <= b - a)
            {
                elements.AddRange(Words(frame, middle, -Lift, texts[i]));
                continue;
            }

            var row = rowEnds.FindIndex(end => end <= middle - half);
            if (row < 0)
            {
                row = rowEnds.Count;
                rowEnds.Add(0);
            }

            rowEnds[row] = middle + half;
            // Upper rows lie on the far side of the line, away from the thing.
            var far = Overshoot + 3 + (row * 4.2);
            elements.Add(new Line(frame.At(middle, 0), frame.At(middle, side * (far - 0.8)), Pen.Explain));
            elements.AddRange(Words(frame, middle, side < 0 ? -far : far + s_style.CapHeight, texts[i]));
        }

        return new(elements) { Class = "dimension" };
    }

    private static void Ends(Frame frame, List<Element> elements, double a, double b, bool arrows)
    {
        if (arrows)
        {
            elements.Add(Arrow.Head(frame.At(a, 0), frame.Direction + 180));
            elements.Add(Arrow.Head(frame.At(b, 0), frame.Direction));
            return;
        }

        elements.Add(Arrow.Stroke(frame.At(a, 0), frame.Direction));
        elements.Add(Arrow.Stroke(frame.At(b, 0), frame.Direction));
    }

    private static Group Running(Frame frame, List<Point> points, IReadOnlyList<string> texts, bool below)
    {
        if (points.Count < 2 || texts.Count != points.Count)
        {
            throw new ArgumentException("Running dimensions need two points, and a text for each.", nameof(texts));
        }

        var side = below ? 1 : -1;
        var order = Enumerable.Range(0, points.Count).OrderBy(i => points[i].X).ToList();
        var spread = Spread([.. order.Select(i => points[i].X)], s_style.Size * 1.15);
        var datum = points[0].X;
        var elements = new List<Element>
        {
            new Line(frame.At(points.Min(p => p.X), 0), frame.At(points.Max(p => p.X), 0), Pen.Explain),
            new Circle(frame.At(datum, 0), 1, Pen.Explain, Fill.Paper),
        };
        for (var k = 0; k < order.Count; k++)
        {
            var (point, at) = (points[order[k]], spread[k]);
            elements.Add(Extension(frame, point));
            if (point.X != datum)
            {
                elements.Add(Arrow.Head(frame.At(point.X, 0), frame.Direction + (point.X > datum ? 0 : 180)));
            }

            elements.Add(
                new Polyline(
                    [frame.At(point.X, 0), frame.At(point.X, side * 1.8), frame.At(at, side * 4.2)],
                    Pen.Explain
                )
            );
            elements.AddRange(RunningText(frame, at, side, texts[order[k]]));
        }

        return new(elements) { Class = "dimension" };
    }

    private static IEnumerable<Element> RunningText(Frame frame, double along, int side, string text)
    {
        // Level dimension lines carry texts that read from the right, plumb ones texts that read from below.
        var plumb = frame.Direction != 0;
        var turn = plumb ? 90 : -90;
        var startsHere = plumb ? side > 0 : side < 0;
        var style = s_style with { Rotation = frame.Direction + turn, Anchor = startsHere ? Anchor.Start : Anchor.End };
        var shift = plumb ? -s_style.CapHeight / 2 : s_style.CapHeight / 2;
        return Masked(new(text, frame.At(along + shift, side * 5), style));
    }

    /// <summary>Sorted places moved apart to at least a distance, each as little as possible (pooled neighbours).</summary>
    internal static IReadOnlyList<double> Spread(IReadOnlyList<double> places, double distance)
    {
        // Subtracting the distance turns "at least so far apart" into "not falling", which pooling solves.
        var pools = new List<(double Sum, int Count)>();
        for (var i = 0; i < places.Count; i++)
        {
            pools.Add((places[i] - (i * distance), 1));
            while (pools.Count > 1 && Mean(pools[^2]) > Mean(pools[^1]))
            {
                var (last, before) = (pools[^1], pools[^2]);
                pools.RemoveRange(pools.Count - 2, 2);
                pools.Add((last.Sum + before.Sum, last.Count + before.Count));
            }
        }

        return
        [
            .. pools
                .SelectMany(pool => Enumerable.Repeat(Mean(pool), pool.Count))
                .Select((mean, i) => mean + (i * distance)),
        ];
    }

    /// <summary>As above, kept between two limits where there is room for all.</summary>
    internal static IReadOnlyList<double> Spread(IReadOnlyList<double> places, double distance, double low, double high)
    {
        var spread = Spread(places, distance);
        return
        [
            .. spread.Select(
                (place, i) =>
                    Math.Max(Math.Min(place, high - ((places.Count - 1 - i) * distance)), low + (i * distance))
            ),
        ];
    }

    private static double Mean((double Sum, int Count) pool) => pool.Sum / pool.Count;
}
