using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>What a line of a water report is about.</summary>
public enum ReportedQuantity
{
    /// <summary>A constituent.</summary>
    Constituent,

    /// <summary>Alkalinity, also called bicarbonate or carbonate hardness.</summary>
    Alkalinity,

    /// <summary>Hardness, also called total hardness.</summary>
    Hardness,

    /// <summary>Conductivity.</summary>
    Conductivity,

    /// <summary>pH.</summary>
    PH,
}

/// <summary>One line of a water report, turned into mol/m³ (or S/m, or pH) at the edge.</summary>
public readonly record struct ReportedValue
{
    private static readonly double s_bicarbonate = Formula.Parse("HCO3").MolarMass;
    private static readonly double s_lime = Formula.Parse("CaO").MolarMass;

    /// <summary>[mg/L] A grain (64.79891 mg) in a US gallon (3.785411784 L), as CaCO3: 17.118.</summary>
    public const double GrainPerGallon = 64.79891 / 3.785411784;

    private ReportedValue(ReportedQuantity quantity, double value, Constituent constituent = default)
    {
        Quantity = quantity;
        Value = value;
        Constituent = constituent;
    }

    /// <summary>What it is about.</summary>
    public ReportedQuantity Quantity { get; }

    /// <summary>Which constituent, where it is one.</summary>
    public Constituent Constituent { get; }

    /// <summary>[mol/m³] The value; [S/m] for conductivity, [-] for pH.</summary>
    public double Value { get; }

    /// <summary>A constituent in mg/L of the element or of a form such as <c>NO3</c>, <c>SO4</c> or <c>CaCO3</c>.</summary>
    /// <param name="constituent">Which.</param>
    /// <param name="milligramsPerLitre">[mg/L] As reported.</param>
    /// <param name="form">Formula in which it is reported; null for the element.</param>
    /// <exception cref="ArgumentOutOfRangeException">The form holds none of it.</exception>
    public static ReportedValue MilligramsPerLitre(
        Constituent constituent,
        double milligramsPerLitre,
        string? form = null
    ) =>
        new(
            ReportedQuantity.Constituent,
            milligramsPerLitre / 1000 / Forms.MassPerMole(constituent, form),
            constituent
        );

    /// <summary>A constituent in mmol/L.</summary>
    /// <param name="constituent">Which.</param>
    /// <param name="concentration">[mol/m³] As reported; the same number as mmol/L.</param>
    public static ReportedValue Moles(Constituent constituent, double concentration) =>
        new(ReportedQuantity.Constituent, concentration, constituent);

    /// <summary>A constituent in meq/L.</summary>
    /// <param name="constituent">Which; it must carry a charge.</param>
    /// <param name="milliequivalentsPerLitre">[meq/L] As reported.</param>
    /// <exception cref="ArgumentOutOfRangeException">It carries no charge.</exception>
    public static ReportedValue Milliequivalents(Constituent constituent, double milliequivalentsPerLitre)
    {
        var charge = Math.Abs(Charges.Of(constituent));
        ArgumentOutOfRangeException.ThrowIfZero(charge, nameof(constituent));
        return new(ReportedQuantity.Constituent, milliequivalentsPerLitre / charge, constituent);
    }

    /// <summary>Alkalinity in meq/L.</summary>
    /// <param name="charge">[mol/m³ of charge] As reported; the same number as meq/L.</param>
    public static ReportedValue Alkalinity(double charge) => new(ReportedQuantity.Alkalinity, charge);

    /// <summary>Alkalinity in mg/L of calcium carbonate (ppm CaCO3).</summary>
    /// <param name="milligramsPerLitre">[mg/L] As CaCO3; 50.043 of it are 1 meq/L.</param>
    public static ReportedValue AlkalinityAsCarbonate(double milligramsPerLitre) =>
        new(ReportedQuantity.Alkalinity, milligramsPerLitre / 1000 / Forms.CarbonateEquivalent);

    /// <summary>Alkalinity in mg/L of bicarbonate.</summary>
    /// <param name="milligramsPerLitre">[mg/L] As HCO3.</param>
    public static ReportedValue AlkalinityAsBicarbonate(double milligramsPerLitre) =>
        new(ReportedQuantity.Alkalinity, milligramsPerLitre / 1000 / s_bicarbonate);

    /// <summary>Alkalinity in German degrees of carbonate hardness.</summary>
    /// <param name="degrees">[°dKH] 1 degree is 10 mg/L of CaO.</param>
    public static ReportedValue AlkalinityInDegrees(double degrees) =>
        new(ReportedQuantity.Alkalinity, 2 * degrees * 0.01 / s_lime);

    /// <summary>Hardness in mg/L of calcium carbonate (ppm CaCO3).</summary>
    /// <param name="milligramsPerLitre">[mg/L] As CaCO3.</param>
    public static ReportedValue HardnessAsCarbonate(double milligramsPerLitre) =>
        new(ReportedQuantity.Hardness, milligramsPerLitre / 1000 / (2 * Forms.CarbonateEquivalent));

    /// <summary>Hardness in mmol/L.</summary>
    /// <param name="concentration">[mol/m³] Calcium and magnesium together; the same number as mmol/L.</param>
    public static ReportedValue Hardness(double concentration) => new(ReportedQuantity.Hardness, concentration);

    /// <summary>Hardness in German degrees.</summary>
    /// <param name="degrees">[°dH] 1 degree is 10 mg/L of CaO.</param>
    public static ReportedValue HardnessInDegrees(double degrees) =>
        new(ReportedQuantity.Hardness, degrees * 0.01 / s_lime);

    /// <summary>Conductivity in dS/m, which is mS/cm.</summary>
    /// <param name="decisiemensPerMetre">[dS/m] At 25 °C.</param>
    public static ReportedValue Conductivity(double decisiemensPerMetre) =>
        new(ReportedQuantity.Conductivity, decisiemensPerMetre / 10);

    /// <summary>pH.</summary>
    /// <param name="ph">[-] As read.</param>
    public static ReportedValue PH(double ph) => new(ReportedQuantity.PH, ph);
}
