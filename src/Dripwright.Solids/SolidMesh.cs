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
            foreach (MeshTriangle t in Triangles)
            {
                (MeshPoint a, MeshPoint b, MeshPoint c) = (Points[t.A], Points[t.B], Points[t.C]);
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

    internal static SolidMesh From(ReadOnlySpan<float> places, ReadOnlySpan<uint> corners)
    {
        var points = new MeshPoint[places.Length / 3];
        for (int i = 0; i < points.Length; i++)
        {
            points[i] = new(places[3 * i], places[(3 * i) + 1], places[(3 * i) + 2]);
        }

        var triangles = new MeshTriangle[corners.Length / 3];
        for (int i = 0; i < triangles.Length; i++)
        {
            triangles[i] = new((int)corners[3 * i], (int)corners[(3 * i) + 1], (int)corners[(3 * i) + 2]);
        }

        return new(points, triangles);
    }
}
