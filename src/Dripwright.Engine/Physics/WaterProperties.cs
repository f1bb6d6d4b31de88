namespace Dripwright.Engine.Physics;

/// <summary>Density and viscosity of clean water at atmospheric pressure, by temperature.</summary>
/// <remarks>
/// Holds from 0 to 60 °C. A nutrient solution of 2 g/L of salts is about 0.15 % denser and under 1 % more viscous than
/// this, which is less than the spread of any emitter. Method page: docs/methods/water-properties.md
/// </remarks>
public static class WaterProperties
{
    private const double LowestCelsius = 0;
    private const double HighestCelsius = 60;
    private const double ModernScale = 999.9750 / 999.9720;

    /// <summary>Density of clean, air-free water at 101 325 Pa.</summary>
    /// <remarks>
    /// ρ = (999.83952 + 16.945176 t - 7.9870401·10⁻³ t² - 46.170461·10⁻⁶ t³ + 105.56302·10⁻⁹ t⁴ - 280.54253·10⁻¹² t⁵)
    /// / (1 + 16.879850·10⁻³ t), t in °C, times 999.9750/999.9720. Source: G. S. Kell, J. Chem. Eng. Data 20(1), 1975,
    /// p. 97 (coefficients from memory). Kell's scale rests on 999.972 kg/m³ at 4 °C; the factor brings it to the 999.975
    /// measured since (M. Tanaka et al., Metrologia 38, 2001, p. 301, from memory). So it keeps within 0.003 kg/m³ of
    /// IAPWS-95 from 5 to 40 °C.
    /// </remarks>
    /// <param name="celsius">[°C] Water temperature, 0 to 60.</param>
    /// <returns>[kg/m³] Density.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside 0 to 60 °C.</exception>
    public static double Density(double celsius)
    {
        ThrowIfOutside(celsius);
        var t = celsius;
        var numerator =
            999.83952
            + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
        return numerator / (1 + 16.879850e-3 * t) * ModernScale;
    }

    /// <summary>Dynamic viscosity of clean water at 0.1 MPa.</summary>
    /// <remarks>
    /// μ [μPa·s] = 280.68 T^-1.9 + 511.45 T^-7.7 + 61.131 T^-19.6 + 0.45903 T^-40, T = (t + 273.15 K) / 300 K.
    /// Source: IAPWS SR6-08, Supplementary release on properties of liquid water at 0.1 MPa (formula from memory,
    /// within 0.003 % of the IAPWS 2008 viscosity).
    /// </remarks>
    /// <param name="celsius">[°C] Water temperature, 0 to 60.</param>
    /// <returns>[Pa·s] Dynamic viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside 0 to 60 °C.</exception>
    /// <example>20 °C gives 1.00157·10⁻³ Pa·s.</example>
    public static double DynamicViscosity(double celsius)
    {
        ThrowIfOutside(celsius);
        var t = (celsius + 273.15) / 300;
        return 1e-6
            * (
                280.68 * Math.Pow(t, -1.9)
                + 511.45 * Math.Pow(t, -7.7)
                + 61.131 * Math.Pow(t, -19.6)
                + 0.45903 * Math.Pow(t, -40)
            );
    }

    /// <summary>Kinematic viscosity: dynamic viscosity over density.</summary>
    /// <remarks>ν = μ / ρ. Sources as for the two it is made of.</remarks>
    /// <param name="celsius">[°C] Water temperature, 0 to 60.</param>
    /// <returns>[m²/s] Kinematic viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside 0 to 60 °C.</exception>
    public static double KinematicViscosity(double celsius) => DynamicViscosity(celsius) / Density(celsius);

    /// <summary>Weight of a cubic metre of water: what turns metres of head into pascals.</summary>
    /// <remarks>γ = ρ g.</remarks>
    /// <param name="celsius">[°C] Water temperature, 0 to 60.</param>
    /// <returns>[N/m³] Specific weight.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside 0 to 60 °C.</exception>
    public static double SpecificWeight(double celsius) => Density(celsius) * StandardGravity.Value;

    private static void ThrowIfOutside(double celsius)
    {
        // Written so that NaN is refused too.
        if (!(celsius >= LowestCelsius && celsius <= HighestCelsius))
        {
            throw new ArgumentOutOfRangeException(
                nameof(celsius),
                celsius,
                "Water temperature must lie from 0 to 60 °C."
            );
        }
    }
}
