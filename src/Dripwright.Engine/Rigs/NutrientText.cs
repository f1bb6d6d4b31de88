using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>One line of a water analysis as read from text.</summary>
/// <param name="Value">The value; null where the text is none.</param>
/// <param name="Expected">What a good text looks like.</param>
internal readonly record struct ReportedReading(ReportedValue? Value, Phrase Expected);

/// <summary>Reads what a water report says: a number, its unit, and the form where the name alone leaves it open.</summary>
/// <remarks>
/// Nitrate as N and as NO3 differ by 4.4, sulfate as S and as SO4 by 3: these forms must be written. A value below what the
/// laboratory can find ("&lt;0.05 mg/L") is none.
/// </remarks>
internal static class NutrientText
{
    private sealed record Line(ReportedQuantity Quantity, Constituent Constituent, string[] Forms, Phrase Example);

    // The first form is the element itself; where it is empty the form must be written.
    private static readonly Dictionary<string, Line> s_lines = new(StringComparer.Ordinal)
    {
        ["alkalinity"] = new(
            ReportedQuantity.Alkalinity,
            default,
            ["CaCO3", "HCO3"],
            Phrase.Of("fault.reported.alkalinity")
        ),
        ["hardness"] = new(ReportedQuantity.Hardness, default, ["CaCO3"], Phrase.Of("fault.reported.hardness")),
        ["calcium"] = Of(Constituent.Calcium, "60", "", "Ca", "CaCO3"),
        ["magnesium"] = Of(Constituent.Magnesium, "12", "", "Mg"),
        ["sodium"] = Of(Constituent.Sodium, "23", "", "Na"),
        ["potassium"] = Of(Constituent.Potassium, "3", "", "K"),
        ["chloride"] = Of(Constituent.Chloride, "35", "", "Cl"),
        ["sulfate"] = Of(Constituent.Sulfur, "48", "SO4", "S"),
        ["nitrate"] = Of(Constituent.NitrateNitrogen, "20", "NO3", "N"),
        ["ammonium"] = Of(Constituent.AmmoniumNitrogen, "0.5", "NH4", "N"),
        ["phosphate"] = Of(Constituent.Phosphorus, "2", "PO4", "P", "P2O5"),
        ["boron"] = Of(Constituent.Boron, "0.1", "", "B"),
        ["iron"] = Of(Constituent.Iron, "0.1", "", "Fe"),
        ["manganese"] = Of(Constituent.Manganese, "0.02", "", "Mn"),
        ["zinc"] = Of(Constituent.Zinc, "0.1", "", "Zn"),
        ["phosphorus"] = Of(Constituent.Phosphorus, "40", "", "P", "P2O5"),
        ["copper"] = Of(Constituent.Copper, "0.05", "", "Cu"),
        ["molybdenum"] = Of(Constituent.Molybdenum, "0.05", "", "Mo"),
    };

    /// <summary>The fields that hold such a line, by their names in the file, with what each says.</summary>
    /// <param name="section">The section that holds them: a water, or the amounts wanted.</param>
    public static IEnumerable<(string Field, string? Text)> Lines(object section) =>
        FieldDescription
            .Of(section.GetType())
            .Where(field => s_lines.ContainsKey(field.Name))
            .Select(field => (field.Name, (string?)field.Property.GetValue(section)));

