using System.Runtime.InteropServices;
using Dripwright.Engine.Printed;
using Dripwright.Language;
using Dripwright.Pack;
using Dripwright.Solids;
using Dripwright.Solids.Files;

namespace Dripwright.Workbench.Printed;

/// <summary>A printed part of a rig as the page shows it: what it is, its mesh and its still picture.</summary>
/// <param name="Part">The part.</param>
/// <param name="Mesh">Its mesh as it is printed.</param>
/// <param name="Estimate">What one piece takes.</param>
/// <param name="Still">Its picture as it is used, an SVG.</param>
public sealed record ShownPart(PrintedPart Part, SolidMesh Mesh, PrintEstimate Estimate, string Still)
{
    /// <summary>What it is as a small part that the rig asks for or could ask for; null for a part of the stand.</summary>
    public SmallPart? Small { get; init; }

    /// <summary>True for what the rig could have and does not ask for: it is counted nowhere.</summary>
    public bool IsOffer => Small is { Wanted: false };

    /// <summary>Piece number.</summary>
    public string Number => Part.Number;

    /// <summary>Its shape and how it is printed.</summary>
    public PrintDesign Design => Part.Design;

    /// <summary>How many are printed for the whole rig.</summary>
    public int Count => Part.Count * Design.Pieces;

    /// <summary>Whether another one would be shown alike.</summary>
    public bool IsAs(ShownPart other) =>
        ReferenceEquals(Mesh, other.Mesh)
        && Count == other.Count
        && IsOffer == other.IsOffer
        && Part.Use == other.Part.Use
        && Part.Moment == other.Part.Moment;

    /// <summary>Makes the part. It takes a moment: its solid is computed.</summary>
    /// <param name="part">The part.</param>
    /// <param name="small">What it is as a small part; null for a part of the stand.</param>
    public static ShownPart Of(PrintedPart part, SmallPart? small = null)
    {
        var made = MadeParts.Of(part.Design);
        var still = made.Picture.ToSvg($"{part.Number}, {Words.Of($"printed.{part.Design.Kind}")}");
        return new ShownPart(part, made.Mesh, Meshes.Estimate(part.Design, made.Mesh), still) { Small = small };
    }

    /// <summary>The triangles' corners one after the other, as a browser draws them.</summary>
    /// <param name="asUsed">As it stands in the rig, else as it lies on the printer's bed.</param>
    public byte[] Corners(bool asUsed)
    {
        var points = new float[Mesh.Triangles.Count * 9];
        var at = 0;
        foreach (var triangle in Mesh.Triangles)
        {
            foreach (var corner in new[] { triangle.A, triangle.B, triangle.C })
            {
                var point = Mesh.Points[corner];
                var turned = asUsed
                    ? Design.InUse.Turned(new(point.X, point.Y, point.Z))
                    : new(point.X, point.Y, point.Z);
                points[at++] = (float)turned.X;
                points[at++] = (float)turned.Y;
                points[at++] = (float)turned.Z;
            }
        }

        return MemoryMarshal.AsBytes<float>(points).ToArray();
    }

    /// <summary>The part as a file for the slicer.</summary>
    public byte[] ThreeMf() => ThreeMf([this], Number);

    /// <summary>Several parts as one file.</summary>
    public static byte[] ThreeMf(IReadOnlyList<ShownPart> parts, string title)
    {
        using var target = new MemoryStream();
        ThreeMfFile.Write([.. parts.Select(part => new ThreeMfPart(part.Number, part.Mesh))], title, target);
        return target.ToArray();
    }

    /// <summary>The part as binary STL, in mm.</summary>
    public byte[] Stl()
    {
        using var target = new MemoryStream();
        StlFile.Write(Mesh, target);
        return target.ToArray();
    }
}
