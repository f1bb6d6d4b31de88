using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>One line of a label's guaranteed analysis.</summary>
/// <param name="Name">Its name in a file, such as <c>p2o5</c>.</param>
/// <param name="Constituent">What it guarantees.</param>
/// <param name="Form">Formula in which the percentage is stated.</param>
public sealed record LabelForm(string Name, Constituent Constituent, string Form);

/// <summary>The forms in which labels state their analysis, in percent of mass.</summary>
public static class LabelForms
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<LabelForm> All { get; } =
    [
        new("nitrateN", Constituent.NitrateNitrogen, "N"),
        new("ammoniumN", Constituent.AmmoniumNitrogen, "N"),
        new("p2o5", Constituent.Phosphorus, "P2O5"),
        new("p", Constituent.Phosphorus, "P"),
        new("k2o", Constituent.Potassium, "K2O"),
        new("k", Constituent.Potassium, "K"),
        new("cao", Constituent.Calcium, "CaO"),
        new("ca", Constituent.Calcium, "Ca"),
        new("mgo", Constituent.Magnesium, "MgO"),
        new("mg", Constituent.Magnesium, "Mg"),
        new("so3", Constituent.Sulfur, "SO3"),
        new("s", Constituent.Sulfur, "S"),
        new("na", Constituent.Sodium, "Na"),
        new("cl", Constituent.Chloride, "Cl"),
        new("sio2", Constituent.Silicon, "SiO2"),
        new("si", Constituent.Silicon, "Si"),
        new("fe", Constituent.Iron, "Fe"),
        new("mn", Constituent.Manganese, "Mn"),
        new("zn", Constituent.Zinc, "Zn"),
        new("cu", Constituent.Copper, "Cu"),
        new("b", Constituent.Boron, "B"),
        new("mo", Constituent.Molybdenum, "Mo"),
    ];

    /// <summary>Their names, one space between them.</summary>
    internal const string AllNames =
        "nitrateN ammoniumN p2o5 p k2o k cao ca mgo mg so3 s na cl sio2 si fe mn zn cu b mo";

    /// <summary>What a kilogram of a product with this analysis brings.</summary>
    /// <param name="percents">[%] Mass percent by the name of its form.</param>
    /// <returns>[mol/kg] The composition.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A name is unknown.</exception>
    public static Composition Composition(IEnumerable<(string Name, double Percent)> percents)
    {
        ArgumentNullException.ThrowIfNull(percents);
        return Chemistry.Formulas.Composition.Of(
            percents.Select(line =>
            {
                var form =
                    All.FirstOrDefault(form => form.Name == line.Name)
                    ?? throw new ArgumentOutOfRangeException(nameof(percents), line.Name, "No form of a label.");
                return (form.Constituent, line.Percent / 100 / Forms.MassPerMole(form.Constituent, form.Form));
            })
        );
    }
}
