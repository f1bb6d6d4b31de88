namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>How a meter that shows ppm turns conductivity into its number. The ppm are no weight of anything.</summary>
/// <remarks>
/// Sodium chloride meters show half of the µS/cm, the "442" mix (40 % sodium bicarbonate, 40 % sodium sulfate, 20 % sodium
/// chloride) 0.7 of it, and 0.64 is a mean of natural waters. Source: meter maker's notes on scales; for 0.64, a Springer
/// irrigation paper (s00271-018-0569-9). Some sellers call the 700 scale "KCl": ask for the number, not for the salt.
/// </remarks>
public enum PpmScale
{
    /// <summary>500 ppm is 1 dS/m: sodium chloride.</summary>
    Of500 = 500,

    /// <summary>640 ppm is 1 dS/m: a mean of natural waters.</summary>
    Of640 = 640,

    /// <summary>700 ppm is 1 dS/m: the "442" mix.</summary>
    Of700 = 700,
}

/// <summary>From a meter's ppm to EC and back: at the edge only, EC is what is kept.</summary>
public static class PpmReading
{
    /// <summary>EC behind a ppm reading.</summary>
    /// <param name="ppm">[ppm] What the meter shows.</param>
    /// <param name="scale">The meter's scale.</param>
    /// <exception cref="ArgumentOutOfRangeException">The reading is negative, or the scale is none of the three.</exception>
    public static Ec ToEc(double ppm, PpmScale scale) => new(Guard.NotNegative(ppm) / Factor(scale));

    /// <summary>What a ppm meter shows at this EC.</summary>
    /// <param name="ec">The conductivity at 25 °C.</param>
    /// <param name="scale">The meter's scale.</param>
    /// <returns>[ppm] The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The scale is none of the three.</exception>
    public static double FromEc(Ec ec, PpmScale scale) => ec.DecisiemensPerMetre * Factor(scale);

    private static double Factor(PpmScale scale) =>
        Enum.IsDefined(scale)
            ? (double)scale
            : throw new ArgumentOutOfRangeException(nameof(scale), scale, "The scale is 500, 640 or 700.");
}
