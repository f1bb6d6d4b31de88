using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>Turns a computed surface into the profile that is handed out.</summary>
internal static class DrainReport
{
    public static DrainProfile Of(DrainRun run, SurfaceLine surface)
    {
        var points = new DrainPoint[surface.Nodes.Length];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = Point(run, surface.Nodes[i], surface.Depths[i]);
        }

        var deepest = 0;
        var stored = 0.0;
        for (var i = 1; i < points.Length; i++)
        {
            deepest = points[i].Depth > points[deepest].Depth ? i : deepest;
            var areas = Area(run, points[i].Depth) + Area(run, points[i - 1].Depth);
            stored += areas / 2 * (points[i].Distance - points[i - 1].Distance);
        }

        return new DrainProfile
        {
            Run = run,
            Points = points,
            Stations = Stations(run, surface.Nodes, points),
            GreatestDepth = points[deepest].Depth,
            GreatestDepthDistance = points[deepest].Distance,
            StoredVolume = stored,
            FullStretches = FullStretches(run, points),
            Jumps = Jumps(surface),
            UniformCapacity =
                run.Roughness > 0 ? PartlyFullPipe.GreatestFlow(run.Diameter, run.Slope, run.Roughness) : 0,
        };
    }

    private static DrainPoint Point(DrainRun run, SurfaceNode node, double depth)
    {
        var invert = run.Slope * (run.Length - node.Distance);
        var area = Area(run, depth);
        if (node.Flow == 0 || area <= 0)
        {
            return new DrainPoint(
                node.Distance,
                invert,
                depth,
                node.Flow,
                0,
                depth > 0 && depth < run.Diameter ? 0 : null
            );
        }

        var velocity = node.Flow / area;
        double? froude =
            depth < run.Diameter
                ? velocity / Math.Sqrt(StandardGravity.Value * area / CircularSection.TopWidth(depth, run.Diameter))
                : null;
        return new DrainPoint(node.Distance, invert, depth, node.Flow, velocity, froude);
    }

    private static double Area(DrainRun run, double depth) =>
        CircularSection.Area(Math.Min(depth, run.Diameter), run.Diameter);

    private static DrainStation[] Stations(DrainRun run, SurfaceNode[] nodes, DrainPoint[] points)
    {
        var stations = new DrainStation[run.Inflows.Count];
        for (var i = 1; i < points.Length; i++)
        {
            if (nodes[i].Inflow < 0)
            {
                continue;
            }

            var below = points[i];
            var depth = Math.Max(below.Depth, points[i - 1].Depth);
            stations[nodes[i].Inflow] = new DrainStation(
                below.Distance,
                run.Inflows[nodes[i].Inflow].Flow,
                depth,
                depth / run.Diameter,
                below.Flow,
                below.Velocity,
                below.Froude,
                below.InvertHeight + depth,
                Math.Max(depth - run.Diameter, 0)
            );
        }

        return stations;
    }

    private static List<DrainStretch> FullStretches(DrainRun run, DrainPoint[] points)
    {
        var stretches = new List<DrainStretch>();
        var start = -1;
        for (var i = 0; i < points.Length; i++)
        {
            var full = points[i].Depth >= run.Diameter;
            if (full && start < 0)
            {
                start = i;
            }
            else if (!full && start >= 0)
            {
                stretches.Add(new DrainStretch(points[start].Distance, points[i - 1].Distance));
                start = -1;
            }
        }

        if (start >= 0)
        {
            stretches.Add(new DrainStretch(points[start].Distance, points[^1].Distance));
        }

        return stretches;
    }

    private static List<double> Jumps(SurfaceLine surface)
    {
        var jumps = new List<double>();
        for (var i = 1; i < surface.Nodes.Length; i++)
        {
            if (surface.IsFast[i - 1] && !surface.IsFast[i])
            {
                jumps.Add(surface.Nodes[i].Distance);
            }
        }

        return jumps;
    }
}
