namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>Conversions between mol and the forms in which labels, laboratories and recipes state a constituent.</summary>
/// <remarks>
/// A form is the formula of an element, ion or oxide: N, NO3, P2O5, K2O, CaO, SO4, SiO2 … One mole of the form holds
/// ν moles of the constituent's atom, so c [mol/m³] = ν · mg/L / (M [g/mol]); mg/L and g/m³ are the same.
/// Method page: docs/methods/formulas-and-salts.md
/// </remarks>
public static class Forms
{
    private static readonly string[] s_symbols =
    [
        "N",
        "N",
        "P",
        "K",
        "Ca",
        "Mg",
        "S",
        "Na",
        "Cl",
        "Si",
        "C",
        "Fe",
        "Mn",
        "Zn",
        "Cu",
        "B",
        "Mo",
    ];

    /// <summary>[kg/mol of charge] What alkalinity is commonly reported in: half a mole of calcium carbonate.</summary>
    public static double CarbonateEquivalent { get; } = Formula.Parse("CaCO3").MolarMass / 2;

    /// <summary>The symbol of the element that a constituent is counted by.</summary>
    public static string Symbol(Constituent constituent) => s_symbols[Index(constituent)];

    /// <summary>How people write the constituent: the symbol, with the form where an element has two.</summary>
    /// <example>NO3-N.</example>
    public static string ShortName(Constituent constituent) =>
        constituent switch
        {
            Constituent.NitrateNitrogen => "NO3-N",
            Constituent.AmmoniumNitrogen => "NH4-N",
            Constituent.InorganicCarbon => "inorganic C",
            _ => Symbol(constituent),
        };

    /// <summary>Moles in a mass of some form.</summary>
    /// <param name="constituent">What is counted.</param>
    /// <param name="milligramsPerLitre">[mg/L] Concentration of the form.</param>
    /// <param name="form">Formula of the form; null for the element itself.</param>
    /// <returns>[mol/m³] Concentration of the constituent.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The form holds none of the element, or the number is not finite.</exception>
    public static double FromMilligramsPerLitre(Constituent constituent, double milligramsPerLitre, string? form = null)
    {
        if (!double.IsFinite(milligramsPerLitre))
        {
            throw new ArgumentOutOfRangeException(
                nameof(milligramsPerLitre),
                milligramsPerLitre,
                "A finite number is needed."
            );
        }
        return milligramsPerLitre / 1000 / MassPerMole(constituent, form);
    }

    /// <summary>Mass of some form that holds so many moles.</summary>
    /// <param name="constituent">What is counted.</param>
    /// <param name="concentration">[mol/m³] Concentration of the constituent.</param>
    /// <param name="form">Formula of the form; null for the element itself.</param>
    /// <returns>[mg/L] Concentration of the form.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The form holds none of the element, or the number is not finite.</exception>
    public static double ToMilligramsPerLitre(Constituent constituent, double concentration, string? form = null)
    {
        if (!double.IsFinite(concentration))
        {
            throw new ArgumentOutOfRangeException(nameof(concentration), concentration, "A finite number is needed.");
        }
        return concentration * 1000 * MassPerMole(constituent, form);
    }

    /// <summary>Mass of a form that holds one mole of the constituent.</summary>
    /// <param name="constituent">What is counted.</param>
    /// <param name="form">Formula of the form; null for the element itself.</param>
    /// <returns>[kg/mol] The mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The form holds none of the element.</exception>
    /// <example>P2O5 for phosphorus: 0.070972 kg/mol, so P = 0.43643 P2O5.</example>
    public static double MassPerMole(Constituent constituent, string? form = null)
    {
        var symbol = Symbol(constituent);
        if (form is null || form == symbol)
        {
            return AtomicMasses.Of(symbol);
        }
        var formula = Formula.Parse(form);
        var count = formula.Count(symbol);
        return count > 0
            ? formula.MolarMass / count
            : throw new ArgumentOutOfRangeException(nameof(form), form, $"This form holds no {symbol}.");
    }

    private static int Index(Constituent constituent) =>
        (int)constituent >= 0 && (int)constituent < s_symbols.Length
            ? (int)constituent
            : throw new ArgumentOutOfRangeException(nameof(constituent), constituent, "No such constituent.");
}
