using System.Text;
using System.Text.Json;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Solids;

/// <summary>Writes the description of a solid as the kernel's script reads it, lengths in mm.</summary>
internal static class SolidText
{
    private const double Millimetres = 1000;

    public static string Of(Solid solid)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
        {
            Write(writer, solid);
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Write(Utf8JsonWriter writer, Solid solid)
    {
        writer.WriteStartObject();
        switch (solid)
        {
            case Extrusion extrusion:
                writer.WriteString("kind", "extrusion");
                writer.WriteStartArray("loops");
                foreach (var loop in extrusion.Loops)
                {
                    Write(writer, loop.Corners);
                }

                writer.WriteEndArray();
                writer.WriteNumber("height", extrusion.Height * Millimetres);
                break;
            case Taper taper:
                writer.WriteString("kind", "taper");
                writer.WritePropertyName("base");
                Write(writer, taper.Base.Corners);
                writer.WriteNumber("height", taper.Height * Millimetres);
                writer.WriteNumber("scale", taper.TopScale);
                break;
            case Lathe lathe:
                writer.WriteString("kind", "lathe");
                writer.WritePropertyName("outline");
                Write(writer, [.. lathe.Outline.Corners.Select(c => c with { X = c.X * lathe.CornerScale })]);
                writer.WriteNumber("sides", lathe.Sides);
                break;
            case Hull hull:
                writer.WriteString("kind", "hull");
                Write(writer, "parts", hull.Parts);
                break;
            case Moved moved:
                writer.WriteString("kind", "moved");
                writer.WritePropertyName("part");
                Write(writer, moved.Part);
                Write(writer, moved.Where);
                break;
            case Union union:
                writer.WriteString("kind", "union");
                Write(writer, "parts", union.Parts);
                break;
            case Difference difference:
                writer.WriteString("kind", "difference");
                writer.WritePropertyName("from");
                Write(writer, difference.From);
                Write(writer, "cuts", difference.Cuts);
                break;
            default:
                throw new ArgumentException($"{solid.GetType().Name} is not known to the kernel.", nameof(solid));
        }

        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, string name, IReadOnlyList<Solid> solids)
    {
        writer.WriteStartArray(name);
        foreach (var solid in solids)
        {
            Write(writer, solid);
        }

        writer.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter writer, IReadOnlyList<Corner> corners)
    {
        writer.WriteStartArray();
        foreach (var corner in corners)
        {
            writer.WriteStartArray();
            writer.WriteNumberValue(corner.X * Millimetres);
            writer.WriteNumberValue(corner.Y * Millimetres);
            writer.WriteEndArray();
        }

        writer.WriteEndArray();
    }

    /// <summary>A 4 x 4 matrix by columns.</summary>
    private static void Write(Utf8JsonWriter writer, Placement where)
    {
        writer.WriteStartArray("matrix");
        foreach (
            (var column, var last) in new[]
            {
                (where.X, 0.0),
                (where.Y, 0.0),
                (where.Z, 0.0),
                (Millimetres * where.Origin, 1.0),
            }
        )
        {
            writer.WriteNumberValue(column.X);
            writer.WriteNumberValue(column.Y);
            writer.WriteNumberValue(column.Z);
            writer.WriteNumberValue(last);
        }

        writer.WriteEndArray();
    }
}
