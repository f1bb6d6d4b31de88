using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Stand, reservoir and floor as front and end view show them.</summary>
/// <param name="view">Level direction to the right, height up.</param>
/// <param name="level">The level direction of a place in the room.</param>
internal sealed class SideParts(View view, Func<Vector3, double> level)
{
    /// <summary>Tubes and printed joints, the same place drawn once.</summary>
    public Group Stand(StandLayout stand, Func<StandMember, bool> members, Func<StandJoint, bool> joints)
    {
        var seen = new HashSet<(double, double, double, double)>();
        var elements = new List<Element>();
        foreach (var member in stand.Members.Where(members))
        {
            var (a, b) = (view[level(member.From), member.From.Z], view[level(member.To), member.To.Z]);
            if (seen.Add((Math.Round(a.X, 2), Math.Round(a.Y, 2), Math.Round(b.X, 2), Math.Round(b.Y, 2))))
            {
                elements.Add(Tube(a, b, view.Length(stand.Tube.Outside)));
            }
        }

        // A hanger reaches from its tube to the pipe.
        foreach (var hanger in stand.Hangers.Where(h => joints(new(StandLayout.Hanger, h.Row, h.At))))
        {
            var (a, b) = (view[level(hanger.At), hanger.At.Z], view[level(hanger.Pipe), hanger.Pipe.Z]);
            if (
                (b - a).Length > 1
                && seen.Add((Math.Round(a.X, 2), Math.Round(a.Y, 2), Math.Round(b.X, 2), Math.Round(b.Y, 2)))
            )
            {
                elements.Add(new Line(a, b, Pen.Built));
            }
        }

        var size = Math.Max(view.Length(stand.Tube.Outside) * 1.5, 1);
        foreach (var joint in stand.Joints.Where(joints))
        {
            var at = view[level(joint.At), joint.At.Z];
            if (seen.Add((Math.Round(at.X, 2), Math.Round(at.Y, 2), 0, 0)))
            {
                elements.Add(
                    new Rectangle(
                        new(at.X - (size / 2), at.Y - (size / 2), size, size),
                        Pen.Thin,
                        new(DrawnRole.Ink, FillPattern.Tint)
                    )
                );
            }
        }

        return new(elements) { Class = "stand", Title = Words.Of("sheet.stand.title") };
    }

    /// <summary>The reservoir with its water.</summary>
    public Group Tank(TankPlace tank, double from, double to)
    {
        var box = view.Box(from, tank.Floor, to - from, tank.Rim - tank.Floor);
        var full = view[0, tank.Full].Y;
        var lowest = view[0, tank.Lowest].Y;
        return new([
            new Rectangle(box, null, Fill.Paper),
            new Rectangle(new(box.X, full, box.Width, box.Bottom - full), null, Fill.StandingWater),
            new Rectangle(box, Pen.Built),
            new Line(new(box.X, full), new(box.Right, full), new Pen(DrawnRole.Water)),
            new Line(new(box.X, lowest), new(box.Right, lowest), new Pen(DrawnRole.Water, Type: LineType.Dashed)),
        ])
        {
            Id = "reservoir",
            Class = "reservoir",
            Title = Words.Of("sheet.reservoir"),
        };
    }

    /// <summary>The pump in the reservoir.</summary>
    public Group Pump(TankPlace tank)
    {
        var outlet = view[level(tank.PumpOutlet), tank.PumpOutlet.Z];
        return new([
            new Circle(outlet, 1.8, Pen.Thin, Fill.Paper),
            Polyline.Polygon(
                [outlet.Move(0, -1.8), outlet.Move(1.5, 0.9), outlet.Move(-1.5, 0.9)],
                null,
                new(DrawnRole.Water)
            ),
        ])
        {
            Id = "pump",
            Class = "pump",
            Title = Words.Of("sheet.plan.pump"),
        };
    }

    /// <summary>The floor, with the short strokes of ground below it.</summary>
    public IEnumerable<Element> Floor(double from, double to, double height)
    {
        var (a, b) = (view[from, height], view[to, height]);
        yield return new Line(a, b, Pen.Thin);
        for (var x = a.X + 2; x < b.X; x += 6)
        {
            yield return new Line(new(x, a.Y), new(x - 1.6, a.Y + 1.6), Pen.Explain);
        }
    }

    /// <summary>Heights of the reservoir and its water.</summary>
    public static (double Height, string Name)[] TankHeights(TankPlace tank) =>
        [
            (0, Words.Of("sheet.height.floor")),
            .. Math.Abs(tank.Floor) > 1e-6 ? new[] { (tank.Floor, Words.Of("sheet.height.tank-floor")) } : [],
            (tank.Lowest, Words.Of("sheet.height.lowest")),
            (tank.Full, Words.Of("sheet.height.full")),
            (tank.Rim, Words.Of("sheet.height.rim")),
            (tank.Mouth.Z, Words.Of("sheet.height.outlet")),
        ];

    /// <summary>[mm] Room that heights need beyond their dimension line.</summary>
    public static double HeightsRoom(IReadOnlyList<(double Height, string Name)> heights, Wording words) =>
        5.2 + Texts(heights, words).Max(t => TextMeasure.Width(t, TextStyle.Note));

    private static IEnumerable<string> Texts(IReadOnlyList<(double Height, string Name)> heights, Wording words)
    {
        var sorted = Merged(heights, words);
        return sorted.Select(h => $"{words.Mark(h.Height - sorted[0].Height)} {h.Name}");
    }

    /// <summary>Heights running up from the lowest of them.</summary>
    /// <param name="heights">[m] Heights with their names; the lowest is 0.</param>
    /// <param name="level">[m] Where their extension lines begin.</param>
    /// <param name="x">[mm] Where the dimension line stands.</param>
    /// <param name="right">Texts to the right of the line.</param>
    /// <param name="words">Figures.</param>
    /// <param name="drawn">[m] Where a height is drawn; at its own place where null.</param>
    public Group Heights(
        IReadOnlyList<(double Height, string Name)> heights,
        double level,
        double x,
        bool right,
        Wording words,
        Func<double, double>? drawn = null
    )
    {
        var sorted = Merged(heights, words);
        return DimensionLine.VerticalRunning(
            [.. sorted.Select(h => view[level, drawn?.Invoke(h.Height) ?? h.Height])],
            x,
            [.. Texts(heights, words)],
            right
        );
    }

    // Heights that read alike share a line.
    private static List<(double Height, string Name)> Merged(
        IReadOnlyList<(double Height, string Name)> heights,
        Wording words
    )
    {
        List<(double Height, string Name)> merged = [];
        foreach (var height in heights.OrderBy(h => h.Height))
        {
            if (merged.Count > 0 && words.Mark(merged[^1].Height) == words.Mark(height.Height))
            {
                merged[^1] = (merged[^1].Height, merged[^1].Name + ", " + height.Name);
            }
            else
            {
                merged.Add(height);
            }
        }

        if (merged.Count == 1)
        {
            merged.Add((merged[0].Height + 0.001, ""));
        }

        return merged;
    }

    private static Element Tube(Point a, Point b, double outside)
    {
        var way = b - a;
        // A tube seen from its end.
        if (way.Length < 0.1)
        {
            return new Circle(a, Math.Max(outside / 2, 0.5), Pen.Thin, Fill.Paper);
        }

        if (outside < 0.7)
        {
            return new Line(a, b, Pen.Thin);
        }

        var half = new Point(-way.Y, way.X) * (outside / 2 / way.Length);
        return Polyline.Polygon([a + half, b + half, b - half, a - half], Pen.Thin, Fill.Paper);
    }
}
