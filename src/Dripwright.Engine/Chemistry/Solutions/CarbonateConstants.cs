namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>Constants of carbon dioxide in water against temperature, at zero ionic strength.</summary>
/// <remarks>
/// L. N. Plummer and E. Busenberg, Geochim. Cosmochim. Acta 46, 1982, pp. 1011-1040 (equations in the USGS abstract), 0 to
/// 90 °C. Method page: docs/methods/solution-ph.md
/// </remarks>
public static class CarbonateConstants
{
    /// <summary>log of [H][HCO3]/[CO2].</summary>
    /// <param name="kelvin">[K] Temperature, 273 to 363.</param>
    /// <returns>[-] The logarithm to base 10, concentrations in mol/L.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    /// <example>298.15 K gives -6.352.</example>
    public static double LogK1(double kelvin)
    {
        Check(kelvin);
        return -356.3094
            - (0.06091964 * kelvin)
            + (21834.37 / kelvin)
            + (126.8339 * Math.Log10(kelvin))
            - (1684915 / (kelvin * kelvin));
    }

    /// <summary>log of [H][CO3]/[HCO3].</summary>
    /// <param name="kelvin">[K] Temperature, 273 to 363.</param>
    /// <returns>[-] The logarithm to base 10, concentrations in mol/L.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    /// <example>298.15 K gives -10.329.</example>
    public static double LogK2(double kelvin)
    {
        Check(kelvin);
        return -107.8871
            - (0.03252849 * kelvin)
            + (5151.79 / kelvin)
            + (38.92561 * Math.Log10(kelvin))
            - (563713.9 / (kelvin * kelvin));
    }

    /// <summary>log of [CO2] over the pressure of the gas (Henry).</summary>
    /// <param name="kelvin">[K] Temperature, 273 to 363.</param>
    /// <returns>[-] The logarithm to base 10, in mol/L per atm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    /// <example>298.15 K gives -1.468.</example>
    public static double LogHenry(double kelvin)
    {
        Check(kelvin);
        return 108.3865
            + (0.01985076 * kelvin)
            - (6919.53 / kelvin)
            - (40.45154 * Math.Log10(kelvin))
            + (669365 / (kelvin * kelvin));
    }

    private static void Check(double kelvin) => Guard.Between(kelvin, 273, 363);
}
