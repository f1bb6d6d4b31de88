using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Printed;
using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>
/// The first module of a stand drawn apart along its own axes: each tube with the label of its cut, each joint with the
/// piece number that stands on it.
/// </summary>
internal sealed class ExplodedFigure
{
    /// <summary>[mm] Height that the figure takes at most.</summary>
    private const double MostHeight = 138;

    /// <summary>[mm] Between a tube's end and its joint.</summary>
    private const double Gap = 7;

    /// <summary>[-] How a metre to the back is drawn to the right and up.</summary>
    private const double DeepRight = 0.55;
    private const double DeepUp = 0.55;

    /// <summary>[m] Places nearer than this are one.</summary>
    private const double Near = 1e-4;

    private static readonly double[] s_along = [0.5, 0.35, 0.65, 0.25, 0.75];
    private readonly List<StandMember> _tubes;
    private readonly List<(string Number, StandJoint Joint, PrintedJoint Part)> _joints;
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _z;
    private readonly double _scale;
    private readonly Point _origin;
    private readonly Box _box;
    private readonly double _height;

    private ExplodedFigure(Box box, StandLayout stand, IReadOnlyList<PrintedJoint> places, RowLayout row)
    {
        _box = box;
        var end = row.OriginX + row.Spec.ModuleLength + Near;
        bool InModule(Vector3 p) => p.X <= end;
        _tubes = [.. stand.Members.Where(m => m.Row == row.Number && InModule(m.From) && InModule(m.To))];
        _joints =
        [
            .. places.SelectMany(
                part => part.Joints.Where(j => j.Row == row.Number && InModule(j.At)),
                (part, joint) => (part.Number, joint, part)
            ),
        ];
        // Frames, rails and levels move apart, each by a gap on both sides of every joint.
        _x = Levels(_joints.Where(j => j.Part is { Directions.Count: > 0 }).Select(j => j.Joint.At.X));
        _y = Levels(_joints.Where(j => j.Part.Hanger is null).Select(j => j.Joint.At.Y));
        _z = Levels(_joints.Where(j => j.Part is { Directions.Count: > 0 }).Select(j => j.Joint.At.Z));
        var (wide, deep, high) = (_x[^1] - _x[0], _y[^1] - _y[0], _z[^1] - _z[0]);
        double Gaps(double[] levels) => 2 * Gap * (levels.Length - 1);
        var room = box.Inset(13, 8, 13, 8);
        _scale = Math.Min(
            (room.Width - Gaps(_x) - (DeepRight * Gaps(_y))) / (wide + (DeepRight * deep)),
            (room.Height - Gaps(_z) - (DeepUp * Gaps(_y))) / (high + (DeepUp * deep))
        );
        var width = ((wide + (DeepRight * deep)) * _scale) + Gaps(_x) + (DeepRight * Gaps(_y));
        var height = ((high + (DeepUp * deep)) * _scale) + Gaps(_z) + (DeepUp * Gaps(_y));
        _height = height + 16;
        _origin = new(room.X + ((room.Width - width) / 2), room.Bottom - ((room.Height - height) / 2));
    }

    /// <summary>[mm] Height that the figure takes in a width.</summary>
    public static double Height(double width, StandLayout stand, IReadOnlyList<PrintedJoint> places, RowLayout row) =>
        new ExplodedFigure(new(0, 0, width, MostHeight), stand, places, row)._height;

    /// <summary>Draws the figure of a row that has a stand.</summary>
    public static Group Draw(Box box, StandLayout stand, IReadOnlyList<PrintedJoint> places, RowLayout row) =>
        new ExplodedFigure(box, stand, places, row).Draw();

    private Group Draw()
    {
        List<Element> elements = [];
        List<(Point A, Point B)> lines = [];
        List<Point> clamps = [];
        // The far ones first, so that the near ones pass before them.
        foreach (var tube in _tubes.OrderByDescending(t => t.From.Y + t.To.Y).ThenBy(t => t.From.Z + t.To.Z))
        {
            var (a, b, from, to) = Ends(tube);
            elements.Add(new Line(from, a, Pen.Explain));
            elements.Add(new Line(b, to, Pen.Explain));
            elements.Add(Tube(a, b));
            lines.Add((a, b));
            if (tube.Role is MemberRole.Brace)
            {
                clamps.AddRange([a, b]);
            }
        }

        List<Box> taken = [];
        foreach (var (_, joint, part) in _joints)
        {
            var at = At(joint, part);
            foreach (var way in part.Directions)
            {
                var seen = new Point(way.X + (DeepRight * way.Y), -way.Z - (DeepUp * way.Y));
                elements.Add(new Line(at, at + (seen * (3.2 / Math.Max(seen.Length, 0.3))), Pen.Built));
            }

            elements.Add(
                new Rectangle(
                    new(at.X - 1.4, at.Y - 1.4, 2.8, 2.8),
                    Pen.Thin,
                    part.Directions.Count > 0 ? new(DrawnRole.Ink, FillPattern.Tint) : Fill.Paper
                )
            );
            taken.Add(new(at.X - 1.8, at.Y - 1.8, 3.6, 3.6));
        }

        elements.AddRange(clamps.Select(p => new Circle(p, 1.2, Pen.Thin, Fill.Paper)));
        taken.AddRange(clamps.Select(p => new Box(p.X - 1.4, p.Y - 1.4, 2.8, 2.8)));

        // Each kind of tube is named once, every joint where it is.
        foreach (var alike in _tubes.GroupBy(t => t.Label))
        {
            var spots = alike
                .SelectMany(t => s_along.Select(share => (Ends(t), share)))
                .Select(at => at.Item1.A + ((at.Item1.B - at.Item1.A) * at.share));
            Label(alike.Key, TextStyle.Note.Bold, spots);
        }

        foreach (var (number, joint, part) in _joints)
        {
            Label(number, TextStyle.Small.Bold, [At(joint, part)]);
        }

        foreach (var clamp in clamps)
        {
            Label(StandLayout.ClampNumber, TextStyle.Small.Bold, [clamp]);
        }

        return new(elements) { Class = "figure", Title = Words.Of("sheet.stand.figure") };

        void Label(string text, TextStyle style, IEnumerable<Point> spots)
        {
            var around = spots.SelectMany(p => Around(p, TextMeasure.Width(text, style), style.Size)).ToList();
            bool Clear(Box b) => _box.Holds(b) && !taken.Exists(t => t.Overlaps(b));
            // Clear of tubes and, where there is room, not close on another label.
            var free = around.FindAll(b => Clear(b) && !lines.Exists(l => b.Inset(-1).Crosses(l.A, l.B)));
            var apart = free.Find(b => !taken.Exists(t => t.Overlaps(b.Inset(-1.2))));
            var place = apart.Width > 0 ? apart : free.FirstOrDefault();
            // Where every place beside the tube is taken, the label covers what lies beneath it.
            place = place.Width > 0 ? place : around.Find(Clear);
            if (place.Width > 0)
            {
                taken.Add(place);
                elements.Add(new Rectangle(place, null, Fill.Paper));
                elements.Add(new Text(text, new(place.X, place.Bottom - (0.22 * place.Height)), style));
            }
        }
    }

