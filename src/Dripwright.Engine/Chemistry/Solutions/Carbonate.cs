namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>Acid for plain water by the short formula, activities taken as concentrations; a check on the full method.</summary>
/// <remarks>Alk = C (α₁ + 2 α₂) + Kw/H - H, the carbon C kept. Textbook; constants of Plummer and Busenberg 1982.</remarks>
public static class Carbonate
{
    /// <summary>Inorganic carbon of a water from alkalinity and pH.</summary>
    /// <param name="alkalinity">[mol/m³ of charge, the same number as meq/L] Alkalinity.</param>
    /// <param name="ph">[-] pH, 4 to 11.</param>
    /// <param name="celsius">[°C] Temperature, 0 to 40.</param>
    /// <returns>[mol/m³] Inorganic carbon in all forms.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range, or the water has more alkalinity from
    /// hydroxide alone.</exception>
    public static double Carbon(double alkalinity, double ph, double celsius)
    {
        Guard.NotNegative(alkalinity);
        double carbonate = alkalinity - (1000 * Water(ph, celsius));
        return Guard.NotNegative(carbonate, nameof(alkalinity)) / Share(ph, celsius);
    }

    /// <summary>Strong acid that takes a water from one pH to another, carbon dioxide kept in.</summary>
    /// <param name="alkalinity">[mol/m³ of charge, the same number as meq/L] Alkalinity before.</param>
    /// <param name="from">[-] pH before, 4 to 11.</param>
    /// <param name="to">[-] pH after, 4 to 11.</param>
    /// <param name="celsius">[°C] Temperature, 0 to 40.</param>
    /// <returns>[mol/m³, the same number as meq/L] Acid; negative where a base is needed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <example>4 meq/L from pH 7.6 to 5.8 at 25 °C takes 3.08 meq/L.</example>
    public static double AcidToReach(double alkalinity, double from, double to, double celsius)
    {
        double carbon = Carbon(alkalinity, from, celsius);
        return alkalinity - ((carbon * Share(to, celsius)) + (1000 * Water(to, celsius)));
    }

    private static double Share(double ph, double celsius)
    {
        Guard.Between(ph, 4, 11);
        Guard.Between(celsius, 0, 40);
        double kelvin = celsius + 273.15;
        double first = Math.Pow(10, CarbonateConstants.LogK1(kelvin) + ph);
        double second = Math.Pow(10, CarbonateConstants.LogK2(kelvin) + ph);
        return (first + (2 * first * second)) / (1 + first + (first * second));
    }

    private static double Water(double ph, double celsius) =>
        Math.Pow(10, SpeciesTable.LogWater(celsius + 273.15) + ph) - Math.Pow(10, -ph);
}
