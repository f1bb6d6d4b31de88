using Dripwright.Engine.Fittings;
using Dripwright.Engine.Layout;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Screen;

/// <summary>Where a printed part goes: a row's stand seen slantwise, its joints numbered, those of one part filled.</summary>
public static class StandView
{
    // A row of many modules repeats itself; three show every kind of joint large enough to read.
    private const int MostModules = 3;
    private const double Margin = 7;
    private const double DeepRight = 0.45;
    private const double DeepUp = 0.35;

    /// <summary>The drawing as a piece of a page.</summary>
    /// <param name="layout">The rig in its place.</param>
    /// <param name="fittings">The printed parts of its stand.</param>
    /// <param name="chosen">Number of the part that is asked for.</param>
    /// <param name="width">[mm] Width, 60 or more.</param>
    /// <exception cref="ArgumentException">There is no part of that number.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The width is under 60 mm.</exception>
    public static string Of(RigLayout layout, IReadOnlyList<StandFitting> fittings, string chosen, double width = 120)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(fittings);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 60);
        var part =
            fittings.FirstOrDefault(fitting => fitting.Number == chosen)
            ?? throw new ArgumentException("The stand has no such part.", nameof(chosen));
        var first = part.Joints[0];
        var row = layout.Rows.First(row => row.Number == first.Row);
        var module = row.Spec.ModuleLength;
        var before = Math.Floor(Math.Max(0, first.At.X - row.OriginX - 1e-6) / module);
        var from = row.OriginX + (Math.Max(0, before - 1) * module) - 1e-6;
        var to = from + (MostModules * module) + 2e-6;
        bool Seen(Point3 p) => p.X >= from && p.X <= to;
        var tubes = layout
            .Stand.Members.Where(tube => tube.Row == row.Number && Seen(tube.From) && Seen(tube.To))
            .ToList();
        var joints = fittings
            .SelectMany(fitting => fitting.Joints.Select(joint => (fitting.Number, joint.Row, joint.At)))
            .Where(joint => joint.Row == row.Number && Seen(joint.At))
            .ToList();

        static Point Flat(Point3 p) => new(p.X + (p.Y * DeepRight), -p.Z - (p.Y * DeepUp));
        var box = Box.Around([
            .. tubes.SelectMany(tube => new[] { Flat(tube.From), Flat(tube.To) }),
            .. joints.Select(joint => Flat(joint.At)),
        ]);
        var scale = (width - (2 * Margin)) / Math.Max(box.Width, 0.2);
        scale = Math.Min(scale, width / Math.Max(box.Height, 0.2));
        var left = (width - (box.Width * scale)) / 2;
        Point At(Point3 p)
        {
            var flat = Flat(p);
            return new(left + ((flat.X - box.X) * scale), Margin + ((flat.Y - box.Y) * scale));
        }

        List<Element> elements = [.. tubes.Select(tube => new Line(At(tube.From), At(tube.To), Pen.Thin))];
        var mine = joints.Where(joint => joint.Number == chosen).ToList();
        elements.AddRange(
            joints
                .Where(joint => joint.Number != chosen)
                .Select(joint => new Circle(At(joint.At), 1, Pen.Thin, Fill.Paper))
        );
        elements.AddRange(mine.Select(joint => new Circle(At(joint.At), 1.7, Pen.Built, new(Role.Water))));
        List<Box> taken = [];
        foreach (var (number, _, at) in mine.Concat(joints.Except(mine)))
        {
            var style = number == chosen ? TextStyle.Note.Bold : TextStyle.Small;
            var text = new Text(number, At(at).Move(2.2, -1.6), style);
            var room = TextMeasure.Bounds(text);
            if (!taken.Exists(other => other.Overlaps(room)))
            {
                taken.Add(room);
                elements.Add(text);
            }
        }

        var title = $"Where {chosen} goes: {Wording.Counted(part.Joints.Count, "place")}";
        var sheet = new Sheet(new("screen", width, (box.Height * scale) + (2 * Margin)), title, elements);
        return SvgWriter.Write(sheet, SvgOptions.Inline with { IdPrefix = $"stand-{chosen}-" });
    }
}
