using Dripwright.Engine.Catalogue.Rows;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>What a row says of a product's content, from its formula and purity or from its label.</summary>
internal sealed record SaltContent(
    Formula? Formula,
    double Purity,
    IReadOnlyList<(string Name, double Percent)> Label,
    Composition Brings,
    double AcidEquivalents
)
{
    public static SaltContent? Read(RowReader row, Salt? start, SaltKind? kind)
    {
        var formula = FormulaOf(row, "formula") ?? start?.Formula;
        var purity = row.Number("purityPercent", 0.1, 100) / 100 ?? start?.Purity ?? 1;
        var label = row.Numbers("label", LabelForms.Names, 100);
        var acid = row.Number("acidEquivalentsPerKilogram", -50, 50);
        // A new formula or strength does away with the label that the row started from.
        if (label.Count == 0 && !row.Has("formula") && !row.Has("purityPercent"))
        {
            label = start?.Label ?? [];
        }
        if (!row.Good)
        {
            return null;
        }
        if (label.Count > 0)
        {
            return FromLabel(row, formula, purity, label, acid ?? start?.AcidEquivalents ?? 0);
        }
        if (formula is null)
        {
            row.Fault("a \"formula\" or a \"label\" too");
            return null;
        }
        if (SaltComposition.TryOf(formula, out var why) is not { } perMole)
        {
            row.FaultAt("formula", why!);
            return null;
        }
        var brings = perMole * (purity / formula.MolarMass);
        var acidity = SaltComposition.AcidEquivalents(brings);
        if (Math.Abs(acidity) < 1e-9)
        {
            acidity = 0;
        }
        if (kind == SaltKind.Acid && acidity <= 0 && acid is null)
        {
            row.FaultAt("formula", "the formula of an acid, such as HNO3; or another \"kind\"");
            return null;
        }
        return new SaltContent(formula, purity, [], brings, acid ?? acidity);
    }

    public static SolubilityCurve? Solubility(RowReader row, Formula? formula)
    {
        var basis = FormulaOf(row, "solubilityOf") ?? formula;
        var points = row.Rows("solubility", 20);
        var read = new List<SolubilityPoint>();
        foreach (var point in points)
        {
            var celsius = point.Number("celsius", -10, 100, needed: true);
            var grams = point.Number("gramsPerKilogramWater", 0.01, 20_000, needed: true);
            point.Finish();
            if (celsius is { } t && grams is { } g && basis is not null)
            {
                if (read.Count > 0 && t + 273.15 <= read[^1].Temperature)
                {
                    point.FaultAt("celsius", "temperatures that rise");
                }
                else
                {
                    read.Add(new SolubilityPoint(t + 273.15, Molality(g, basis)));
                }
            }
        }
        if (points.Count > 0 && basis is null)
        {
            row.FaultAt("solubility", "\"solubilityOf\" with the formula it is stated for");
        }
        return read.Count > 0 && read.Count == points.Count ? new SolubilityCurve(read) : null;
    }

    // Grams of a hydrate in a kilogram of added water: its own water joins the rest.
    private static double Molality(double grams, Formula basis)
    {
        var moles = grams / 1000 / basis.MolarMass;
        return moles / (1 + moles * (basis.MolarMass - Anhydrous(basis)));
    }

    // Water of a hydrate is what stands behind the last dot; formulas without one are dry.
    private static double Anhydrous(Formula basis)
    {
        var dot = basis.Text.LastIndexOfAny(['·', '*', '.']);
        return dot > 0 && basis.Text.EndsWith("H2O", StringComparison.Ordinal)
            ? Formula.Read(basis.Text[..dot]).Formula?.MolarMass ?? basis.MolarMass
            : basis.MolarMass;
    }

    private static SaltContent? FromLabel(
        RowReader row,
        Formula? formula,
        double purity,
        IReadOnlyList<(string Name, double Percent)> label,
        double acid
    )
    {
        var twice = label
            .GroupBy(line => LabelForms.All.First(form => form.Name == line.Name).Constituent)
            .FirstOrDefault(same => same.Count() > 1);
        if (twice is not null)
        {
            row.FaultAt("label", $"{Forms.Symbol(twice.Key)} once: as the element or as its oxide");
            return null;
        }
        if (label.Sum(line => line.Percent) > 100)
        {
            row.FaultAt("label", "percentages that add up to at most 100");
            return null;
        }
        return new SaltContent(formula, purity, label, LabelForms.Composition(label), acid);
    }

    private static Formula? FormulaOf(RowReader row, string name)
    {
        if (row.Text(name, 120) is not { } text)
        {
            return null;
        }
        var reading = Formula.Read(text);
        if (reading.Fault is { } fault)
        {
            row.FaultAt(name, $"a formula; {fault}");
        }
        return reading.Formula;
    }
}
