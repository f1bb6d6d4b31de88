using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>How much yield salt costs, for a warning only.</summary>
/// <remarks>
/// Y = 100 - b (EC - a), between 0 and 100. Equation: FAO; a and b stand in the catalogue's row of the crop.
/// EC here is that of a saturated paste of field soil, not of drip or drain: in substrate tomato is run above 2.5 dS/m on
/// purpose.
/// </remarks>
public static class SaltResponse
{
    /// <summary>Yield at a soil salinity, in per cent of that without salt.</summary>
    /// <param name="crop">The crop.</param>
    /// <param name="pasteDecisiemensPerMetre">[dS/m] EC of the saturated paste.</param>
    /// <returns>[%] Relative yield, 0 to 100.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The EC is negative.</exception>
    /// <exception cref="ArgumentException">The crop's row does not say what salt costs it.</exception>
    /// <example>Tomato at 4 dS/m gives 85.2.</example>
    public static double RelativeYieldPercent(CropType crop, double pasteDecisiemensPerMetre)
    {
        Guard.NotNegative(pasteDecisiemensPerMetre);
        (double threshold, double slope) = Of(crop);
        // Within the law: below the threshold nothing is lost, and no yield is less than none.
        return Math.Clamp(100 - (slope * (pasteDecisiemensPerMetre - threshold)), 0, 100);
    }

    /// <summary>[dS/m] Soil salinity at which half of the yield is left.</summary>
    /// <param name="crop">The crop.</param>
    /// <exception cref="ArgumentException">The crop's row does not say what salt costs it.</exception>
    public static double HalfYieldDecisiemensPerMetre(CropType crop)
    {
        (double threshold, double slope) = Of(crop);
        return threshold + (50 / slope);
    }

    private static (double Threshold, double Slope) Of(CropType crop)
    {
        ArgumentNullException.ThrowIfNull(crop);
        return crop is { YieldLossFrom: { } threshold, YieldLoss: { } slope }
            ? (threshold, slope)
            : throw new ArgumentException($"The catalogue does not say what salt costs {crop.Name}.", nameof(crop));
    }
}
