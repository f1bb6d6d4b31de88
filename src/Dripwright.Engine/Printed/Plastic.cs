namespace Dripwright.Engine.Printed;

/// <summary>A plastic for printing, with the least of its published values.</summary>
/// <param name="Name">As on the spool.</param>
/// <param name="Density">[kg/m³] Middle of the published range.</param>
/// <param name="AlongLayers">[Pa] Least tensile strength within the layers.</param>
/// <param name="AcrossLayers">[Pa] Least tensile strength between layers.</param>
/// <param name="Modulus">[Pa] Least modulus.</param>
/// <param name="CreepTemperature">[K] Least heat-deflection temperature: from here it sags under load.</param>
/// <param name="Source">Where the values are from.</param>
public sealed record Plastic(
    string Name,
    double Density,
    double AlongLayers,
    double AcrossLayers,
    double Modulus,
    double CreepTemperature,
    string Source
)
{
    private const double ZeroCelsius = 273.15;

    /// <summary>Stiff and easy to print, but it creeps in a warm room.</summary>
    public static Plastic Pla { get; } =
        new(
            "PLA",
            1240,
            50e6,
            35e6,
            3e9,
            ZeroCelsius + 50,
            "additive.tools, materials: PLA (as printed: 50-65 MPa along, 35-45 MPa across layers, 3-4 GPa, 1.22-1.26 g/cm³); "
                + "heat deflection 50-60 °C: alteredrooms.com, 2024"
        );

    /// <summary>Tough, takes water well; the usual choice.</summary>
    public static Plastic Petg { get; } =
        new(
            "PETG",
            1270,
            44e6,
            25e6,
            2e9,
            ZeroCelsius + 65,
            "additive.tools, materials: PETG (as printed: 44-56 MPa along, 25-38 MPa across layers, 2-3 GPa, 1.25-1.29 g/cm³); "
                + "heat deflection 65-80 °C: alteredrooms.com, 2024"
        );

    /// <summary>Stands heat; shrinks and smells while it prints.</summary>
    public static Plastic Abs { get; } =
        new(
            "ABS",
            1040,
            30e6,
            15e6,
            1.8e9,
            ZeroCelsius + 85,
            "heat deflection 85-100 °C: alteredrooms.com, 2024; strengths, modulus and density from memory, on the low side"
        );

    /// <summary>Stands heat and sun.</summary>
    public static Plastic Asa { get; } =
        new(
            "ASA",
            1070,
            30e6,
            15e6,
            1.8e9,
            ZeroCelsius + 90,
            "all values from memory, on the low side: makers state heat deflection of 95-100 °C"
        );

    /// <summary>All that are known, the least heat-proof first.</summary>
    public static IReadOnlyList<Plastic> All { get; } = [Pla, Petg, Abs, Asa];

    /// <summary>[K] Warmest that a loaded part should get: 15 K under <see cref="CreepTemperature"/>, which is our own
    /// margin, since a heat-deflection test lasts minutes and a stand stands for years.</summary>
    public double WarmestInUse => CreepTemperature - 15;
}