    /// <summary>Reads a line.</summary>
    /// <param name="field">Its field's name in the file.</param>
    /// <param name="text">The text.</param>
    public static ReportedReading Read(string field, string text)
    {
        var line = s_lines[field];
        var tidy = NumberText.Tidy(text).Trim();
        if (NumberText.PutPoint(ref tidy) is { } doubt)
        {
            return new(null, QuantityPhrases.Comma(line.Example, doubt));
        }
        var below = tidy.StartsWith('<');
        tidy = tidy.TrimStart('<').Trim();
        if (!NumberText.TryRead(tidy, out var number))
        {
            return new(null, line.Example);
        }
        var words = tidy[number.Text.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var form = words is [_, .. var rest] ? string.Concat(rest.SkipWhile(word => word is "as" or "As" or "AS")) : "";
        if (words.Length == 0)
        {
            return new(null, Phrase.Of("fault.reported.no-unit", line.Example));
        }
        var amount = below ? 0 : (double)(number.Over / number.Under);
        return Value(line, words[0], form, amount);
    }

    private static Line Of(Constituent constituent, string number, params string[] forms) =>
        new(
            ReportedQuantity.Constituent,
            constituent,
            forms,
            forms[0].Length == 0
                ? Phrase.Of("fault.reported.element", number)
                : Phrase.Of("fault.reported.form", number, forms[0], forms[1])
        );

    private static ReportedReading Value(Line line, string unit, string form, double amount)
    {
        var wrong = new ReportedReading(null, line.Example);
#pragma warning disable CA1308 // Units are compared in lower case because that is how people read them.
        var small = unit.ToLowerInvariant().Replace('\u00b5', 'u').Replace('\u03bc', 'u').TrimStart('\u00b0');
#pragma warning restore CA1308
        var perLitre =
            small is "mg/l" or "ppm" or "g/m3" ? amount
            : small is "ug/l" or "ppb" ? amount / 1000
            : double.NaN;
        if (double.IsNaN(perLitre))
        {
            return form.Length > 0 ? wrong
                : Moles(line, small, amount) is { } value ? new(value, line.Example)
                : wrong;
        }
        var known = line.Forms.FirstOrDefault(one => one.Equals(form, StringComparison.OrdinalIgnoreCase));
        if (known is null)
        {
            return form.Length == 0 ? new(null, Phrase.Of("fault.reported.no-form", line.Example)) : wrong;
        }
        var read = line.Quantity switch
        {
            ReportedQuantity.Alkalinity when known == "HCO3" => ReportedValue.AlkalinityAsBicarbonate(perLitre),
            ReportedQuantity.Alkalinity => ReportedValue.AlkalinityAsCarbonate(perLitre),
            ReportedQuantity.Hardness => ReportedValue.HardnessAsCarbonate(perLitre),
            _ => ReportedValue.MilligramsPerLitre(line.Constituent, perLitre, known.Length == 0 ? null : known),
        };
        return new(read, line.Example);
    }

    private static ReportedValue? Moles(Line line, string unit, double amount) =>
        (line.Quantity, unit) switch
        {
            (ReportedQuantity.Alkalinity, "meq/l" or "mmol/l") => ReportedValue.Alkalinity(amount),
            (ReportedQuantity.Alkalinity, "dkh" or "dh") => ReportedValue.AlkalinityInDegrees(amount),
            (ReportedQuantity.Alkalinity, "fh" or "f") => ReportedValue.AlkalinityAsCarbonate(10 * amount),
            (ReportedQuantity.Alkalinity, "gpg" or "gr/gal") => ReportedValue.AlkalinityAsCarbonate(
                ReportedValue.GrainPerGallon * amount
            ),
            (ReportedQuantity.Hardness, "mmol/l") => ReportedValue.Hardness(amount),
            (ReportedQuantity.Hardness, "meq/l") => ReportedValue.Hardness(amount / 2),
            (ReportedQuantity.Hardness, "dh" or "dgh") => ReportedValue.HardnessInDegrees(amount),
            (ReportedQuantity.Hardness, "fh" or "f") => ReportedValue.HardnessAsCarbonate(10 * amount),
            (ReportedQuantity.Hardness, "gpg" or "gr/gal") => ReportedValue.HardnessAsCarbonate(
                ReportedValue.GrainPerGallon * amount
            ),
            (ReportedQuantity.Constituent, "mmol/l") => ReportedValue.Moles(line.Constituent, amount),
            (ReportedQuantity.Constituent, "umol/l") => ReportedValue.Moles(line.Constituent, amount / 1000),
            (ReportedQuantity.Constituent, "meq/l") when Charges.Of(line.Constituent) != 0 =>
                ReportedValue.Milliequivalents(line.Constituent, amount),
            _ => null,
        };
}
