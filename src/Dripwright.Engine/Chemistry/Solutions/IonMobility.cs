using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>How ions move faster as water warms, and the coefficients of McCleskey, Nordstrom and Ryan.</summary>
internal static class IonMobility
{
    private readonly record struct Quadratic(double A, double B, double C)
    {
        public double At(double t) => (A * t * t) + (B * t) + C;
    }

    private static readonly Dictionary<string, (Quadratic Bare, Quadratic Slope, double B)> s_fits = new(
        StringComparer.Ordinal
    )
    {
        ["K"] = (new(0.003046, 1.261, 40.70), new(0.00535, 0.9316, 22.59), 1.5),
        ["NH4"] = (new(0.003341, 1.285, 39.04), new(0.00132, 0.6070, 11.19), 0.3),
        ["Na"] = (new(0.003763, 0.8770, 26.23), new(0.00027, 1.141, 32.07), 1.7),
        ["Ca"] = (new(0.009645, 1.984, 62.28), new(0.03174, 2.334, 132.3), 2.8),
        ["Mg"] = (new(0.01068, 1.695, 57.16), new(0.02453, 1.915, 80.50), 2.1),
        ["NO3"] = (new(0.001925, 1.214, 39.90), new(0.00118, 0.5045, 23.31), 0.1),
        ["Cl"] = (new(0.003817, 1.337, 40.99), new(0.00613, 0.9469, 22.01), 1.5),
        ["SO4"] = (new(0.01037, 2.838, 82.37), new(0.03324, 5.889, 193.5), 2.6),
        ["HCO3"] = (new(0.000614, 0.9048, 21.14), new(-0.00503, 0.8957, 10.97), 0.1),
        ["H"] = (new(-0.01414, 5.355, 224.2), new(-0.00918, 1.842, 39.23), 0.3),
    };

    /// <summary>Mobility over that at 25 °C: from the fits where there is one, else as the water thins (Walden).</summary>
    public static double Against25(string formula, double celsius) =>
        s_fits.TryGetValue(formula, out var fit)
            ? fit.Bare.At(celsius) / fit.Bare.At(25)
            : WaterProperties.DynamicViscosity(25) / WaterProperties.DynamicViscosity(celsius);

    /// <summary>[S cm²/mol] Molar conductivity in a solution whose ionic strength has this root; null where there is no fit.</summary>
    public static double? McCleskey(string formula, double celsius, double root) =>
        s_fits.TryGetValue(formula, out var fit)
            ? fit.Bare.At(celsius) - (fit.Slope.At(celsius) * root / (1 + (fit.B * root)))
            : null;
}
