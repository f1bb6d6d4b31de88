using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Wires;

/// <summary>Whose figure a crop's load on the wire follows.</summary>
public enum CropLoadBasis
{
    /// <summary>What a loaded plant weighs.</summary>
    Plant,

    /// <summary>A standard's load per floor area.</summary>
    Area,
}

/// <summary>What one plant is counted with on the wire.</summary>
/// <param name="Force">[N] Its pull.</param>
/// <param name="Basis">Which figure was the larger and so was taken.</param>
/// <param name="ByPlant">[N] From what a loaded plant weighs.</param>
/// <param name="ByArea">[N] From the load per area and the floor that belongs to the plant.</param>
public sealed record PlantLoad(double Force, CropLoadBasis Basis, double ByPlant, double ByArea);

/// <summary>Load of a hanging crop. What a plant weighs and a standard's load per area stand in the catalogue's row of the crop.</summary>
public static class CropLoad
{
    /// <summary>What one plant is counted with: the larger of its own weight and the standard's load on its floor.</summary>
    /// <param name="plantMass">[kg] A loaded plant, 0 or more.</param>
    /// <param name="floorPerPlant">[m²] Floor that belongs to the plant, aisle counted half, 0 or more.</param>
    /// <param name="areaLoad">[Pa] Load per floor area, 0 or more.</param>
    /// <returns>The load and whose figure it is.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative.</exception>
    public static PlantLoad Of(double plantMass, double floorPerPlant, double areaLoad)
    {
        var byPlant = Guard.NotNegative(plantMass) * StandardGravity.Value;
        var byArea = Guard.NotNegative(floorPerPlant) * Guard.NotNegative(areaLoad);
        return byArea > byPlant
            ? new PlantLoad(byArea, CropLoadBasis.Area, byPlant, byArea)
            : new PlantLoad(byPlant, CropLoadBasis.Plant, byPlant, byArea);
    }
}
