using System.Runtime.InteropServices;
using Dripwright.Engine;
using Dripwright.Engine.Fittings;
using Dripwright.Solids;
using Dripwright.Solids.Files;
using Dripwright.Solids.Pictures;

namespace Dripwright.Workbench.Printed;

/// <summary>A printed part of a rig's stand: where it goes, how it is printed, its mesh and its still picture.</summary>
/// <param name="Place">The joints it serves.</param>
/// <param name="Fitting">The part.</param>
/// <param name="Mesh">Its mesh as it is printed.</param>
/// <param name="Estimate">What one takes.</param>
/// <param name="Still">Its picture as it is used, an SVG.</param>
internal sealed record PrintedPart(
    StandFitting Place,
    Fitting Fitting,
    SolidMesh Mesh,
    PrintEstimate Estimate,
    string Still
)
{
    /// <summary>How many are printed for the whole rig.</summary>
    public int Count => Place.Joints.Count * Fitting.Pieces;

    /// <summary>Parameters of a part of this plan's stand.</summary>
    public static FittingParameters Parameters(Plan plan, StandFitting place) =>
        new()
        {
            Number = place.Number,
            TubeShape = plan.Layout.Stand.Tube.Shape,
            TubeOutside = plan.Layout.Stand.Tube.Outside,
            Sockets = place.Directions.Count > 1 ? place.Directions : null,
            JointCentre = place.Directions.Count > 1 ? plan.Rig.Stand.JointCentre : null,
        };

    /// <summary>Makes the part. It takes a moment: its solid is computed.</summary>
    /// <exception cref="FittingException">It cannot be made for this tube.</exception>
    public static PrintedPart Of(Plan plan, StandFitting place)
    {
        var fitting = FittingShop.For(place.Kind, Parameters(plan, place));
        var mesh = Meshes.Of(fitting);
        var still = FittingPicture.InUse(fitting, mesh).ToSvg($"{place.Number}, {Words.Of($"printed.{place.Kind}")}");
        return new PrintedPart(place, fitting, mesh, Meshes.Estimate(fitting, mesh), still);
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
                    ? Fitting.InUse.Turned(new(point.X, point.Y, point.Z))
                    : new(point.X, point.Y, point.Z);
                points[at++] = (float)turned.X;
                points[at++] = (float)turned.Y;
                points[at++] = (float)turned.Z;
            }
        }

        return MemoryMarshal.AsBytes<float>(points).ToArray();
    }

    /// <summary>The part as a file for the slicer.</summary>
    public byte[] ThreeMf() => ThreeMf([this], Place.Number);

    /// <summary>Several parts as one file.</summary>
    public static byte[] ThreeMf(IReadOnlyList<PrintedPart> parts, string title)
    {
        using var target = new MemoryStream();
        ThreeMfFile.Write([.. parts.Select(part => new ThreeMfPart(part.Place.Number, part.Mesh))], title, target);
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
