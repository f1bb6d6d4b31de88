namespace Dripwright.Engine.Parts;

/// <summary>Lengths as whole hundredths of a millimetre.</summary>
internal static class CutGrain
{
    /// <summary>Hundredths of a millimetre in a metre.</summary>
    private const double PerMetre = 100_000;

    /// <summary>Binary fractions of the order of 10⁻¹¹ m are noise of conversion (24 in is not exact in metres) and must
    /// not cost a hundredth of a millimetre.</summary>
    private const double Noise = 1e-4;

    /// <summary>Length rounded up: for whatever takes room.</summary>
    public static long Up(double metres) => Whole(metres, Math.Ceiling(metres * PerMetre));

    /// <summary>Length rounded down: for whatever gives room.</summary>
    public static long Down(double metres) => Whole(metres, Math.Floor(metres * PerMetre));

    /// <summary>Back to metres.</summary>
    public static double Metres(long grains) => grains / PerMetre;

    private static long Whole(double metres, double rounded)
    {
        var nearest = Math.Round(metres * PerMetre);
        return (long)(Math.Abs(metres * PerMetre - nearest) < Noise ? nearest : rounded);
    }
}
