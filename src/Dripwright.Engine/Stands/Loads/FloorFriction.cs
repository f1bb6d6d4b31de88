using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Stands.Loads;

/// <summary>How well feet hold on a floor: level force before they slip over what presses.</summary>
/// <remarks>
/// Lower ends, since a floor is dusty and one foot not like the other. Rubber on concrete 0.6 to 0.85 dry and 0.45 to 0.75 wet
/// (handbook tables, as collected by G. Elert, The Physics Factbook); rubber on wet smooth floors 0.3 (physics course of D.
/// Boal, same collection); steel on wet tile 0.2 to 0.3, printed plastic and all else common practice.
/// Method page: docs/methods/stand-frame.md
/// </remarks>
public static class FloorFriction
{
    /// <summary>The friction of a foot on a floor.</summary>
    /// <param name="foot">What touches the floor.</param>
    /// <param name="floor">The floor.</param>
    /// <returns>[-] Level force over pressing force.</returns>
    public static double Of(FootMaterial foot, StandFloor floor) =>
        (foot, floor) switch
        {
            (FootMaterial.Rubber, StandFloor.Concrete or StandFloor.Wood) => 0.6,
            (FootMaterial.Rubber, StandFloor.WetConcrete) => 0.45,
            (FootMaterial.Rubber, StandFloor.WetTile) => 0.3,
            (FootMaterial.Rubber, _) => 0.5,
            (FootMaterial.Printed, StandFloor.Concrete or StandFloor.Ground) => 0.45,
            (FootMaterial.Steel, StandFloor.Concrete or StandFloor.Ground) => 0.4,
            (_, StandFloor.WetTile) => 0.2,
            (FootMaterial.Printed, StandFloor.WetConcrete or StandFloor.Wood) => 0.35,
            _ => 0.3,
        };
}
