using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>Allowable strengths of steel tube after AISC 360 (allowable-strength design).</summary>
/// <remarks>
/// Safety factor 1.67. Compression E3: Fe = π²E/(KL/r)², Fcr = 0.658^(Fy/Fe)·Fy while KL/r ≤ 4.71√(E/Fy), else 0.877·Fe.
/// Bending: Fy·S, the elastic modulus in place of the plastic one, on the safe side. Shear G5 of round tube 0.6·Fy·A/2, of
/// square tube 0.6·Fy·Aw. Combined H1-1: P/Pc ≥ 0.2: P/Pc + 8/9·M/Mc, else P/2Pc + M/Mc. From memory; E3 agrees with
/// published values. Walls are taken to be thick enough not to crumple: D/t ≤ 0.07·E/Fy, met by every tube of the catalogue.
/// Method page: docs/methods/stand-checks.md
/// </remarks>
public static class AllowableStrength
{
    /// <summary>[-] Safety factor on strength, Ω of AISC 360.</summary>
    public const double Safety = 1.67;

    /// <summary>Allowable force of a column.</summary>
    /// <param name="section">Section.</param>
    /// <param name="steel">Steel.</param>
    /// <param name="effectiveLength">[m] KL, more than 0.</param>
    /// <returns>[N] Pn/Ω.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is not above 0.</exception>
    public static double Compression(SectionProperties section, Steel steel, double effectiveLength)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(steel);
        Guard.Positive(effectiveLength);
        var slenderness = effectiveLength / Math.Min(section.GyrationY, section.GyrationZ);
        var euler = Math.PI * Math.PI * steel.Young / (slenderness * slenderness);
        var critical =
            slenderness <= 4.71 * Math.Sqrt(steel.Young / steel.Yield)
                ? Math.Pow(0.658, steel.Yield / euler) * steel.Yield
                : 0.877 * euler;
        return critical * section.Area / Safety;
    }

    /// <summary>Allowable pull.</summary>
    /// <param name="section">Section.</param>
    /// <param name="steel">Steel.</param>
    /// <returns>[N] Fy·A/Ω.</returns>
    public static double Tension(SectionProperties section, Steel steel)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(steel);
        return steel.Yield * section.Area / Safety;
    }

    /// <summary>How far bending and axial force together use the tube up.</summary>
    /// <param name="section">Section.</param>
    /// <param name="steel">Steel.</param>
    /// <param name="forces">What the section passes on.</param>
    /// <param name="effectiveLength">[m] KL of the whole tube, more than 0.</param>
    /// <returns>[-] 1 is the limit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is not above 0.</exception>
    public static double Combined(
        SectionProperties section,
        Steel steel,
        SectionForces forces,
        double effectiveLength
    ) => CombinedUnder(section, steel, forces, Compression(section, steel, effectiveLength));

    /// <summary>The same for many sections of a tube whose allowable compression [N] is known.</summary>
    internal static double CombinedUnder(
        SectionProperties section,
        Steel steel,
        SectionForces forces,
        double compression
    )
    {
        var allowed = forces.Axial < 0 ? compression : Tension(section, steel);
        var axial = Math.Abs(forces.Axial) / allowed;
        var y = forces.MomentY / (steel.Yield * section.ModulusY / Safety);
        var z = forces.MomentZ / (steel.Yield * section.ModulusZ / Safety);
        var bending = section.Round ? Math.Sqrt((y * y) + (z * z)) : Math.Abs(y) + Math.Abs(z);
        return axial >= 0.2 ? axial + (8.0 / 9 * bending) : (axial / 2) + bending;
    }

    /// <summary>How far shear and twist use the tube up.</summary>
    /// <param name="section">Section.</param>
    /// <param name="steel">Steel.</param>
    /// <param name="forces">What the section passes on.</param>
    /// <returns>[-] 1 is the limit.</returns>
    public static double Shear(SectionProperties section, Steel steel, SectionForces forces)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(steel);
        var stress = 0.6 * steel.Yield / Safety;
        // The lesser of the half area and the webs, in whichever direction.
        var area = Math.Min(section.Area / 2, Math.Min(section.ShearAreaY, section.ShearAreaZ));
        var across = Math.Sqrt((forces.ShearY * forces.ShearY) + (forces.ShearZ * forces.ShearZ)) / area;
        var radius = section.InertiaY / section.ModulusY;
        return (across + (Math.Abs(forces.Twist) * radius / section.Torsion)) / stress;
    }
}
