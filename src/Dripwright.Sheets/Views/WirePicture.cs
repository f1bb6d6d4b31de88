using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Wires;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Crop wires with their supports, and the strings down to the pots.</summary>
/// <param name="plan">The plan.</param>
/// <param name="view">Level direction to the right, height up.</param>
/// <param name="band">Where the wires stand.</param>
internal sealed class WirePicture(Plan plan, View view, WireBand band)
{
    /// <summary>A wire seen from the side.</summary>
    public static Pen Wire => Pen.Built;

    /// <summary>A wire seen from above, over all that is drawn.</summary>
    public static Pen Over { get; } = new(DrawnRole.Ink, Type: LineType.LongDashDoubleDot);

    /// <summary>A string.</summary>
    public static Pen String => Pen.Plant;

    private readonly Wording _words = new(plan.Rig.Units);

    /// <summary>The wires of a row.</summary>
    public static IReadOnlyList<LoadedWire> Of(Plan plan, RowLayout row) =>
        [.. plan.CropWire.Wires.Where(w => w.Place.Row == row.Number)];

    /// <summary>One wire along the row, as it sags under the full crop.</summary>
    public Group Along(LoadedWire wire, RowLayout row)
    {
        var elements = new List<Element>();
        var (place, ends) = (wire.Place, plan.Rig.CropWire.Ends);
        List<Point> line =
        [
            .. wire.Loaded.Spans.SelectMany(
                (span, i) => span.Points.Select(p => At(row.OriginX + place.Supports[i] + p.Station, place.Z - p.Drop))
            ),
        ];
        foreach (var vine in place.Hanging)
        {
            var station = Math.Clamp(vine.Station, place.Supports[0], place.Supports[^1]);
            var foot = row.Pots[vine.Pot - 1].Base.X;
            elements.AddRange(Vine(On(line, view[row.OriginX + station, 0].X), view[foot, 0].X, row));
        }

        elements.Add(new Polyline(line, Wire));
        for (var i = 0; i < place.Supports.Count; i++)
        {
            var at = At(row.OriginX + place.Supports[i], place.Z);
            var side =
                i == 0 ? -1
                : i == place.Supports.Count - 1 ? 1
                : 0;
            elements.AddRange(side != 0 && ends == WireEnds.Bolted ? Bolt(at, side) : Hook(at));
        }

        return Named(wire, elements);
    }

    /// <summary>One wire from its end, with the string to the pot next to the reader.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="level">The view's level direction of a place across the room.</param>
    /// <param name="row">Its row.</param>
    public Group Across(LoadedWire wire, Func<double, double> level, RowLayout row)
    {
        var at = At(level(wire.Place.Y), wire.Place.Z);
        var label = TextStyle.Note.Bold.Middle;
        return Named(
            wire,
            [
                .. wire.Place.Hanging.Count > 0 ? Vine(at, at.X, row) : [],
                .. Hook(at),
                new Circle(at, 0.8, null, Fill.Ink),
                new Text(wire.Place.Label, at.Move(0, -4.6), label),
            ]
        );
    }

    /// <summary>What is left out between pots and wires, as two break lines.</summary>
    /// <param name="left">[mm] Where they begin.</param>
    /// <param name="right">[mm] Where they end.</param>
    public IEnumerable<Element> Breaks(double left, double right)
    {
        if (!band.Broken)
        {
            yield break;
        }

        var (lower, upper) = band.Breaks(view);
        yield return Mark.Break(new(left, lower), new(right, lower));
        yield return Mark.Break(new(left, upper), new(right, upper));
    }

    /// <summary>The names of a row's wires, with supports and sag where there is room for so many words.</summary>
    /// <param name="wires">The wires, at least one.</param>
    /// <param name="left">[mm] Where the text begins.</param>
    /// <param name="right">[mm] Where it must end.</param>
    public Text Label(IReadOnlyList<LoadedWire> wires, double left, double right)
    {
        var names = string.Join(", ", wires.Select(w => w.Place.Label));
        var supports = wires[0].Place.Supports;
        var sag = wires.Max(w => w.Loaded.Spans.Max(s => s.Sag));
        string[] texts =
        [
            Words.Of(
                "sheet.wire.label",
                names,
                Wording.Counted("sheet.count.support", supports.Count),
                _words.MarkWithUnit(supports[1] - supports[0]),
                _words.MarkWithUnit(sag)
            ),
            Words.Of("sheet.wire.label.short", names, _words.MarkWithUnit(sag)),
        ];
        var style = TextStyle.Note.Bold;
        var text = texts.FirstOrDefault(t => TextMeasure.Width(t, style) <= right - left) ?? names;
        return new(text, new(left, At(0, wires[0].Place.Z).Y - 4.8), style);
    }

    private Point At(double level, double z) => view[level, band.Drawn(z)];

    /// <summary>A string from the wire to the plant, left out with whatever is left out.</summary>
    private IEnumerable<Element> Vine(Point top, double footX, RowLayout row)
    {
        var foot = new Point(footX, view[0, row.Base + row.Pot.Height].Y - PotSymbol.PlantHeight(view));
        if (foot.Y <= top.Y)
        {
            yield break;
        }

        if (!band.Broken)
        {
            yield return new Line(top, foot, String);
            yield break;
        }

        var (lower, upper) = band.Breaks(view);
        Point On(double y) => top + ((foot - top) * ((y - top.Y) / (foot.Y - top.Y)));
        yield return new Line(top, On(upper), String);
        yield return new Line(On(lower), foot, String);
    }

    /// <summary>The wire's point over a place on the paper.</summary>
    private static Point On(List<Point> line, double x)
    {
        for (var i = 1; i < line.Count; i++)
        {
            var (a, b) = (line[i - 1], line[i]);
            if (x <= b.X && b.X > a.X)
            {
                return a + ((b - a) * Math.Clamp((x - a.X) / (b.X - a.X), 0, 1));
            }
        }

        return line[^1];
    }

    // Through a post that stands beyond the wire's end.
    private static IEnumerable<Element> Bolt(Point at, int side) =>
        [
            new Line(at, at.Move(side * 2.5, 0), Pen.Thin),
            new Line(at.Move(side * 2.5, -3.4), at.Move(side * 2.5, 3.4), Pen.Built),
            new Circle(at, 0.8, Pen.Thin, Fill.Paper),
        ];

    // Into framing overhead.
    private static IEnumerable<Element> Hook(Point at) =>
        [
            new Line(at, at.Move(0, -2.8), Pen.Thin),
            new Line(at.Move(-1.4, -2.8), at.Move(1.4, -2.8), Pen.Built),
            new Circle(at, 0.6, Pen.Thin, Fill.Paper),
        ];

    private Group Named(LoadedWire wire, IReadOnlyList<Element> elements) =>
        new(elements)
        {
            Id = "wire-" + wire.Place.Label,
            Class = "wire",
            Title = Words.Of("sheet.wire.title", wire.Place.Label),
            Description = Words.Of(
                "sheet.wire.said",
                _words.Length(plan.Rig.CropWire.Height),
                _words.Force(wire.Loaded.Supports.Where(s => s.End).Max(s => s.Total))
            ),
        };
}
