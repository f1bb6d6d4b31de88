namespace Dripwright.Engine.Water;

/// <summary>Loss of a small valve that is partly open.</summary>
public static class ValveOpening
{
    /// <summary>[-] Openings smaller than this are taken as shut: no hand can set them.</summary>
    public const double Least = 1e-3;

    /// <summary>[-] The opening that counts: 0 for one too small to set.</summary>
    /// <param name="opening">[-] As stated, 0 to 1.</param>
    public static double Effective(double opening) => opening < Least ? 0 : opening;

    /// <summary>[-] Loss coefficient on the pipe's velocity.</summary>
    /// <remarks>
    /// The opening is taken as a sharp hole with that share of the bore's area: K = K_open + (1/(c·a) - 1)² with the jet's
    /// contraction c = 0.62 + 0.38 a³ (J. Weisbach's table as a fit, from memory). A hand valve is no instrument: read the
    /// result as a direction, and set the valve by a catch test.
    /// </remarks>
    /// <param name="fullyOpen">[-] K of the open valve.</param>
    /// <param name="opening">[-] Share of the area, from <see cref="Least"/> to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The opening is not in its range.</exception>
    public static double LossCoefficient(double fullyOpen, double opening)
    {
        Guard.NotNegative(fullyOpen);
        Guard.Between(opening, Least, 1);
        var contraction = 0.62 + (0.38 * opening * opening * opening);
        var jet = (1 / (contraction * opening)) - 1;
        return fullyOpen + (jet * jet);
    }
}