    private static Polyline Tube(Point a, Point b)
    {
        const double half = 0.8;
        var way = b - a;
        var side = new Point(-way.Y, way.X) * (half / Math.Max(way.Length, 0.1));
        return Polyline.Polygon([a + side, b + side, b - side, a - side], Pen.Thin, Fill.Paper);
    }

    /// <summary>A tube as it is drawn, and the joints from which it was pulled.</summary>
    private (Point A, Point B, Point From, Point To) Ends(StandMember tube)
    {
        if (tube.Role is MemberRole.Rail or MemberRole.Leg or MemberRole.Cross)
        {
            var (from, to) = (Place(tube.From), Place(tube.To));
            var way = to - from;
            var gap = way * (Gap / Math.Max(way.Length, 3 * Gap));
            return (from + gap, to - gap, from, to);
        }

        // Ties and braces hang on the legs' sides: pulled off to the side, as they were clipped on.
        var side = Side(tube);
        var (a, b) = (Place(tube.From), Place(tube.To));
        return (a + side, b + side, a, b);
    }

    private Point At(StandJoint joint, PrintedJoint part)
    {
        var at = Place(joint.At);
        if (part.Kind != PrintedKind.TubeClip)
        {
            return at;
        }

        var tie = _tubes.Find(t => t.From.DistanceTo(joint.At) < Near || t.To.DistanceTo(joint.At) < Near);
        return tie is null ? at : at + (Side(tie) * 0.5);
    }

    /// <summary>Across the row it is pulled to the left, along the row to the back.</summary>
    private static Point Side(StandMember tube) =>
        Math.Abs(tube.To.X - tube.From.X) < Near ? new(-1.6 * Gap, 0) : new(2.2 * Gap * DeepRight, -2.2 * Gap * DeepUp);

    private Point Place(Vector3 p)
    {
        var x = ((p.X - _x[0]) * _scale) + (2 * Gap * Passed(_x, p.X));
        var y = ((p.Y - _y[0]) * _scale) + (2 * Gap * Passed(_y, p.Y));
        var z = ((p.Z - _z[0]) * _scale) + (2 * Gap * Passed(_z, p.Z));
        return new(_origin.X + x + (DeepRight * y), _origin.Y - z - (DeepUp * y));
    }

    /// <summary>Gaps on the way to a place: whole numbers at the levels, in proportion between them.</summary>
    private static double Passed(double[] levels, double at)
    {
        for (var i = 1; i < levels.Length; i++)
        {
            if (at <= levels[i] + Near)
            {
                return i - 1 + Math.Clamp((at - levels[i - 1]) / (levels[i] - levels[i - 1]), 0, 1);
            }
        }

        return levels.Length - 1;
    }

    private static double[] Levels(IEnumerable<double> values)
    {
        List<double> levels = [];
        foreach (var value in values.Order())
        {
            if (levels.Count == 0 || value - levels[^1] > Near)
            {
                levels.Add(value);
            }
        }

        return [.. levels];
    }

    /// <summary>Places for a label beside a point: off its corners, over, under, right, left.</summary>
    private static Box[] Around(Point p, double width, double size)
    {
        var high = size * 1.15;
        const double off = 1.9;
        return
        [
            new(p.X + off, p.Y - high - off + 0.6, width, high),
            new(p.X - width - off, p.Y - high - off + 0.6, width, high),
            new(p.X + off, p.Y + off - 0.6, width, high),
            new(p.X - width - off, p.Y + off - 0.6, width, high),
            new(p.X - (width / 2), p.Y - high - off, width, high),
            new(p.X - (width / 2), p.Y + off, width, high),
            new(p.X + off + 0.5, p.Y - (high / 2), width, high),
            new(p.X - width - off - 0.5, p.Y - (high / 2), width, high),
        ];
    }
}
