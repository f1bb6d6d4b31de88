using Dripwright.Engine.Layout;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>One module of a stand pulled apart: frames left and right, rails and ties between them, joints at their places.</summary>
internal static class StandFigure
{
    /// <summary>[mm] Height that the figure asks for.</summary>
    public const double Height = 66;

    /// <summary>Draws the first module of a row.</summary>
    public static Group Draw(Box box, StandLayout stand, RowLayout row)
    {
        var end = row.OriginX + row.Spec.ModuleLength + 1e-6;
        bool InModule(Point3 p) => p.X <= end;
        var members = stand.Members.Where(m => m.Row == row.Number && InModule(m.From) && InModule(m.To)).ToList();
        var joints = stand.Joints.Where(j => j.Row == row.Number && InModule(j.At)).ToList();
        if (members.Count == 0)
        {
            return new([]);
        }

        // Slanted, each direction stretched on its own: it shows what goes where, not how large it is.
        var (y0, y1) = (joints.Min(j => j.At.Y), joints.Max(j => j.At.Y));
        var (z0, z1) = (row.Floor, joints.Max(j => j.At.Z));
        var picture = box.Inset(14, 10, 40, 8);
        Point At(Point3 p) =>
            new(
                picture.X
                    + ((p.X - row.OriginX) / row.Spec.ModuleLength * picture.Width * 0.66)
                    + ((p.Y - y0) / (y1 - y0) * picture.Width * 0.34),
                picture.Bottom
                    - ((p.Z - z0) / (z1 - z0) * picture.Height * 0.62)
                    - ((p.Y - y0) / (y1 - y0) * picture.Height * 0.38)
            );

        List<Element> elements = [];
        foreach (var member in members)
        {
            var (a, b) = (At(member.From), At(member.To));
            var way = b - a;
            // Pulled out of its joints by a few mm at each end.
            var gap = way * (Math.Min(4, way.Length / 4) / Math.Max(way.Length, 0.1));
            elements.Add(new Line(a + gap, b - gap, Pen.Built));
            elements.Add(new Line(a, a + gap, Pen.Centre with { Type = LineType.Continuous }));
            elements.Add(new Line(b - gap, b, Pen.Centre with { Type = LineType.Continuous }));
        }

        elements.AddRange(
            joints
                .Select(j => At(j.At))
                .Select(p => new Rectangle(
                    new(p.X - 1.3, p.Y - 1.3, 2.6, 2.6),
                    Pen.Thin,
                    new(Role.Ink, FillPattern.Tint)
                ))
        );
        elements.AddRange(Labels(members, [.. joints.Select(j => At(j.At))], At, box));
        return new(elements) { Class = "figure", Title = "One module of the stand, pulled apart" };
    }

    private static List<Element> Labels(List<StandMember> members, List<Point> joints, Func<Point3, Point> at, Box box)
    {
        List<Element> elements = [];
        List<Box> taken = [];
        var style = TextStyle.Note.Bold;
        var lines = members.Select(m => (A: at(m.From), B: at(m.To))).ToList();
        bool Free(Box b) =>
            box.Holds(b)
            && !taken.Any(t => t.Overlaps(b))
            && !lines.Exists(l => b.Inset(-0.7).Crosses(l.A, l.B))
            && !joints.Exists(j => b.Inset(-1.6).Crosses(j, j));
        foreach (var alike in members.GroupBy(m => m.Label))
        {
            var width = TextMeasure.Width(alike.Key, style);
            var spots = alike
                .SelectMany(m => Along.Select(t => at(m.From) + ((at(m.To) - at(m.From)) * t)))
                .SelectMany(p => Around(p, width))
                .ToList();
            var place = spots.Find(Free);
            // Where every place beside the tube is taken, the label covers what lies beneath it.
            place = place.Width > 0 ? place : spots.Find(b => box.Holds(b) && !taken.Any(t => t.Overlaps(b)));
            if (place.Width > 0)
            {
                taken.Add(place);
                elements.Add(new Rectangle(place, null, Fill.Paper));
                elements.Add(new Text(alike.Key, new(place.X, place.Bottom - 1), style));
            }
        }

        return elements;
    }

    private static readonly double[] Along = [0.5, 0.35, 0.65, 0.25, 0.75];

    /// <summary>Places for a label beside a point of its tube: over, under, right, left, and off its corners.</summary>
    private static Box[] Around(Point p, double width)
    {
        const double high = 4;
        const double off = 1;
        return
        [
            new(p.X - (width / 2), p.Y - high - off, width, high),
            new(p.X - (width / 2), p.Y + off, width, high),
            new(p.X + off + 0.5, p.Y - (high / 2), width, high),
            new(p.X - width - off - 0.5, p.Y - (high / 2), width, high),
            new(p.X + off, p.Y + off, width, high),
            new(p.X - width - off, p.Y - high - off, width, high),
            new(p.X + off, p.Y - high - off, width, high),
            new(p.X - width - off, p.Y + off, width, high),
        ];
    }
}
