using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>What to call constituents, and how much there is of one.</summary>
public static class Elements
{
    /// <summary>The name within a sentence: "nitrate nitrogen", "potassium".</summary>
    /// <param name="constituent">Which.</param>
    /// <param name="isTotal">Whether nitrate stands for all nitrogen, ammonium counted in.</param>
    public static Phrase Name(Constituent constituent, bool isTotal = false) =>
        Phrase.Of(
            constituent switch
            {
                Constituent.NitrateNitrogen when isTotal => "element.total-nitrogen",
                Constituent.NitrateNitrogen => "element.nitrate-nitrogen",
                Constituent.AmmoniumNitrogen => "element.ammonium-nitrogen",
                Constituent.Phosphorus => "element.phosphorus",
                Constituent.Potassium => "element.potassium",
                Constituent.Calcium => "element.calcium",
                Constituent.Magnesium => "element.magnesium",
                Constituent.Sulfur => "element.sulfur",
                Constituent.Sodium => "element.sodium",
                Constituent.Chloride => "element.chloride",
                Constituent.Silicon => "element.silicon",
                Constituent.InorganicCarbon => "element.inorganic-carbon",
                Constituent.Iron => "element.iron",
                Constituent.Manganese => "element.manganese",
                Constituent.Zinc => "element.zinc",
                Constituent.Copper => "element.copper",
                Constituent.Boron => "element.boron",
                Constituent.Molybdenum => "element.molybdenum",
                _ => throw new ArgumentOutOfRangeException(nameof(constituent), constituent, "No such constituent."),
            }
        );

    /// <summary>The name in a table or beside a bar: the symbol, "nitrate N", "ammonium N", "total N".</summary>
    /// <param name="constituent">Which.</param>
    /// <param name="isTotal">Whether nitrate stands for all nitrogen, ammonium counted in.</param>
    public static Phrase Short(Constituent constituent, bool isTotal = false) =>
        constituent switch
        {
            Constituent.NitrateNitrogen when isTotal => Phrase.Of("element.short.total-nitrogen"),
            Constituent.NitrateNitrogen => Phrase.Of("element.short.nitrate-nitrogen"),
            Constituent.AmmoniumNitrogen => Phrase.Of("element.short.ammonium-nitrogen"),
            Constituent.InorganicCarbon => Phrase.Of("element.short.inorganic-carbon"),
            // Symbols are the same in every language.
            _ => Phrase.Plain(Forms.Symbol(constituent)),
        };

    /// <summary>The name of what is dissolved, within a sentence: "sulfate", "potassium".</summary>
    /// <param name="constituent">Which.</param>
    public static Phrase Ion(Constituent constituent) =>
        constituent switch
        {
            Constituent.NitrateNitrogen => Phrase.Of("ion.nitrate"),
            Constituent.AmmoniumNitrogen => Phrase.Of("ion.ammonium"),
            Constituent.Phosphorus => Phrase.Of("ion.phosphate"),
            Constituent.Sulfur => Phrase.Of("ion.sulfate"),
            Constituent.InorganicCarbon => Phrase.Of("ion.bicarbonate"),
            Constituent.Boron => Phrase.Of("ion.boric-acid"),
            Constituent.Molybdenum => Phrase.Of("ion.molybdate"),
            _ => Name(constituent),
        };

    /// <summary>The name that plan.json gives it: "NO3-N", "K"; "N" where nitrate stands for all nitrogen.</summary>
    /// <param name="constituent">Which.</param>
    /// <param name="isTotal">Whether nitrate stands for all nitrogen, ammonium counted in.</param>
    public static string Key(Constituent constituent, bool isTotal = false) =>
        isTotal && constituent == Constituent.NitrateNitrogen
            ? Forms.Symbol(constituent)
            : Forms.ShortName(constituent);

    /// <summary>How much, in mg/L of the element.</summary>
    /// <param name="constituent">Which.</param>
    /// <param name="concentration">[mol/m³] How much.</param>
    public static Measured Amount(Constituent constituent, double concentration) =>
        Measured.Concentration(concentration * Forms.MassPerMole(constituent));
}
