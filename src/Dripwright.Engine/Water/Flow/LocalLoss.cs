using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>Loss coefficients K of fittings and changes of bore, for h = K V²/2g.</summary>
/// <remarks>
/// Each K belongs to the velocity in one stated bore. Values per fitting are catalogue data; here are only the formulas.
/// Method page: docs/methods/local-losses.md
/// </remarks>
public static class LocalLoss
{
    /// <summary>[-] Water leaving a reservoir through a sharp, flush entrance, on the pipe's velocity. Source: the value
    /// common to most handbooks, e.g. Crane TP-410.</summary>
    public const double SharpEntrance = 0.5;

    /// <summary>[-] Water entering a reservoir under its surface: the whole velocity head is lost.</summary>
    public const double Exit = 1.0;

    private const double MetresPerInch = 0.0254;

    /// <summary>Head lost in a fitting.</summary>
    /// <remarks>h = K V² / 2g.</remarks>
    /// <param name="coefficient">[-] K, not negative.</param>
    /// <param name="velocity">[m/s] Velocity in the bore that K belongs to.</param>
    /// <returns>[m] Head lost, not negative.</returns>
    /// <exception cref="ArgumentOutOfRangeException">K is negative or the velocity is not finite.</exception>
    public static double Head(double coefficient, double velocity)
    {
        Guard.NotNegative(coefficient);
        Guard.Finite(velocity);
        return coefficient * velocity * velocity / (2 * StandardGravity.Value);
    }

    /// <summary>Sudden enlargement, on the velocity in the smaller bore (Borda and Carnot).</summary>
    /// <remarks>K = (1 - (d/D)²)². From momentum; holds for turbulent flow.</remarks>
    /// <param name="smallDiameter">[m] Bore before the step, greater than 0.</param>
    /// <param name="largeDiameter">[m] Bore after the step, not smaller.</param>
    /// <returns>[-] K on the smaller bore's velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A bore is not positive or the larger is smaller.</exception>
    public static double SuddenEnlargement(double smallDiameter, double largeDiameter)
    {
        var areaRatio = AreaRatio(smallDiameter, largeDiameter);
        return (1 - areaRatio) * (1 - areaRatio);
    }

    /// <summary>Sudden contraction, on the velocity in the smaller bore.</summary>
    /// <remarks>
    /// K = 0.5 (1 - (d/D)²). Source: Crane Co., Technical Paper 410 (from memory); turbulent flow.
    /// </remarks>
    /// <param name="smallDiameter">[m] Bore after the step, greater than 0.</param>
    /// <param name="largeDiameter">[m] Bore before the step, not smaller.</param>
    /// <returns>[-] K on the smaller bore's velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A bore is not positive or the larger is smaller.</exception>
    public static double SuddenContraction(double smallDiameter, double largeDiameter) =>
        0.5 * (1 - AreaRatio(smallDiameter, largeDiameter));

    /// <summary>A barbed insert that chokes the hose: contraction and enlargement at the barb's bore.</summary>
    /// <remarks>
    /// K = 0.5 (1 - β²) + (1 - β²)², β = barb bore / hose bore, carried over to the hose's velocity by β⁻⁴. The barb's own
    /// short length is left out. No published table for insert fittings could be found; this is the momentum estimate.
    /// </remarks>
    /// <param name="barbDiameter">[m] Inside bore of the barb, greater than 0.</param>
    /// <param name="hoseDiameter">[m] Inside bore of the hose, not smaller.</param>
    /// <returns>[-] K on the hose's velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A bore is not positive or the barb is the wider.</exception>
    public static double BarbInsert(double barbDiameter, double hoseDiameter) =>
        OnOtherBore(
            SuddenContraction(barbDiameter, hoseDiameter) + SuddenEnlargement(barbDiameter, hoseDiameter),
            barbDiameter,
            hoseDiameter
        );

    /// <summary>Barb of an on-line emitter standing in the bore of a small polyethylene line.</summary>
    /// <remarks>
    /// K = 1.23 IO^0.51, IO = (1/r - 1)², r = free area / full area of the bore. Measured for Re 6000 to 72 000, pipes of 10
    /// to 19.7 mm, barbs that cover 19.7 to 31.6 mm² (R² = 0.956). Source: BIOENG (UNESP), article 19, abstract; that IO
    /// is this expression is from memory.
    /// </remarks>
    /// <param name="blockedArea">[m²] Area the barb covers in the bore, not negative.</param>
    /// <param name="insideDiameter">[m] Inside diameter of the line.</param>
    /// <returns>[-] K on the line's velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The barb covers the whole bore or more, or a value is negative.</exception>
    public static double EmitterBarb(double blockedArea, double insideDiameter)
    {
        Guard.NotNegative(blockedArea);
        Guard.Positive(insideDiameter);
        var area = Math.PI / 4 * insideDiameter * insideDiameter;
        if (blockedArea >= area)
        {
            throw new ArgumentOutOfRangeException(nameof(blockedArea), blockedArea, "The barb covers the whole bore.");
        }

        var index = area / (area - blockedArea) - 1;
        return 1.23 * Math.Pow(index * index, 0.51);
    }

