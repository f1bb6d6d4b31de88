using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>Draws one series of a plot.</summary>
internal static class PlotSeries
{
    public static IEnumerable<Element> Draw(Series series, Pen pen, Marker marker, PlotFrame frame)
    {
        if (series.Kind == SeriesKind.Bars)
        {
            return Bars(series, frame);
        }

        var runs = Runs(series.Points).ToList();
        var lines = runs.Where(run => run.Count > 1 && series.Kind != SeriesKind.Points)
            .Select(run => new Polyline(Path(run, series.Kind, frame), pen));
        var markers = runs.SelectMany(run => run).SelectMany(p => Marked(frame[p.X, p.Y], marker, pen.Role));
        return [.. lines, .. markers];
    }

    public static IEnumerable<Element> Marked(Point at, Marker marker, DrawnRole role)
    {
        var pen = new Pen(role);
        switch (marker)
        {
            case Marker.Dot:
                yield return new Circle(at, 0.8, null, new(role));
                break;
            case Marker.Square:
                yield return new Rectangle(new(at.X - 0.9, at.Y - 0.9, 1.8, 1.8), pen, Fill.Paper);
                break;
            case Marker.Triangle:
                Point[] corners = [at.Move(0, -1.2), at.Move(1.1, 0.8), at.Move(-1.1, 0.8)];
                yield return Polyline.Polygon(corners, pen, Fill.Paper);
                break;
            case Marker.Cross:
                yield return new Line(at.Move(-0.9, -0.9), at.Move(0.9, 0.9), pen);
                yield return new Line(at.Move(-0.9, 0.9), at.Move(0.9, -0.9), pen);
                break;
        }
    }

    private static IEnumerable<Element> Bars(Series series, PlotFrame frame)
    {
        var xs = series.Points.Select(p => p.X).Order().Distinct().ToList();
        var least = xs.Zip(xs.Skip(1), (a, b) => b - a).DefaultIfEmpty(frame.X.High - frame.X.Low).Min();
        var width = series.BarWidth > 0 ? series.BarWidth : 0.7 * least;
        foreach (var (x, y) in series.Points.Where(p => double.IsFinite(p.X) && double.IsFinite(p.Y)))
        {
            yield return new Rectangle(
                Box.Around([frame[x - (width / 2), 0], frame[x + (width / 2), y]]),
                Pen.Thin,
                series.Fill
            );
        }
    }

    private static List<Point> Path(List<(double X, double Y)> run, SeriesKind kind, PlotFrame frame)
    {
        var points = new List<Point>();
        for (var i = 0; i < run.Count; i++)
        {
            if (kind == SeriesKind.Step && i > 0)
            {
                points.Add(frame[run[i].X, run[i - 1].Y]);
            }

            points.Add(frame[run[i].X, run[i].Y]);
        }

        return points;
    }

    private static IEnumerable<List<(double X, double Y)>> Runs(IReadOnlyList<(double X, double Y)> points)
    {
        var run = new List<(double X, double Y)>();
        foreach (var point in points)
        {
            if (double.IsFinite(point.X) && double.IsFinite(point.Y))
            {
                run.Add(point);
                continue;
            }

            yield return run;
            run = [];
        }

        yield return run;
    }
}
