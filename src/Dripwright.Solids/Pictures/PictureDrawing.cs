using System.Numerics;

namespace Dripwright.Solids.Pictures;

/// <summary>
/// Draws a mesh: joins triangles of one plane to faces, finds at a grid of sample points which face lies before which, and
/// puts the faces in an order in which each hides what is behind it.
/// </summary>
internal sealed class PictureDrawing
{
    /// <summary>Sample points across the picture.</summary>
    private const int Samples = 260;

    /// <summary>[-] Edges whose two faces turn by more than this (cosine of 25°) are drawn.</summary>
    private const float Sharp = 0.906f;

    private const float Flat = 0.99999f;

    private static readonly Vector3 s_eye = Vector3.Normalize(new(1, -1, 1));
    private static readonly Vector3 s_right = Vector3.Normalize(Vector3.Cross(Vector3.UnitZ, s_eye));
    private static readonly Vector3 s_up = Vector3.Cross(s_eye, s_right);
    private static readonly Vector3 s_lamp = Vector3.Normalize(new(0.25f, -0.55f, 0.9f));

    private readonly SolidMesh _mesh;
    private readonly Vector3[] _seen;
    private readonly Vector3[] _normals;
    private readonly Dictionary<(int, int), int> _triangleOfEdge = [];
    private readonly int[] _face;

    public PictureDrawing(SolidMesh mesh)
    {
        _mesh = mesh;
        Vector3[] points = [.. mesh.Points.Select(p => new Vector3(p.X, p.Y, p.Z))];
        // x to the right, y up the paper, z towards the eye.
        _seen =
        [
            .. points.Select(p => new Vector3(Vector3.Dot(p, s_right), Vector3.Dot(p, s_up), Vector3.Dot(p, s_eye))),
        ];
        _normals =
        [
            .. mesh.Triangles.Select(t =>
                Vector3.Normalize(Vector3.Cross(points[t.B] - points[t.A], points[t.C] - points[t.A]))
            ),
        ];
        for (var t = 0; t < mesh.Triangles.Count; t++)
        {
            foreach (var edge in EdgesOf(t))
            {
                _triangleOfEdge[edge] = t;
            }
        }

        _face = JoinFaces();
    }

    public PrintPicture Draw(double margin)
    {
        var left = _seen.Min(p => p.X);
        var top = _seen.Max(p => p.Y);
        PicturePoint At(int i) => new(_seen[i].X - left + margin, top - _seen[i].Y + margin);

        var triangles = new List<int>[_face.Max() + 1];
        for (var t = 0; t < _face.Length; t++)
        {
            if (_face[t] >= 0)
            {
                (triangles[_face[t]] ??= []).Add(t);
            }
        }

        List<PictureFace> faces = [];
        foreach (var f in FarFirst(triangles.Length))
        {
            List<(int, int)> outline = [.. triangles[f].SelectMany(EdgesOf).Where(e => _face[Across(e)] != f)];
            faces.Add(
                new(
                    [.. Chain(outline).Select(loop => loop.ConvertAll(At))],
                    [.. outline.Where(IsDrawn).Select(e => (At(e.Item1), At(e.Item2)))],
                    Math.Clamp(Vector3.Dot(_normals[triangles[f][0]], s_lamp), 0, 1)
                )
            );
        }

        return new(_seen.Max(p => p.X) - left + (2 * margin), top - _seen.Min(p => p.Y) + (2 * margin), faces);
    }

    private int Across((int From, int To) edge) => _triangleOfEdge[(edge.To, edge.From)];

    private bool Faces(int triangle) => Vector3.Dot(_normals[triangle], s_eye) > 1e-4f;

    private bool IsDrawn((int, int) edge)
    {
        var other = Across(edge);
        return !Faces(other) || Vector3.Dot(_normals[_triangleOfEdge[edge]], _normals[other]) < Sharp;
    }

    private (int, int)[] EdgesOf(int triangle)
    {
        var t = _mesh.Triangles[triangle];
        return [(t.A, t.B), (t.B, t.C), (t.C, t.A)];
    }

    /// <summary>Number of each triangle's face; -1 where it looks away.</summary>
    private int[] JoinFaces()
    {
        int[] face = [.. Enumerable.Repeat(-1, _mesh.Triangles.Count)];
        var count = 0;
        Stack<int> open = new();
        for (var seed = 0; seed < face.Length; seed++)
        {
            if (face[seed] >= 0 || !Faces(seed))
            {
                continue;
            }

            open.Push(seed);
            face[seed] = count;
            while (open.TryPop(out var t))
            {
                foreach (var next in EdgesOf(t).Select(Across))
                {
                    if (face[next] < 0 && Faces(next) && Vector3.Dot(_normals[seed], _normals[next]) > Flat)
                    {
                        face[next] = count;
                        open.Push(next);
                    }
                }
            }

            count++;
        }

        return face;
    }

