namespace Dripwright.Engine.Water;

/// <summary>Darcy friction factor of a round pipe in laminar, transitional and turbulent flow, without a jump.</summary>
/// <remarks>
/// Laminar up to Re 2000, Colebrook from Re 4000, and between them a cubic in f·Re² (which is what head loss is
/// proportional to) that meets both in value and slope and never falls. So head loss is a continuous, rising function of
/// flow with a continuous slope, which the network solver needs. All factors are Darcy's, not Fanning's.
/// Method page: docs/methods/pipe-friction.md
/// </remarks>
public static class Friction
{
    /// <summary>[-] Reynolds number up to which flow is taken as laminar.</summary>
    public const double LaminarLimit = 2000;

    /// <summary>[-] Reynolds number from which flow is taken as fully turbulent.</summary>
    public const double TurbulentLimit = 4000;

    /// <summary>[-] Largest wall roughness over inside diameter for which Colebrook's equation was made.</summary>
    public const double LargestRelativeRoughness = 0.05;

    private const double HighestReynolds = 1e9;
    private const double LogFactor = 0.86858896380650365530; // 2 / ln 10

    /// <summary>Darcy friction factor in any regime.</summary>
    /// <remarks>
    /// 64/Re, Colebrook, or the bridge between them. Holds for 0 &lt; Re ≤ 10⁹ and 0 ≤ ε/D ≤ 0.05. Between Re 2000 and
    /// 4000 real pipes wander between the two curves: the value there is a fair middle, no more.
    /// </remarks>
    /// <param name="reynolds">[-] Reynolds number on the inside diameter.</param>
    /// <param name="relativeRoughness">[-] Wall roughness over inside diameter.</param>
    /// <returns>[-] Darcy friction factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    /// <example>Re = 10⁵, ε/D = 10⁻⁴ gives 0.0185139.</example>
    public static double DarcyFactor(double reynolds, double relativeRoughness)
    {
        Guard.Positive(reynolds);
        Guard.Between(reynolds, 0, HighestReynolds);
        Guard.Between(relativeRoughness, 0, LargestRelativeRoughness);
        return new FrictionCurve(relativeRoughness).At(reynolds).Value / (reynolds * reynolds);
    }

    /// <summary>Laminar Darcy factor, after Hagen and Poiseuille.</summary>
    /// <remarks>f = 64/Re. Holds for 0 &lt; Re ≤ 2000; an exact consequence of Newton's law of viscosity.</remarks>
    /// <param name="reynolds">[-] Reynolds number on the inside diameter.</param>
    /// <returns>[-] Darcy friction factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Re is not in the range above.</exception>
    public static double Laminar(double reynolds)
    {
        Guard.Positive(reynolds);
        Guard.Between(reynolds, 0, LaminarLimit);
        return 64 / reynolds;
    }

    /// <summary>Turbulent Darcy factor, after Colebrook, solved to machine precision.</summary>
    /// <remarks>
    /// 1/√f = -2 log₁₀(ε/(3.7 D) + 2.51/(Re √f)). Holds for 4000 ≤ Re ≤ 10⁹ and 0 ≤ ε/D ≤ 0.05. Newton's method on 1/√f
    /// from Haaland's explicit value. Source: C. F. Colebrook, J. Inst. Civ. Eng. 11, 1939, pp. 133-156 (pages from
    /// memory); start: S. E. Haaland, J. Fluids Eng. 105(1), 1983, p. 89 (from memory).
    /// </remarks>
    /// <param name="reynolds">[-] Reynolds number on the inside diameter.</param>
    /// <param name="relativeRoughness">[-] Wall roughness over inside diameter.</param>
    /// <returns>[-] Darcy friction factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double Colebrook(double reynolds, double relativeRoughness)
    {
        Guard.Between(reynolds, TurbulentLimit, HighestReynolds);
        Guard.Between(relativeRoughness, 0, LargestRelativeRoughness);
        return Turbulent(reynolds, relativeRoughness / 3.7).Value / (reynolds * reynolds);
    }

    /// <summary>f·Re² and its derivative by Re in turbulent flow; the argument is ε/(3.7 D).</summary>
    internal static (double Value, double Slope) Turbulent(double reynolds, double roughnessTerm)
    {
        var inverse = 1 / reynolds;
        var roughPart = roughnessTerm > 0 ? Math.Pow(roughnessTerm, 1.11) : 0;
        var x = -0.9 * LogFactor * Math.Log(roughPart + 6.9 * inverse);
        var b = 2.51 * inverse;
        // Haaland is within 2 %; each Newton step squares a much smaller error. Two reach 1e-13, a third costs little.
        for (var step = 0; step < 3; step++)
        {
            var u = roughnessTerm + b * x;
            var error = x + LogFactor * Math.Log(u);
            x -= error / (1 + LogFactor * b / u);
        }

        var root = reynolds / x;
        var value = root * root;
        var c = LogFactor * b / (roughnessTerm + b * x);
        // From implicit differentiation of Colebrook: d(f Re²)/dRe = (2 f Re² / Re) / (1 + c).
        return (value, 2 * value * inverse / (1 + c));
    }
}
