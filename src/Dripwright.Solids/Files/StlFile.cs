using System.Buffers.Binary;
using System.Numerics;

namespace Dripwright.Solids.Files;

/// <summary>Binary STL: 80 bytes of header, a count, 50 bytes a triangle, little-endian. It knows no units; ours are mm.</summary>
public static class StlFile
{
    private const int HeaderLength = 80;
    private const int TriangleLength = 50;

    /// <summary>Writes a mesh.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="target">Stream to write to; stays open.</param>
    public static void Write(SolidMesh mesh, Stream target)
    {
        var header = new byte[HeaderLength + 4];
        // A header that began with "solid" would be taken for the text form.
        "binary stl, mm"u8.CopyTo(header);
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(HeaderLength), (uint)mesh.Triangles.Count);
        target.Write(header);
        Span<byte> row = stackalloc byte[TriangleLength];
        foreach (var t in mesh.Triangles)
        {
            row.Clear();
            (var a, var b, var c) = (At(mesh, t.A), At(mesh, t.B), At(mesh, t.C));
            var normal = Vector3.Cross(b - a, c - a);
            var length = normal.Length();
            Put(row, 0, length > 0 ? normal / length : Vector3.Zero);
            Put(row, 12, a);
            Put(row, 24, b);
            Put(row, 36, c);
            target.Write(row);
        }
    }

    /// <summary>Reads a mesh that <see cref="Write"/> wrote, joining corners in the same place.</summary>
    /// <param name="source">Stream to read from.</param>
    /// <exception cref="InvalidDataException">The stream does not hold a whole binary STL.</exception>
    public static SolidMesh Read(Stream source)
    {
        var header = new byte[HeaderLength + 4];
        if (source.ReadAtLeast(header, header.Length, throwOnEndOfStream: false) < header.Length)
        {
            throw new InvalidDataException("The file ends within its header.");
        }

        var count = BinaryPrimitives.ReadUInt32LittleEndian(header.AsSpan(HeaderLength));
        Dictionary<MeshPoint, int> numbers = [];
        List<MeshPoint> points = [];
        List<MeshTriangle> triangles = [];
        var row = new byte[TriangleLength];
        int Number(int offset)
        {
            float At(int i) => BinaryPrimitives.ReadSingleLittleEndian(row.AsSpan(offset + (4 * i)));
            var point = new MeshPoint(At(0), At(1), At(2));
            if (!numbers.TryGetValue(point, out var number))
            {
                number = points.Count;
                numbers.Add(point, number);
                points.Add(point);
            }

            return number;
        }

        for (uint i = 0; i < count; i++)
        {
            if (source.ReadAtLeast(row, TriangleLength, throwOnEndOfStream: false) < TriangleLength)
            {
                throw new InvalidDataException("The file ends before its last triangle.");
            }

            triangles.Add(new(Number(12), Number(24), Number(36)));
        }

        return new(points, triangles);
    }

    private static Vector3 At(SolidMesh mesh, int i) => new(mesh.Points[i].X, mesh.Points[i].Y, mesh.Points[i].Z);

    private static void Put(Span<byte> row, int offset, Vector3 v)
    {
        BinaryPrimitives.WriteSingleLittleEndian(row[offset..], v.X);
        BinaryPrimitives.WriteSingleLittleEndian(row[(offset + 4)..], v.Y);
        BinaryPrimitives.WriteSingleLittleEndian(row[(offset + 8)..], v.Z);
    }
}
