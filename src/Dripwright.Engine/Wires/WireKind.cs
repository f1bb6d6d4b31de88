namespace Dripwright.Engine.Wires;

/// <summary>What a crop wire is made of.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">What a grower asks for in the shop.</param>
/// <param name="Stiffness">[N] Axial stiffness, modulus times steel area, over 0.</param>
/// <param name="Weight">[N/m] Its own weight, over 0: an empty wire without weight would have no shape.</param>
/// <param name="BreakingForce">[N] Least breaking force, over 0.</param>
/// <param name="Source">Where the values come from.</param>
public sealed record WireKind(
    string Key,
    string Name,
    double Stiffness,
    double Weight,
    double BreakingForce,
    string Source
);