    /// <summary>Faces that are seen at some sample point, each after all that it covers there.</summary>
    private List<int> FarFirst(int count)
    {
        var at = SampleDepths();
        var before = new HashSet<int>[count];
        var seen = new bool[count];
        var depth = new (double Sum, int Count)[count];
        foreach (var column in at)
        {
            column.Sort((a, b) => a.Depth.CompareTo(b.Depth));
            for (var i = 0; i < column.Count; i++)
            {
                var near = column[i].Face;
                depth[near] = (depth[near].Sum + column[i].Depth, depth[near].Count + 1);
                // Faces that meet at an edge have no order there.
                if (i > 0 && column[i - 1].Face != near && column[i].Depth - column[i - 1].Depth > 0.02f)
                {
                    (before[near] ??= []).Add(column[i - 1].Face);
                }
            }

            if (column.Count > 0)
            {
                seen[column[^1].Face] = true;
            }
        }

        // A face that covers others waits for them; where faces wait in a ring, the farthest goes first.
        List<int> waiting =
        [
            .. Enumerable.Range(0, count).Where(f => seen[f]).OrderBy(f => depth[f].Sum / depth[f].Count),
        ];
        List<int> order = [];
        HashSet<int> left = [.. waiting];
        while (waiting.Count > 0)
        {
            var ready = waiting.FindIndex(f => before[f] is null || !before[f].Overlaps(left));
            var next = waiting[Math.Max(ready, 0)];
            order.Add(next);
            left.Remove(next);
            waiting.Remove(next);
        }

        return order;
    }

    private List<(float Depth, int Face)>[] SampleDepths()
    {
        var left = _seen.Min(p => p.X);
        var low = _seen.Min(p => p.Y);
        var step = Math.Max(_seen.Max(p => p.X) - left, _seen.Max(p => p.Y) - low) / Samples;
        var at = new List<(float Depth, int Face)>[(Samples + 2) * (Samples + 2)];
        for (var i = 0; i < at.Length; i++)
        {
            at[i] = [];
        }

        for (var t = 0; t < _face.Length; t++)
        {
            if (_face[t] < 0)
            {
                continue;
            }

            var m = _mesh.Triangles[t];
            (var a, var b, var c) = (_seen[m.A], _seen[m.B], _seen[m.C]);
            var area = Turn(a, b, c.X, c.Y);
            int Column(float x, float from) => (int)MathF.Floor((x - from) / step);
            var x1 = Column(MathF.Max(a.X, MathF.Max(b.X, c.X)), left);
            var y1 = Column(MathF.Max(a.Y, MathF.Max(b.Y, c.Y)), low);
            for (var iy = Column(MathF.Min(a.Y, MathF.Min(b.Y, c.Y)), low); iy <= y1; iy++)
            {
                for (var ix = Column(MathF.Min(a.X, MathF.Min(b.X, c.X)), left); ix <= x1; ix++)
                {
                    var x = left + ((ix + 0.5f) * step);
                    var y = low + ((iy + 0.5f) * step);
                    var u = Turn(b, c, x, y) / area;
                    var v = Turn(c, a, x, y) / area;
                    if (u >= 0 && v >= 0 && u + v <= 1)
                    {
                        at[(iy * (Samples + 2)) + ix].Add(((u * a.Z) + (v * b.Z) + ((1 - u - v) * c.Z), _face[t]));
                    }
                }
            }
        }

        return at;
    }

    private static float Turn(Vector3 a, Vector3 b, float x, float y) =>
        ((b.X - a.X) * (y - a.Y)) - ((b.Y - a.Y) * (x - a.X));

    /// <summary>Joins edges to closed loops.</summary>
    private static IEnumerable<List<int>> Chain(List<(int From, int To)> edges)
    {
        var next = edges.ToLookup(e => e.From, e => e.To);
        Dictionary<int, int> taken = [];
        foreach ((var start, _) in edges)
        {
            List<int> loop = [];
            var at = start;
            while (taken.GetValueOrDefault(at) is var used && used < next[at].Count())
            {
                taken[at] = used + 1;
                loop.Add(at);
                at = next[at].ElementAt(used);
            }

            if (loop.Count > 2)
            {
                yield return loop;
            }
        }
    }
}
