using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>Water as the ions meet it: how it weakens their pull on one another, and how it drags.</summary>
/// <remarks>
/// Dielectric constant: C. G. Malmberg and A. A. Maryott, J. Res. NBS 56, 1956, p. 1 (coefficients from memory; 78.30 at
/// 25 °C). The factors of activity and of conductivity are Debye, Hückel and Onsager's as given by R. A. Robinson and
/// R. H. Stokes, Electrolyte Solutions, 2nd ed. (from memory).
/// </remarks>
internal readonly record struct Medium
{
    public Medium(double celsius)
    {
        var kelvin = celsius + 273.15;
        var dielectric =
            87.740 - (0.40008 * celsius) + (9.398e-4 * celsius * celsius) - (1.410e-6 * celsius * celsius * celsius);
        var pull = dielectric * kelvin;
        var poise = WaterProperties.DynamicViscosity(celsius) * 10;
        Activity = 1.82483e6 * Math.Sqrt(WaterProperties.Density(celsius) / 1000) / Math.Pow(pull, 1.5);
        Relaxation = 2.801e6 / Math.Pow(pull, 1.5);
        Drag = 41.25 / (poise * Math.Sqrt(pull));
        InverseLength = 50.29e8 / Math.Sqrt(pull);
    }

    /// <summary>[(L/mol)^½] A of the Davies equation, 0.509 at 25 °C.</summary>
    public double Activity { get; }

    /// <summary>[(L/mol)^½] Onsager's relaxation factor before the charges and the q of the pair.</summary>
    public double Relaxation { get; }

    /// <summary>[S cm²/eq (L/mol)^½] Onsager's electrophoretic factor for one unit of charge.</summary>
    public double Drag { get; }

    /// <summary>[1/cm (L/mol)^½] Inverse thickness of the ion cloud.</summary>
    public double InverseLength { get; }

    /// <summary>log of the activity coefficient of one charge, after Davies; that of charge z is z² times as much.</summary>
    public double Davies(double ionicStrength)
    {
        var root = Math.Sqrt(ionicStrength);
        return -Activity * ((root / (1 + root)) - (0.3 * ionicStrength));
    }
}
