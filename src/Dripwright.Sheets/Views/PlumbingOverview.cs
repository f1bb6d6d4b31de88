using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>All runs at a glance: a slanted picture, not to scale, each run with its label and the way of its water.</summary>
internal sealed class PlumbingOverview(Plan plan, Box box)
{
    /// <summary>Rows that are all named.</summary>
    public const int MostNamed = 4;

    private static readonly TextStyle s_style = TextStyle.Note.Bold;
    private readonly RigLayout _layout = plan.Layout;

    /// <summary>The picture.</summary>
    public IEnumerable<Element> Draw()
    {
        var project = Projection();
        var painter = new RunPainter(plan.Rig, project);
        foreach (var element in Tank(project))
        {
            yield return element;
        }

        foreach (var row in _layout.Rows)
        {
            // The row's pots as a plane, so that one sees where the pipes run.
            var (l, r) = (row.OriginX, row.OriginX + row.Length);
            var (f, b) = (row.CentreY - (row.Depth / 2), row.CentreY + (row.Depth / 2));
            yield return Polyline.Polygon(
                [
                    project(new(l, f, row.Base)),
                    project(new(r, f, row.Base)),
                    project(new(r, b, row.Base)),
                    project(new(l, b, row.Base)),
                ],
                Pen.Faint
            );
        }

        var runs = _layout.Runs.ToList();
        foreach (var run in runs)
        {
            yield return painter.Draw(run, fittings: true);
        }

        foreach (var element in Labels(runs, project))
        {
            yield return element;
        }
    }

    /// <summary>The reservoir as an open box, so that one sees the header start in its water.</summary>
    private IEnumerable<Element> Tank(Func<Vector3, Point> project)
    {
        var t = _layout.Tank;
        Point[] Level(double z) =>
            [
                project(new(t.Left, t.Front, z)),
                project(new(t.Right, t.Front, z)),
                project(new(t.Right, t.Back, z)),
                project(new(t.Left, t.Back, z)),
            ];
        var (floor, full, rim) = (Level(t.Floor), Level(t.Full), Level(t.Rim));
        // The box of water in outline: floor, right side, surface.
        yield return Polyline.Polygon(
            [floor[0], floor[1], floor[2], full[2], full[3], full[0]],
            null,
            new(DrawnRole.Water, FillPattern.Tint)
        );
        // Depth runs up to the right: the corner at the back on the left is behind the rest.
        yield return new Polyline([floor[0], floor[3], floor[2]], Pen.Hidden);
        yield return new Line(floor[3], rim[3], Pen.Hidden);
        yield return Polyline.Polygon(full, new(DrawnRole.Water));
        yield return Polyline.Polygon([floor[0], floor[1], rim[1], rim[0]], Pen.Thin);
        yield return Polyline.Polygon([floor[1], floor[2], rim[2], rim[1]], Pen.Thin);
        yield return Polyline.Polygon(rim, Pen.Thin);
    }

    /// <summary>Length to the right, depth slanting up, height up; each stretched so that the picture fills its box.</summary>
    private Func<Vector3, Point> Projection()
    {
        var tank = _layout.Tank;
        List<Vector3> all =
        [
            .. _layout.Runs.SelectMany(r => r.Path),
            new(tank.Left, tank.Front, tank.Floor),
            new(tank.Right, tank.Back, tank.Rim),
        ];
        var (x0, y0, z0) = (all.Min(p => p.X), all.Min(p => p.Y), all.Min(p => p.Z));
        var dx = Math.Max(all.Max(p => p.X) - x0, 0.1);
        var dy = Math.Max(all.Max(p => p.Y) - y0, 0.1);
        var dz = Math.Max(all.Max(p => p.Z) - z0, 0.1);
        // Several rows need depth, a single one height.
        var slant = _layout.Rows.Count == 1 ? 0.15 : Math.Min(0.25 + (0.08 * _layout.Rows.Count), 0.6);
        var (sx, sy, sz) = (box.Width * 0.8 / dx, box.Width * 0.2 / dy, box.Height * (1 - slant) / dz);
        var rise = box.Height * slant / dy;
        return p =>
            new(box.X + ((p.X - x0) * sx) + ((p.Y - y0) * sy), box.Bottom - ((p.Z - z0) * sz) - ((p.Y - y0) * rise));
    }

    private IEnumerable<Element> Labels(List<PipeRun> runs, Func<Vector3, Point> project)
    {
        List<Box> taken = [];
        // Of many rows the first and the last are named: those between would only cover one another.
        bool Named(PipeRun r) => _layout.Rows.Count <= MostNamed || r.Row <= 1 || r.Row == _layout.Rows.Count;
        foreach (var run in runs.Where(Named))
        {
            var tip = project(
                run.At(run.Start + ((run.End - run.Start) * (run.Service == RunService.Feed ? 0.75 : 0.6)))
            );
            var width = TextMeasure.Width(run.Label, s_style);
            foreach (var offset in s_offsets)
            {
                var knee = tip + offset;
                var place = new Box(offset.X >= 0 ? knee.X : knee.X - width - 1, knee.Y - 4, width + 1, 4.6);
                if (!box.Inset(-6).Holds(place) || taken.Any(t => t.Overlaps(place)))
                {
                    continue;
                }

                taken.Add(place);
                yield return Drawing.DimensionLine.Leader(tip, knee, run.Label);
                break;
            }
        }
    }

    private static readonly Point[] s_offsets =
    [
        .. new[] { 5.0, 9, 13, 18, 24 }.SelectMany(d =>
            new Point[]
            {
                new(d * 0.6, -d),
                new(-d * 0.6, -d),
                new(d * 0.6, d),
                new(-d * 0.6, d),
                new(d, -d * 0.5),
                new(-d, d * 0.5),
            }
        ),
    ];
}
