namespace Dripwright.Engine.Wires;

/// <summary>Pull that a threaded hook or lag screw may take out of timber.</summary>
/// <remarks>
/// W = 1800 G^1.5 D^0.75 pounds per inch of thread in side grain. Source: National Design Specification for Wood
/// Construction, 2015/2018, eq. 12.2-1 and table 12.2A; the factors for duration, wetness and end grain: end grain from the
/// same page, duration and wetness from memory. It is the pull along the axis only: a bent screw-hook opens or bends
/// earlier, so its maker's rating rules where it is lower. A professional checks ceilings and house frames.
/// </remarks>
public static class HookWithdrawal
{
    /// <summary>[-] For loads that stay for ten years or more: crops that hang for months are counted as these.</summary>
    public const double LongTerm = 0.9;

    /// <summary>[-] For timber that is or gets wet, as in a greenhouse.</summary>
    public const double Wet = 0.7;

    /// <summary>[-] For a hook driven into end grain.</summary>
    public const double EndGrain = 0.75;

    private const double NewtonsPerPound = 4.4482216152605;
    private const double MetresPerInch = 0.0254;

    /// <summary>Reference withdrawal of a thread, before any factor.</summary>
    /// <param name="gravity">[-] Specific gravity of the timber, oven dry, 0.31 to 0.73 (the table's range).</param>
    /// <param name="diameter">[m] Diameter of the unthreaded shank, 6 to 32 mm (1/4 to 1 1/4 in).</param>
    /// <param name="thread">[m] Thread in the wood, its tapered tip not counted, over 0.</param>
    /// <returns>[N] Pull along the axis.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    /// <example>1/4 in, G 0.42, 1.5 in of thread: 259.8 lbf.</example>
    public static double Reference(double gravity, double diameter, double thread)
    {
        Guard.Between(gravity, 0.31, 0.73);
        Guard.Between(diameter, 0.006, 0.032);
        Guard.Positive(thread);
        var poundsPerInch = 1800 * Math.Pow(gravity, 1.5) * Math.Pow(diameter / MetresPerInch, 0.75);
        return poundsPerInch * (thread / MetresPerInch) * NewtonsPerPound;
    }
}
