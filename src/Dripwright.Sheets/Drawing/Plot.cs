using System.Globalization;
using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>
/// A plot made of the same lines and texts as the drawings. Series differ by dash and marker and carry their names, so
/// that a black-and-white copy can be read.
/// </summary>
/// <param name="X">Level axis.</param>
/// <param name="Y">Upright axis.</param>
public sealed record Plot(Axis X, Axis Y)
{
    private static readonly Pen[] s_pens =
    [
        Pen.Built,
        new(DrawnRole.Ink, LineWidth.Wide, LineType.Dashed),
        new(DrawnRole.Ink, LineWidth.Wide, LineType.LongDashDot),
        Pen.Thin,
        Pen.Hidden,
        new(DrawnRole.Ink, LineWidth.Wide, LineType.LongDashDoubleDot),
    ];

    private static readonly TextStyle s_figures = TextStyle.Note with { Size = 2.8 };
    private static readonly TextStyle s_names = TextStyle.Note;

    /// <summary>What is plotted, lowest first.</summary>
    public IReadOnlyList<Series> Series { get; init; } = [];

    /// <summary>Filled surfaces beneath.</summary>
    public IReadOnlyList<Region> Regions { get; init; } = [];

    /// <summary>Remarks on top.</summary>
    public IReadOnlyList<PlotNote> Notes { get; init; } = [];

    /// <summary>Heading; "" for none.</summary>
    public string Title { get; init; } = "";

    /// <summary>A legend below the plot instead of names at the last points.</summary>
    public bool HasLegend { get; init; }

    /// <summary>The plot in a box of a sheet, at least 50 mm wide and 40 mm high.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The box is too small.</exception>
    public Group Draw(Box box)
    {
        if (box.Width < 50 || box.Height < 40)
        {
            throw new ArgumentOutOfRangeException(nameof(box), box, "A plot needs at least 50 × 40 mm.");
        }

        var elements = new List<Element>();
        if (Title.Length > 0)
        {
            elements.Add(new Text(Title, box.TopLeft.Move(0, 4), TextStyle.Body.Bold));
            box = box.CutTop(6.5).Remainder;
        }

        if (HasLegend)
        {
            var entries = Series.Select((s, i) => Entry(s, i)).ToList();
            var (strip, rest) = box.CutBottom(Legend.Height(entries) + 1);
            elements.Add(Legend.Draw(strip.TopLeft.Move(0, 1), entries));
            box = rest;
        }

        var yTicks = TicksOf(Y, Values(p => p.Y), Math.Max(2, (int)(box.Height / 14)));
        // The name of the upright axis stands level above it: nobody turns the head to read it.
        elements.Add(new Text(Y.Label, box.TopLeft.Move(0, 3), s_names));
        var left = yTicks.Max(t => TextMeasure.Width(t.Name, s_figures)) + 3;
        var longest = Series.Select(s => TextMeasure.Width(s.Name, s_names)).DefaultIfEmpty().Max();
        var right = HasLegend || longest <= 0 ? 5 : Math.Min(longest + 4, box.Width * 0.35);
        var area = box.Inset(left, 6, right, 10);
        var xTicks = TicksOf(X, Values(p => p.X), Math.Max(2, (int)(area.Width / 16)));
        var frame = new PlotFrame(area, Range(X, xTicks), Range(Y, yTicks));
        Axes(elements, frame, xTicks, yTicks);
        elements.Add(new Text(X.Label, new(area.Right, area.Bottom + 9), s_names.End));
        elements.Add(new Group(Inside(frame)) { Clip = area.Inset(-0.25).Corners });
        if (!HasLegend)
        {
            elements.AddRange(DirectNames(frame, right - 3));
        }

        elements.AddRange(
            Notes.Select(n => DimensionLine.Leader(frame[n.X, n.Y], frame[n.X, n.Y].Move(n.Dx, n.Dy), n.Words))
        );
        return new(elements)
        {
            Class = "plot",
            Title = Title.Length > 0 ? Title : Words.Of("sheet.plot.over", Y.Label, X.Label),
        };
    }

    private IEnumerable<double> Values(Func<(double X, double Y), double> pick) =>
        Series.SelectMany(s => s.Points).Select(pick).Where(double.IsFinite);

    private List<(double Value, string Name)> TicksOf(Axis axis, IEnumerable<double> values, int most)
    {
        var data = values.ToList();
        if (ReferenceEquals(axis, Y) && Series.Any(s => s.Kind == SeriesKind.Bars))
        {
            data.Add(0);
        }

        var low = axis.Low ?? data.Concat(axis.High is { } h ? [h] : []).DefaultIfEmpty(0).Min();
        var high = Math.Max(low, axis.High ?? data.DefaultIfEmpty(1).Max());
        if (axis.Names is { Count: > 0 } names)
        {
            return [.. names];
        }

        var ticks = Ticks.Nice(low, high, most);
        // Given ends are kept exactly; ticks beyond them are left out.
        return
        [
            .. ticks
                .Where(t => (axis.Low is null || t >= low - 1e-9) && (axis.High is null || t <= high + 1e-9))
                .Select(t => (t, t.ToString("#,0.######", s_spaced))),
        ];
    }