    /// <summary>Two-K loss coefficient, after Hooper.</summary>
    /// <remarks>
    /// K = K₁/Re + K∞ (1 + 1/D), D in inches. Source: W. B. Hooper, Chem. Eng. 88(17), 1981 (pages from memory).
    /// </remarks>
    /// <param name="k1">[-] K₁ of the fitting, not negative.</param>
    /// <param name="kInfinity">[-] K∞ of the fitting, not negative.</param>
    /// <param name="insideDiameter">[m] Inside diameter, greater than 0.</param>
    /// <param name="reynolds">[-] Reynolds number, greater than 0.</param>
    /// <returns>[-] K on the pipe's velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static double TwoK(double k1, double kInfinity, double insideDiameter, double reynolds)
    {
        Guard.NotNegative(k1);
        Guard.NotNegative(kInfinity);
        Guard.Positive(insideDiameter);
        Guard.Positive(reynolds);
        return k1 / reynolds + kInfinity * (1 + MetresPerInch / insideDiameter);
    }

    /// <summary>Three-K loss coefficient, after Darby.</summary>
    /// <remarks>
    /// K = K₁/Re + Kᵢ (1 + K_d / N^0.3), N the nominal size in inches. Source: R. Darby, Chem. Eng. 106(7), 1999
    /// (pages from memory).
    /// </remarks>
    /// <param name="k1">[-] K₁ of the fitting, not negative.</param>
    /// <param name="ki">[-] Kᵢ of the fitting, not negative.</param>
    /// <param name="kd">[in^0.3] K_d of the fitting, not negative.</param>
    /// <param name="nominalInches">[in] Nominal pipe size, greater than 0.</param>
    /// <param name="reynolds">[-] Reynolds number, greater than 0.</param>
    /// <returns>[-] K on the pipe's velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static double ThreeK(double k1, double ki, double kd, double nominalInches, double reynolds)
    {
        Guard.NotNegative(k1);
        Guard.NotNegative(ki);
        Guard.NotNegative(kd);
        Guard.Positive(nominalInches);
        Guard.Positive(reynolds);
        return k1 / reynolds + ki * (1 + kd / Math.Pow(nominalInches, 0.3));
    }

    /// <summary>K from a valve's flow coefficient.</summary>
    /// <remarks>
    /// K = 2 A² Δp / (ρ Kv²) with Δp = 1 bar and ρ = 1000 kg/m³, Kv in m³/s: the definition of Kv (flow of water at 1 bar)
    /// put into h = K V²/2g.
    /// </remarks>
    /// <param name="kvCubicMetresPerHour">[m³/h] Flow at a pressure drop of 1 bar, greater than 0.</param>
    /// <param name="insideDiameter">[m] Bore whose velocity K shall belong to, greater than 0.</param>
    /// <returns>[-] K on that bore's velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not positive.</exception>
    public static double FromKv(double kvCubicMetresPerHour, double insideDiameter)
    {
        Guard.Positive(kvCubicMetresPerHour);
        Guard.Positive(insideDiameter);
        var velocity = kvCubicMetresPerHour / 3600 / (Math.PI / 4 * insideDiameter * insideDiameter);
        return 2 * 100_000.0 / (1000 * velocity * velocity);
    }

    /// <summary>The same loss expressed on the velocity in another bore.</summary>
    /// <remarks>K₂ = K₁ (D₂/D₁)⁴, from continuity.</remarks>
    /// <param name="coefficient">[-] K on the first bore's velocity, not negative.</param>
    /// <param name="fromDiameter">[m] First bore, greater than 0.</param>
    /// <param name="toDiameter">[m] Other bore, greater than 0.</param>
    /// <returns>[-] K on the other bore's velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">K is negative or a bore not positive.</exception>
    public static double OnOtherBore(double coefficient, double fromDiameter, double toDiameter)
    {
        Guard.NotNegative(coefficient);
        Guard.Positive(fromDiameter);
        Guard.Positive(toDiameter);
        var ratio = toDiameter / fromDiameter;
        return coefficient * ratio * ratio * ratio * ratio;
    }

    private static double AreaRatio(double smallDiameter, double largeDiameter)
    {
        Guard.Positive(smallDiameter);
        Guard.Positive(largeDiameter);
        if (largeDiameter < smallDiameter)
        {
            throw new ArgumentOutOfRangeException(nameof(largeDiameter), largeDiameter, "Smaller than the small bore.");
        }

        var ratio = smallDiameter / largeDiameter;
        return ratio * ratio;
    }
}
