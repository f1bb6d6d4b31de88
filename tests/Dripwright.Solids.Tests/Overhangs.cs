using System.Numerics;

namespace Dripwright.Solids.Tests;

/// <summary>Finds what a printer would lay into the air.</summary>
internal static class Overhangs
{
    /// <summary>[mm] Spans of the regions that lean over by more than 45°, each the shorter side of its outline from above.</summary>
    public static IReadOnlyList<double> Of(SolidMesh mesh)
    {
        var leaning = new Dictionary<int, Vector3>();
        for (var t = 0; t < mesh.Triangles.Count; t++)
        {
            (var a, var b, var c) = Corners(mesh, t);
            var cross = Vector3.Cross(b - a, c - a);
            var onBed = Math.Max(a.Z, Math.Max(b.Z, c.Z)) < 0.01;
            if (!onBed && cross.Z < -0.7075f * cross.Length())
            {
                leaning[t] = cross;
            }
        }

        Dictionary<(int, int), int> owner = [];
        foreach (var t in leaning.Keys)
        {
            foreach (var edge in Edges(mesh, t))
            {
                owner[edge] = t;
            }
        }

        List<double> spans = [];
        HashSet<int> done = [];
        foreach (var seed in leaning.Keys)
        {
            if (!done.Add(seed))
            {
                continue;
            }

            List<int> region = [];
            Stack<int> open = new([seed]);
            while (open.TryPop(out var t))
            {
                region.Add(t);
                foreach ((var from, var to) in Edges(mesh, t))
                {
                    if (owner.TryGetValue((to, from), out var next) && done.Add(next))
                    {
                        open.Push(next);
                    }
                }
            }

            spans.Add(
                Span([
                    .. region.SelectMany(t =>
                    {
                        var (a, b, c) = Corners(mesh, t);
                        return new[] { a, b, c };
                    }),
                ])
            );
        }

        return spans;
    }

    /// <summary>Least width of the points seen from above, over directions in steps of one degree.</summary>
    private static double Span(Vector3[] points) =>
        Enumerable
            .Range(0, 180)
            .Select(degrees => degrees * Math.PI / 180)
            .Min(angle =>
            {
                var along = points.Select(p => (p.X * Math.Cos(angle)) + (p.Y * Math.Sin(angle)));
                return along.Max() - along.Min();
            });

    private static (int, int)[] Edges(SolidMesh mesh, int t)
    {
        var m = mesh.Triangles[t];
        return [(m.A, m.B), (m.B, m.C), (m.C, m.A)];
    }

    private static (Vector3 A, Vector3 B, Vector3 C) Corners(SolidMesh mesh, int t)
    {
        Vector3 At(int i) => new(mesh.Points[i].X, mesh.Points[i].Y, mesh.Points[i].Z);
        var m = mesh.Triangles[t];
        return (At(m.A), At(m.B), At(m.C));
    }
}