    private static readonly NumberFormatInfo s_spaced = new() { NumberGroupSeparator = "\u202f", NegativeSign = "−" };

    private static (double Low, double High) Range(Axis axis, List<(double Value, string Name)> ticks)
    {
        var named = axis.Names is { Count: > 0 };
        var low = axis.Low ?? (ticks[0].Value - (named ? 0.5 : 0));
        var high = axis.High ?? (ticks[^1].Value + (named ? 0.5 : 0));
        return (low, high > low ? high : low + 1);
    }

    private static void Axes(
        List<Element> elements,
        PlotFrame frame,
        List<(double Value, string Name)> xTicks,
        List<(double Value, string Name)> yTicks
    )
    {
        var area = frame.Area;
        foreach (var (value, name) in yTicks)
        {
            var y = frame[frame.X.Low, value].Y;
            elements.Add(new Line(new(area.X, y), new(area.Right, y), Pen.Faint));
            elements.Add(new Text(name, new(area.X - 1.5, y + 0.95), s_figures.End));
        }

        var free = double.NegativeInfinity;
        foreach (var (value, name) in xTicks)
        {
            var x = frame[value, frame.Y.Low].X;
            elements.Add(new Line(new(x, area.Bottom), new(x, area.Bottom + 1.2), Pen.Thin));
            var half = TextMeasure.Width(name, s_figures) / 2;
            // A name that would touch its neighbour is left out; its tick stays.
            if (x - half > free)
            {
                elements.Add(new Text(name, new(x, area.Bottom + 4.2), s_figures.Middle));
                free = x + half + 1;
            }
        }

        elements.Add(new Polyline([area.TopLeft, new(area.X, area.Bottom), new(area.Right, area.Bottom)], Pen.Thin));
    }

    private List<Element> Inside(PlotFrame frame)
    {
        var elements = new List<Element>();
        foreach (var region in Regions)
        {
            var outline = region.Outline.Select(p => frame[p.X, p.Y]).ToList();
            elements.Add(Polyline.Polygon(outline, null, region.Fill));
            if (region.Name.Length > 0)
            {
                var shown = Box.Around(outline);
                var at = new Point(Math.Max(shown.X, frame.Area.X) + 2, Math.Max(shown.Y, frame.Area.Y) + 4);
                elements.Add(new Text(region.Name, at, s_names with { Role = DrawnRole.Explain }));
            }
        }

        for (var i = 0; i < Series.Count; i++)
        {
            elements.AddRange(PlotSeries.Draw(Series[i], PenOf(Series[i], i), MarkerOf(Series[i], i), frame));
        }

        return elements;
    }

    private IEnumerable<Element> DirectNames(PlotFrame frame, double room)
    {
        var area = frame.Area;
        var labels = Series
            .Where(s => s.Name.Length > 0 && s.Points.Any(frame.Holds))
            .Select(s => (s.Name, At: s.Points.Where(frame.Holds).Select(p => frame[p.X, p.Y]).Last()))
            .OrderBy(label => label.At.Y)
            .ToLookup(label => label.At.X < area.Right - (area.Width / 5));
        // A series that ends early has its name beside its last point: a line across the plot would read as data.
        foreach (var (name, at) in labels[true])
        {
            yield return new Text(
                TextMeasure.Shorten(name, area.Right - at.X - 2 + room, s_names),
                at.Move(1.8, 3.6),
                s_names
            );
        }

        var last = labels[false].ToList();
        var heights = last.Select(label => label.At.Y).ToList();
        var places = DimensionLine.Spread(heights, s_names.Size * 1.2, area.Y, area.Bottom);
        for (var i = 0; i < last.Count; i++)
        {
            var text = TextMeasure.Shorten(last[i].Name, room, s_names);
            var at = new Point(area.Right + 2.5, places[i]);
            if (Math.Abs(places[i] - last[i].At.Y) > 0.5 || last[i].At.X < area.Right - 3)
            {
                yield return new Line(last[i].At.Move(0.8, 0), at.Move(-0.5, 0), Pen.Explain);
            }

            yield return new Text(text, at.Move(0, 1.05), s_names);
        }
    }

    private static Pen PenOf(Series series, int i) => series.Pen ?? s_pens[i % s_pens.Length];

    private static Marker MarkerOf(Series series, int i) =>
        series.Marker
        ?? (
            series.Kind == SeriesKind.Points ? (Marker)(1 + (i % 4))
            : i < s_pens.Length ? Marker.None
            : Marker.Dot
        );

    private static LegendEntry Entry(Series series, int i) =>
        series.Kind == SeriesKind.Bars
            ? new(series.Name, Pen.Thin, series.Fill)
            : new(series.Name, series.Kind == SeriesKind.Points ? null : PenOf(series, i), Marker: MarkerOf(series, i));
}
