namespace Dripwright.Engine.Stands.Sections;

/// <summary>What a cross-section does to a straight member. Local y and z lie across the member.</summary>
/// <param name="Area">[m²] Area.</param>
/// <param name="InertiaY">[m⁴] Second moment of area about local y (bending in the x-z plane).</param>
/// <param name="InertiaZ">[m⁴] Second moment of area about local z (bending in the x-y plane).</param>
/// <param name="ModulusY">[m³] Elastic section modulus about local y.</param>
/// <param name="ModulusZ">[m³] Elastic section modulus about local z.</param>
/// <param name="Torsion">[m⁴] Torsion constant.</param>
/// <param name="ShearAreaY">[m²] Area that shears along local y; infinite where shear is left out.</param>
/// <param name="ShearAreaZ">[m²] Area that shears along local z; infinite where shear is left out.</param>
/// <param name="Round">True where bending about two axes at once adds as a vector.</param>
public sealed record SectionProperties(
    double Area,
    double InertiaY,
    double InertiaZ,
    double ModulusY,
    double ModulusZ,
    double Torsion,
    double ShearAreaY,
    double ShearAreaZ,
    bool Round
)
{
    /// <summary>[m] Radius of gyration about local y, √(I/A).</summary>
    public double GyrationY => Math.Sqrt(InertiaY / Area);

    /// <summary>[m] Radius of gyration about local z, √(I/A).</summary>
    public double GyrationZ => Math.Sqrt(InertiaZ / Area);

    /// <summary>The same section that bends but does not shear.</summary>
    public SectionProperties WithoutShear() =>
        this with
        {
            ShearAreaY = double.PositiveInfinity,
            ShearAreaZ = double.PositiveInfinity,
        };
}
