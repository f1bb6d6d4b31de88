using Dripwright.Engine;
using Dripwright.Engine.Units;
using Dripwright.Engine.Wires;
using Dripwright.Language;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Screen;

/// <summary>The crop wires under their load from the front, as a piece of a web page: sag, vines and the pull on each end.</summary>
public static class WireView
{
    /// <summary>Most wires drawn; those of further rows are like them.</summary>
    public const int MostWires = 6;

    private const double Side = 30;
    private const double Head = 11;
    private const double Deepest = 9;
    private const double Twine = 7;
    private const double Step = Head + Deepest + Twine + 9;

    /// <summary>The drawing; null where nothing hangs.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="width">[mm] Width, 90 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is under 90 mm.</exception>
    public static string? Of(Plan plan, double width = 180)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 90);
        LoadedWire[] wires = [.. plan.CropWire.Wires.Take(MostWires)];
        if (wires.Length == 0)
        {
            return null;
        }

        var factor = Factor(wires, width);
        var elements = wires.SelectMany((wire, i) => Draw(wire, plan.Rig.Units, width, i * Step, factor)).ToList();
        var foot = wires.Length * Step;
        var note =
            factor > 1
                ? Words.Of("screen.wire.deeper", QuantityWords.Number(factor, "0"))
                : Words.Of("screen.wire.scale");
        elements.Add(new Text(note, new(2, foot + 2), TextStyle.Small));
        var told = string.Join(" ", wires.Select(wire => Told(wire, plan.Rig.Units))).Replace('\u00a0', ' ');
        var sheet = new Sheet(new("screen", width, foot + 5), Words.Of("screen.wire.title"), elements)
        {
            Description = told,
        };
        return SvgWriter.Write(sheet, SvgOptions.Inline with { IdPrefix = "wire-" });
    }

    private static double ScaleOf(LoadedWire wire, double width) =>
        (width - (2 * Side)) / Math.Max(wire.Place.Supports[^1] - wire.Place.Supports[0], 0.1);

    // A sag of a finger's width over a whole row cannot be seen to scale.
    private static double Factor(LoadedWire[] wires, double width)
    {
        var deepest = wires.Max(wire => wire.Loaded.Spans.Max(span => span.Sag) * ScaleOf(wire, width));
        var room = Deepest / Math.Max(deepest, 1e-3);
        return new double[] { 100, 50, 20, 10, 5, 2 }.FirstOrDefault(step => step <= room, 1);
    }

    private static IEnumerable<Element> Draw(LoadedWire wire, UnitSystem units, double width, double top, double factor)
    {
        var scale = ScaleOf(wire, width);
        var supports = wire.Place.Supports;
        Point At(double station, double drop) =>
            new(Side + ((station - supports[0]) * scale), top + Head + (drop * scale * factor));

        var height = Format(Dimension.Length, wire.Place.Z, units);
        yield return new Text(
            Words.Of("screen.wire.wire", wire.Place.Label, height),
            new(2, top + 5),
            TextStyle.Note.Bold
        );
        var deepest = wire.Loaded.Spans.MaxBy(span => span.Sag)!;
        yield return new Text(
            Words.Of("screen.wire.sag", Format(Dimension.Length, deepest.Sag, units)),
            new(width - 2, top + 5),
            TextStyle.Note.End
        );
        foreach (var station in supports)
        {
            var at = At(station, 0);
            yield return new Line(at.Move(-1.6, -2.4), at.Move(1.6, -2.4), Pen.Built);
            yield return new Line(at.Move(0, -2.4), at, Pen.Thin);
        }

        List<Point> line = [];
        foreach (var (span, i) in wire.Loaded.Spans.Select((span, i) => (span, i)))
        {
            line.AddRange(span.Points.Select(point => At(supports[i] + point.Station, point.Drop)));
        }

        yield return new Polyline(line, Pen.Built);
        foreach (var vine in wire.Place.Hanging.Where(vine => vine.Plants > 0))
        {
            var at = On(line, At(vine.Station, 0).X);
            yield return new Line(at, at.Move(0, Twine), Pen.Plant);
            yield return new Circle(at.Move(0, Twine), 0.8, null, new(DrawnRole.Plant));
        }

        foreach (var end in wire.Loaded.Supports.Where(support => support.End))
        {
            var way = end.Station <= supports[0] ? 1 : -1;
            var at = At(end.Station, 0);
            yield return new Line(at.Move(-way * 11, 0), at.Move(-way, 0), Pen.Care);
            yield return new Line(at.Move(-way * 2.8, -1.2), at.Move(-way, 0), Pen.Care);
            yield return new Line(at.Move(-way * 2.8, 1.2), at.Move(-way, 0), Pen.Care);
            yield return new Text(
                Format(Dimension.Force, end.Total, units),
                at.Move(-way * 3, 5),
                way > 0 ? TextStyle.Note.End : TextStyle.Note
            );
        }
    }

    private static Point On(List<Point> line, double x)
    {
        for (var i = 1; i < line.Count; i++)
        {
            if (x <= line[i].X && line[i].X > line[i - 1].X)
            {
                var share = Math.Max(0, (x - line[i - 1].X) / (line[i].X - line[i - 1].X));
                return new(x, line[i - 1].Y + (share * (line[i].Y - line[i - 1].Y)));
            }
        }

        return line[^1];
    }

    private static string Told(LoadedWire wire, UnitSystem units) =>
        Words.Of(
            "screen.wire.told",
            wire.Place.Label,
            Format(Dimension.Length, wire.Loaded.Spans.Max(span => span.Sag), units),
            Format(Dimension.Force, wire.Loaded.Supports.Where(s => s.End).Max(s => s.Total), units)
        );

    private static string Format(Dimension dimension, double value, UnitSystem units) =>
        QuantityText.Format(dimension, value, units);
}
