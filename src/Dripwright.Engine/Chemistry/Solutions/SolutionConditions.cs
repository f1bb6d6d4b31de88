namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>What the iron of a solution is, which decides the charge it carries.</summary>
public enum IronForm
{
    /// <summary>In a chelate that carries one negative charge, such as Na[Fe(EDTA)]. The usual case in a tank.</summary>
    Chelated,

    /// <summary>As free ferrous ion, from iron sulfate.</summary>
    Ferrous,
}

/// <summary>What a solution stands in: temperature, air, and what form its iron has.</summary>
public sealed record SolutionConditions
{
    /// <summary>[Pa] Carbon dioxide in the air of a well-aired place: about 420 ppm of one atmosphere.</summary>
    public const double OutdoorAir = 42.5;

    private readonly double _celsius = 25;
    private readonly double? _carbonDioxide;

    /// <summary>At 25 °C and closed to the air: what is in the solution stays in it.</summary>
    public static SolutionConditions Closed { get; } = new();

    /// <summary>At 25 °C and in balance with outdoor air, as an aerated reservoir is after some hours.</summary>
    public static SolutionConditions Open { get; } = new() { CarbonDioxide = OutdoorAir };

    /// <summary>[°C] Temperature of the solution, 0 to 40.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 40 °C.</exception>
    public double Celsius
    {
        get => _celsius;
        init => _celsius = Guard.Between(value, 0, 40, nameof(Celsius));
    }

    /// <summary>[Pa] Pressure of carbon dioxide in the air above; null when no gas is exchanged.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not positive, or above 5000 Pa.</exception>
    public double? CarbonDioxide
    {
        get => _carbonDioxide;
        init =>
            _carbonDioxide = value is { } pressure
                ? Guard.Between(Guard.Positive(pressure, nameof(CarbonDioxide)), 0, 5000, nameof(CarbonDioxide))
                : null;
    }

    /// <summary>What form the iron has.</summary>
    public IronForm Iron { get; init; }
}
