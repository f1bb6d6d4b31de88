namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>The crops whose limits are known here.</summary>
public enum LoopCrop
{
    /// <summary>Tomato.</summary>
    Tomato,

    /// <summary>Cucumber.</summary>
    Cucumber,

    /// <summary>Sweet pepper.</summary>
    SweetPepper,
}

/// <summary>How much yield salt costs, for a warning only.</summary>
/// <remarks>
/// Y = 100 - b (EC - a), between 0 and 100. Equation: FAO; a and b: E. V. Maas 1990, USDA table of relative salt tolerance.
/// EC here is that of a saturated paste of field soil, not of drip or drain: in substrate tomato is run above 2.5 dS/m on
/// purpose.
/// </remarks>
public static class SaltResponse
{
    /// <summary>Yield at a soil salinity, in per cent of that without salt.</summary>
    /// <param name="crop">The crop.</param>
    /// <param name="pasteDecisiemensPerMetre">[dS/m] EC of the saturated paste.</param>
    /// <returns>[%] Relative yield, 0 to 100.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The EC is negative, or the crop has no entry.</exception>
    /// <example>Tomato at 4 dS/m gives 85.2.</example>
    public static double RelativeYieldPercent(LoopCrop crop, double pasteDecisiemensPerMetre)
    {
        Guard.NotNegative(pasteDecisiemensPerMetre);
        (double threshold, double slope) = Of(crop);
        // Within the law: below the threshold nothing is lost, and no yield is less than none.
        return Math.Clamp(100 - (slope * (pasteDecisiemensPerMetre - threshold)), 0, 100);
    }

    /// <summary>[dS/m] Soil salinity at which half of the yield is left.</summary>
    /// <param name="crop">The crop.</param>
    /// <exception cref="ArgumentOutOfRangeException">The crop has no entry.</exception>
    public static double HalfYieldDecisiemensPerMetre(LoopCrop crop)
    {
        (double threshold, double slope) = Of(crop);
        return threshold + (50 / slope);
    }

    private static (double Threshold, double Slope) Of(LoopCrop crop) =>
        crop switch
        {
            LoopCrop.Tomato => (2.5, 9.9),
            LoopCrop.Cucumber => (2.5, 13.0),
            LoopCrop.SweetPepper => (1.5, 14.0),
            _ => throw new ArgumentOutOfRangeException(nameof(crop), crop, "The crop has no entry."),
        };
}
