using System.Globalization;
using Dripwright.Engine.Fittings;

namespace Dripwright.Solids;

/// <summary>Meshes of fittings.</summary>
public static class Meshes
{
    /// <summary>The mesh of a fitting as it lies on the printer's bed.</summary>
    /// <param name="fitting">The fitting, from <see cref="FittingShop"/>.</param>
    /// <returns>A closed mesh in mm.</returns>
    /// <exception cref="InvalidOperationException">The mesh is not the surface of a solid: a fault of ours.</exception>
    public static SolidMesh Of(Fitting fitting)
    {
        SolidMesh mesh = SolidKernel.Shared.MeshOf(fitting.Shape);
        var check = MeshCheck.Of(mesh);
        return check.Sound
            ? mesh
            : throw new InvalidOperationException(
                string.Create(CultureInfo.InvariantCulture, $"The mesh of a {fitting.Kind} is not sound: {check}.")
            );
    }

    /// <summary>What the print takes.</summary>
    /// <param name="fitting">The fitting.</param>
    /// <param name="mesh">Its mesh.</param>
    public static PrintEstimate Estimate(Fitting fitting, SolidMesh mesh) =>
        PrintEstimate.Of(mesh.CubicMillimetres * 1e-9, fitting.Parameters.Plastic, fitting.Parameters.Printer);
}
