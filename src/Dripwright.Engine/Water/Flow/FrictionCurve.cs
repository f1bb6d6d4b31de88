using System.Runtime.InteropServices;

namespace Dripwright.Engine.Water;

/// <summary>
/// f·Re² against Re for one relative roughness, with what the bridge needs worked out once. Head loss is this times
/// L ν² / (2 g D³), so no division by a vanishing velocity ever happens.
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct FrictionCurve
{
    private const double Width = Friction.TurbulentLimit - Friction.LaminarLimit;
    private const double LaminarEnd = 64 * Friction.LaminarLimit;

    private readonly double _roughnessTerm;
    private readonly double _turbulentStart;
    private readonly double _turbulentSlope;

    public FrictionCurve(double relativeRoughness)
    {
        _roughnessTerm = relativeRoughness / 3.7;
        (_turbulentStart, _turbulentSlope) = Friction.Turbulent(Friction.TurbulentLimit, _roughnessTerm);
    }

    /// <summary>f·Re² and its derivative by Re, for Re ≥ 0.</summary>
    public (double Value, double Slope) At(double reynolds)
    {
        if (reynolds <= Friction.LaminarLimit)
        {
            return (64 * reynolds, 64);
        }

        if (reynolds >= Friction.TurbulentLimit)
        {
            return Friction.Turbulent(reynolds, _roughnessTerm);
        }

        // Hermite's cubic. It rises throughout: with secant slope s, both end slopes are under 3 s (Fritsch & Carlson,
        // SIAM J. Numer. Anal. 17(2), 1980): 64 < s always, and the turbulent end's is at most 1.3 s.
        var s = (reynolds - Friction.LaminarLimit) / Width;
        var rise = _turbulentStart - LaminarEnd;
        var m0 = 64 * Width;
        var m1 = _turbulentSlope * Width;
        var c2 = 3 * rise - 2 * m0 - m1;
        var c3 = m0 + m1 - 2 * rise;
        var value = LaminarEnd + s * (m0 + s * (c2 + s * c3));
        var slope = (m0 + s * (2 * c2 + s * 3 * c3)) / Width;
        return (value, slope);
    }
}
