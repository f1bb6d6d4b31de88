using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Solids;

/// <summary>Meshes of fittings.</summary>
public static class Meshes
{
    /// <summary>The mesh of a fitting as it lies on the printer's bed.</summary>
    /// <param name="fitting">The fitting, from <see cref="PrintDesigner"/>.</param>
    /// <returns>A closed mesh in mm.</returns>
    /// <exception cref="InvalidOperationException">The mesh is not the surface of a solid: a fault of ours.</exception>
    public static SolidMesh Of(PrintDesign fitting)
    {
        var mesh = SolidKernel.Shared.MeshOf(fitting.Shape);
        var check = MeshCheck.Of(mesh);
        return check.Sound
            ? mesh
            : throw new InvalidOperationException(
                string.Create(CultureInfo.InvariantCulture, $"The mesh of a {fitting.Kind} is not sound: {check}.")
            );
    }

    /// <summary>A sign that two solids share where they are one shape, and no others do.</summary>
    /// <param name="solid">The description of the solid.</param>
    /// <returns>64 hexadecimal digits.</returns>
    public static string SignOf(Solid solid) =>
        Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(SolidText.Of(solid))));

    /// <summary>What the print takes.</summary>
    /// <param name="fitting">The fitting.</param>
    /// <param name="mesh">Its mesh.</param>
    public static PrintEstimate Estimate(PrintDesign fitting, SolidMesh mesh) =>
        PrintEstimate.Of(mesh.CubicMillimetres * 1e-9, fitting.Parameters.Plastic, fitting.Parameters.Printer);
}
