using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>Between a reading at the solution's temperature and the EC at 25 °C that everybody speaks of.</summary>
/// <remarks>
/// EC25 = EC_t / (1 + a (t - 25)). A meter with automatic compensation has done this already, most with 0.0191 or 0.02 per
/// °C: its display is EC at 25 °C and must not be corrected again. A meter without it shows EC_t. Source of the linear form
/// and of a = 0.0187 for natural waters (0.0175 to 0.0198): M. Hayashi, Environ. Monit. Assess. 96, 2004, pp. 119-128.
/// A plan takes readings as compensated; this is for whoever has a bare probe.
/// </remarks>
public static class TemperatureCompensation
{
    /// <summary>[1/°C] The coefficient most meters are set to when they leave the works.</summary>
    public const double MeterDefault = 0.0191;

    /// <summary>EC at 25 °C from an uncorrected reading.</summary>
    /// <param name="reading">What a meter without compensation shows.</param>
    /// <param name="celsius">[°C] Temperature of the solution, 0 to 40.</param>
    /// <param name="coefficient">[1/°C] Rise per degree, 0.015 to 0.025.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static Ec To25(Ec reading, double celsius, double coefficient = MeterDefault) =>
        new(reading.DecisiemensPerMetre / Factor(celsius, coefficient));

    /// <summary>What a meter without compensation shows at a temperature.</summary>
    /// <param name="at25">EC at 25 °C.</param>
    /// <param name="celsius">[°C] Temperature of the solution, 0 to 40.</param>
    /// <param name="coefficient">[1/°C] Rise per degree, 0.015 to 0.025.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static Ec At(Ec at25, double celsius, double coefficient = MeterDefault) =>
        new(at25.DecisiemensPerMetre * Factor(celsius, coefficient));

    /// <summary>The coefficient a solution has of its own, from its ions, between a temperature and 25 °C.</summary>
    /// <param name="solution">What is in it.</param>
    /// <param name="ph">[-] Its pH, 0 to 14.</param>
    /// <param name="celsius">[°C] Temperature, 0 to 40, at least one degree from 25.</param>
    /// <returns>[1/°C] Rise per degree, as a share of EC at 25 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double Coefficient(Composition solution, double ph, double celsius)
    {
        Guard.Between(celsius, 0, 40);
        ArgumentOutOfRangeException.ThrowIfLessThan(Math.Abs(celsius - 25), 1, nameof(celsius));
        Ec there = Conductivity.Of(solution, ph, new SolutionConditions { Celsius = celsius });
        Ec at25 = Conductivity.Of(solution, ph, SolutionConditions.Closed);
        return ((there.DecisiemensPerMetre / at25.DecisiemensPerMetre) - 1) / (celsius - 25);
    }

    private static double Factor(double celsius, double coefficient)
    {
        Guard.Between(celsius, 0, 40);
        Guard.Between(coefficient, 0.015, 0.025);
        return 1 + (coefficient * (celsius - 25));
    }
}
