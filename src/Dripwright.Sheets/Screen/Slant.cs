using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Screen;

/// <summary>A row seen slantwise: along it to the right, up upwards, across it to the right and up.</summary>
internal sealed class Slant
{
    // A row of many modules repeats itself; three show every kind of part large enough to read.
    private const int MostModules = 3;
    private const double Margin = 7;
    private const double DeepRight = 0.45;
    private const double DeepUp = 0.35;

    private readonly Box _box;
    private readonly double _scale;
    private readonly double _left;

    /// <summary>So that all of some points is seen, as large as the width allows.</summary>
    public Slant(IEnumerable<Vector3> seen, double width)
    {
        _box = Box.Around([.. seen.Select(Flat)]);
        var scale = (width - (2 * Margin)) / Math.Max(_box.Width, 0.2);
        _scale = Math.Min(scale, width / Math.Max(_box.Height, 0.2));
        _left = (width - (_box.Width * _scale)) / 2;
        Paper = new("screen", width, (_box.Height * _scale) + (2 * Margin));
    }

    public Paper Paper { get; }

    /// <summary>[m] The modules to show, so that a place is among them.</summary>
    public static (double From, double To) Window(RowLayout row, double x)
    {
        var module = row.Spec.ModuleLength;
        var before = Math.Floor(Math.Max(0, x - row.OriginX - 1e-6) / module);
        var from = row.OriginX + (Math.Max(0, before - 1) * module) - 1e-6;
        return (from, from + (MostModules * module) + 2e-6);
    }

    public Point At(Vector3 p)
    {
        var flat = Flat(p);
        return new(_left + ((flat.X - _box.X) * _scale), Margin + ((flat.Y - _box.Y) * _scale));
    }

    /// <summary>Filled circles at the places of a part, and its number where there is room.</summary>
    public IEnumerable<Element> Marks(string number, IEnumerable<Vector3> places, List<Box> taken)
    {
        var all = places.ToList();
        return all.Select(place => (Element)new Circle(At(place), 1.7, Pen.Built, new(DrawnRole.Water)))
            .Concat(all.SelectMany(place => Label(number, place, TextStyle.Note.Bold, taken)));
    }

    /// <summary>A number beside a place, unless another one is there.</summary>
    public IEnumerable<Element> Label(string number, Vector3 place, TextStyle style, List<Box> taken)
    {
        var text = new Text(number, At(place).Move(2.2, -1.6), style);
        var room = TextMeasure.Bounds(text);
        if (taken.Exists(other => other.Overlaps(room)))
        {
            yield break;
        }

        taken.Add(room);
        yield return text;
    }

    private static Point Flat(Vector3 p) => new(p.X + (p.Y * DeepRight), -p.Z - (p.Y * DeepUp));
}
