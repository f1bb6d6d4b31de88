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
        return MeshCheck.Of(mesh).Sound
            ? mesh
            : throw new InvalidOperationException($"The mesh of a {fitting.Kind} is not closed.");
    }

    /// <summary>What the print takes.</summary>
    /// <param name="fitting">The fitting.</param>
    /// <param name="mesh">Its mesh.</param>
    public static PrintEstimate Estimate(Fitting fitting, SolidMesh mesh) =>
        PrintEstimate.Of(mesh.CubicMillimetres * 1e-9, fitting.Parameters.Plastic, fitting.Parameters.Printer);
}
