using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Sheets.Model;
using Dimension = Dripwright.Sheets.Drawing.Dimension;

namespace Dripwright.Sheets.Views;

/// <summary>All runs at a glance: a slanted picture, not to scale, each run with its label and the way of its water.</summary>
internal sealed class PlumbingOverview(Plan plan, Box box)
{
    private static readonly TextStyle Style = TextStyle.Note.Bold;
    private readonly RigLayout layout = plan.Layout;

    /// <summary>The picture.</summary>
    public IEnumerable<Element> Draw()
    {
        var project = Projection();
        var painter = new RunPainter(plan.Rig, project);
        yield return Tank(project);
        foreach (var row in layout.Rows)
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

        var runs = layout.Runs.ToList();
        foreach (var run in runs)
        {
            yield return painter.Draw(run, fittings: true);
        }

        foreach (var element in Labels(runs, project))
        {
            yield return element;
        }
    }

    private Polyline Tank(Func<Point3, Point> project)
    {
        var t = layout.Tank;
        return Polyline.Polygon(
            [
                project(new(t.Left, t.Front, t.Rim)),
                project(new(t.Right, t.Front, t.Rim)),
                project(new(t.Right, t.Back, t.Rim)),
                project(new(t.Left, t.Back, t.Rim)),
            ],
            Pen.Thin,
            new(Role.Water, FillPattern.Tint)
        );
    }

    /// <summary>Length to the right, depth slanting up, height up; each stretched so that the picture fills its box.</summary>
    private Func<Point3, Point> Projection()
    {
        var tank = layout.Tank;
        List<Point3> all =
        [
            .. layout.Runs.SelectMany(r => r.Path),
            new(tank.Left, tank.Front, tank.Rim),
            new(tank.Right, tank.Back, tank.Rim),
        ];
        var (x0, y0, z0) = (all.Min(p => p.X), all.Min(p => p.Y), all.Min(p => p.Z));
        var dx = Math.Max(all.Max(p => p.X) - x0, 0.1);
        var dy = Math.Max(all.Max(p => p.Y) - y0, 0.1);
        var dz = Math.Max(all.Max(p => p.Z) - z0, 0.1);
        // Several rows need depth, a single one height.
        var slant = layout.Rows.Count == 1 ? 0.15 : Math.Min(0.25 + (0.08 * layout.Rows.Count), 0.6);
        var (sx, sy, sz) = (box.Width * 0.8 / dx, box.Width * 0.2 / dy, box.Height * (1 - slant) / dz);
        var rise = box.Height * slant / dy;
        return p =>
            new(box.X + ((p.X - x0) * sx) + ((p.Y - y0) * sy), box.Bottom - ((p.Z - z0) * sz) - ((p.Y - y0) * rise));
    }

    private IEnumerable<Element> Labels(List<PipeRun> runs, Func<Point3, Point> project)
    {
        List<Box> taken = [];
        foreach (var run in runs)
        {
            var tip = project(
                run.At(run.Start + ((run.End - run.Start) * (run.Service == RunService.Feed ? 0.75 : 0.6)))
            );
            var width = TextMeasure.Width(run.Label, Style);
            foreach (var offset in Offsets)
            {
                var knee = tip + offset;
                var place = new Box(offset.X >= 0 ? knee.X : knee.X - width - 1, knee.Y - 4, width + 1, 4.6);
                if (!box.Inset(-6).Holds(place) || taken.Any(t => t.Overlaps(place)))
                {
                    continue;
                }

                taken.Add(place);
                yield return Dimension.Leader(tip, knee, run.Label);
                break;
            }
        }
    }

    private static readonly Point[] Offsets =
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
