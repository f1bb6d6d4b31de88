namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>Washing and buffering raw coir, by its volume.</summary>
/// <remarks>
/// Raw coir holds potassium and sodium on its surfaces and trades them for calcium out of the first feed. It is rinsed until
/// what runs off is weak, soaked in calcium nitrate overnight, and rinsed again. All amounts are common practice; the run-off's
/// EC decides, not the volume.
/// </remarks>
/// <param name="Coir">[m³] Coir, wetted and loose.</param>
public sealed record CoirTreatment(double Coir)
{
    /// <summary>[m³/m³] Rinse water for a volume of coir.</summary>
    public const double RinsePerVolume = 3;

    /// <summary>[m³/m³] Buffering solution for a volume of coir.</summary>
    public const double SoakPerVolume = 1;

    /// <summary>[kg/m³] Calcium nitrate in the buffering solution; the same number as g/L.</summary>
    public const double SoakStrength = 3;

    /// <summary>[dS/m] EC of the run-off over that of the water at which rinsing may end.</summary>
    public const double RunOffOverWater = 0.5;

    /// <summary>[m³] Water for the first rinse.</summary>
    public double Rinse => RinsePerVolume * Coir;

    /// <summary>[m³] Buffering solution.</summary>
    public double Soak => SoakPerVolume * Coir;

    /// <summary>[kg] Calcium nitrate for it.</summary>
    public double CalciumNitrate => SoakStrength * Soak;

    /// <summary>[m³] Water for the last rinse.</summary>
    public double LastRinse => Coir;
}
