namespace Dripwright.Solids;

/// <summary>A point of a mesh.</summary>
/// <param name="X">[mm] To the right on the printer's bed.</param>
/// <param name="Y">[mm] To the back of the bed.</param>
/// <param name="Z">[mm] Up from the bed.</param>
/// <remarks>Single precision, as mesh files carry it: what is checked here is what is printed.</remarks>
public readonly record struct MeshPoint(float X, float Y, float Z);

/// <summary>A triangle of a mesh by the numbers of its corners, counter-clockwise from outside.</summary>
/// <param name="A">First corner.</param>
/// <param name="B">Second corner.</param>
/// <param name="C">Third corner.</param>
public readonly record struct MeshTriangle(int A, int B, int C);

/// <summary>Surface of a solid in triangles, in mm.</summary>
/// <param name="Points">Corners, each once.</param>
/// <param name="Triangles">Triangles.</param>
public sealed record SolidMesh(IReadOnlyList<MeshPoint> Points, IReadOnlyList<MeshTriangle> Triangles)
{
    /// <summary>[mm³] Volume by the divergence theorem, V = Σ a·(b × c)/6 over the triangles; negative when inside out.</summary>
    public double CubicMillimetres
    {
        get
        {
            double six = 0;
            foreach (var t in Triangles)
            {
                (var a, var b, var c) = (Points[t.A], Points[t.B], Points[t.C]);
                six +=
                    (a.X * (((double)b.Y * c.Z) - ((double)b.Z * c.Y)))
                    + (a.Y * (((double)b.Z * c.X) - ((double)b.X * c.Z)))
                    + (a.Z * (((double)b.X * c.Y) - ((double)b.Y * c.X)));
            }

            return six / 6;
        }
    }

    /// <summary>Least coordinates.</summary>
    public MeshPoint Low => new(Points.Min(p => p.X), Points.Min(p => p.Y), Points.Min(p => p.Z));

    /// <summary>Greatest coordinates.</summary>
    public MeshPoint High => new(Points.Max(p => p.X), Points.Max(p => p.Y), Points.Max(p => p.Z));

    /// <summary>A mesh from the kernel's rows, in which points that became one in single precision are joined.</summary>
    internal static SolidMesh From(ReadOnlySpan<float> places, ReadOnlySpan<uint> corners)
    {
        Dictionary<MeshPoint, int> numbers = [];
        List<MeshPoint> points = [];
        var joined = new int[places.Length / 3];
        for (var i = 0; i < joined.Length; i++)
        {
            // Adding 0 turns -0 into 0.
            var point = new MeshPoint(places[3 * i] + 0f, places[(3 * i) + 1] + 0f, places[(3 * i) + 2] + 0f);
            if (!numbers.TryGetValue(point, out joined[i]))
            {
                joined[i] = points.Count;
                numbers.Add(point, joined[i]);
                points.Add(point);
            }
        }

        List<MeshTriangle> triangles = [];
        for (var i = 0; i < corners.Length; i += 3)
        {
            (var a, var b, var c) = (joined[corners[i]], joined[corners[i + 1]], joined[corners[i + 2]]);
            if (a != b && b != c && c != a)
            {
                triangles.Add(new(a, b, c));
            }
        }

        return new(points, triangles);
    }
}
