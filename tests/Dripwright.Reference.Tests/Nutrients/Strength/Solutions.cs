using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Reference.Tests.Nutrients.Strength;

/// <summary>Published nutrient solutions, in mmol/L.</summary>
internal static class Solutions
{
    /// <summary>D. R. Hoagland and D. I. Arnon, Calif. Agric. Exp. Sta. Circular 347, 1950, solution 1.</summary>
    public static Composition Hoagland1 { get; } = Of(nh4: 0, k: 6, ca: 5, mg: 2, no3: 15, so4: 2, h2po4: 1);

    /// <summary>The same circular, solution 2.</summary>
    public static Composition Hoagland2 { get; } = Of(nh4: 1, k: 6, ca: 4, mg: 2, no3: 14, so4: 2, h2po4: 1);

    /// <summary>A. A. Steiner's universal solution (numbers from memory, they close).</summary>
    public static Composition Steiner { get; } = Of(nh4: 0, k: 7, ca: 4.5, mg: 2, no3: 12, so4: 3.5, h2po4: 1);

    /// <summary>C. Sonneveld and N. Straver 1994, tomato in closed systems (from memory, closes).</summary>
    public static Composition TomatoClosed { get; } =
        Of(nh4: 1, k: 6.5, ca: 2.75, mg: 1, no3: 10.75, so4: 1.5, h2po4: 1.25);

    /// <summary>The same, tomato with free drainage.</summary>
    public static Composition TomatoFree { get; } =
        Of(nh4: 1.2, k: 9.5, ca: 5.4, mg: 2.4, no3: 16, so4: 4.4, h2po4: 1.5);

    /// <summary>The same, cucumber in closed systems.</summary>
    public static Composition CucumberClosed { get; } =
        Of(nh4: 1, k: 6.5, ca: 2.75, mg: 1, no3: 11.75, so4: 1, h2po4: 1.25);

    /// <summary>The same, cucumber with free drainage.</summary>
    public static Composition CucumberFree { get; } =
        Of(nh4: 1.25, k: 8, ca: 4, mg: 1.375, no3: 16, so4: 1.375, h2po4: 1.25);

    /// <summary>The same, sweet pepper with free drainage.</summary>
    public static Composition PepperFree { get; } =
        Of(nh4: 0.5, k: 6.75, ca: 5, mg: 1.5, no3: 15.5, so4: 1.75, h2po4: 1.25);

    /// <summary>The same, tomato, what the root zone should hold (remembered less surely; nitrate within its range, closed).</summary>
    public static Composition TomatoRootZone { get; } =
        Of(nh4: 0, k: 8, ca: 10, mg: 4.5, no3: 22.4, so4: 6.8, h2po4: 1);

    /// <summary>Sweet pepper feed of grower-extension slides ("Cook 2015"), from its mg/L.</summary>
    public static Composition PepperFeed { get; } =
        Of(nh4: 1.285, k: 8.696, ca: 4.2415, mg: 2.057, no3: 13.565, so4: 3.748, h2po4: 1.291);

    /// <summary>A hard water: alkalinity 4 meq/L at pH 7.6, for the acid examples.</summary>
    public static Composition Water { get; } =
        Composition.Of(
            (Constituent.Calcium, 1.5),
            (Constituent.Magnesium, 0.5),
            (Constituent.Sodium, 0.5),
            (Constituent.Chloride, 0.5)
        );

    private static Composition Of(double nh4, double k, double ca, double mg, double no3, double so4, double h2po4) =>
        Composition.Of(
            (Constituent.AmmoniumNitrogen, nh4),
            (Constituent.Potassium, k),
            (Constituent.Calcium, ca),
            (Constituent.Magnesium, mg),
            (Constituent.NitrateNitrogen, no3),
            (Constituent.Sulfur, so4),
            (Constituent.Phosphorus, h2po4)
        );
}
