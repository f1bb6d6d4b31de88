using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>What a row says of a product's content, from its formula and purity or from its label.</summary>
internal sealed record SaltContent(Formula? Formula, Composition Brings, double AcidEquivalents)
{
    /// <summary>The content; null after noting what is wrong.</summary>
    public static SaltContent? Of(SaltRow row, List<Misfit> misfits)
    {
        var before = misfits.Count;
        var formula = FormulaOf(row.Formula, nameof(row.Formula), misfits);
        if (misfits.Count > before)
        {
            return null;
        }
        if (row.Label.Count > 0)
        {
            return FromLabel(row, formula, misfits);
        }
        if (formula is null)
        {
            misfits.Add(new("", Phrase.Of("fault.salt.content")));
            return null;
        }
        if (SaltComposition.TryOf(formula, out var why) is not { } perMole)
        {
            misfits.Add(new(nameof(row.Formula), why!));
            return null;
        }
        var brings = perMole * (row.Purity / formula.MolarMass);
        var acidity = Acidity(brings);
        if (row.Kind == SaltKind.Acid && acidity <= 0 && row.AcidEquivalentsPerKilogram is null)
        {
            misfits.Add(new(nameof(row.Formula), Phrase.Of("fault.salt.acid")));
            return null;
        }
        return new SaltContent(formula, brings, row.AcidEquivalentsPerKilogram ?? acidity);
    }

    /// <summary>The curve of what dissolves; null where the row states none, or after noting what is wrong.</summary>
    public static SolubilityCurve? SolubilityOf(SaltRow row, Formula? formula, List<Misfit> misfits)
    {
        var basis = FormulaOf(row.SolubilityOf, nameof(row.SolubilityOf), misfits) ?? formula;
        var points = row.Solubility;
        if (points.Count == 0)
        {
            return null;
        }
        for (var i = 1; i < points.Count; i++)
        {
            if (points[i].Temperature <= points[i - 1].Temperature)
            {
                misfits.Add(new(nameof(row.Solubility), Phrase.Of("fault.salt.temperatures")));
                return null;
            }
        }
        if (basis is null)
        {
            // Where the formula is at fault that is told already.
            if (row.Formula is null && row.SolubilityOf is null)
            {
                misfits.Add(new(nameof(row.Solubility), Phrase.Of("fault.salt.solubility-of")));
            }
            return null;
        }
        return new SolubilityCurve([
            .. points.Select(point => new SolubilityPoint(point.Temperature, Molality(point.Dissolves, basis))),
        ]);
    }

    // Kilograms of a hydrate in a kilogram of added water: its own water joins the rest.
    private static double Molality(double kilograms, Formula basis)
    {
        var moles = kilograms / basis.MolarMass;
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

    private static SaltContent? FromLabel(SaltRow row, Formula? formula, List<Misfit> misfits)
    {
        var twice = row
            .Label.Keys.GroupBy(name => LabelForms.All.First(form => form.Name == name).Constituent)
            .FirstOrDefault(same => same.Count() > 1);
        if (twice is not null)
        {
            misfits.Add(new(nameof(row.Label), Phrase.Of("fault.salt.label-twice", Forms.Symbol(twice.Key))));
            return null;
        }
        if (row.Label.Values.Sum() > 100)
        {
            misfits.Add(new(nameof(row.Label), Phrase.Of("fault.salt.percentages")));
            return null;
        }
        var brings = LabelForms.Composition(row.Label.Select(one => (one.Key, one.Value)));
        // A label does not say how sour a product is; the formula beside it may.
        var pure = formula is null ? null : SaltComposition.TryOf(formula, out _);
        var acidity = pure is null ? 0 : Acidity(pure * (row.Purity / formula!.MolarMass));
        return new SaltContent(formula, brings, row.AcidEquivalentsPerKilogram ?? acidity);
    }

    private static double Acidity(Composition brings)
    {
        var acidity = SaltComposition.AcidEquivalents(brings);
        return Math.Abs(acidity) < 1e-9 ? 0 : acidity;
    }

    private static Formula? FormulaOf(string? text, string field, List<Misfit> misfits)
    {
        if (text is null)
        {
            return null;
        }
        var reading = Formula.Read(text);
        if (reading.Fault is { } fault)
        {
            misfits.Add(new(field, Phrase.Of("fault.formula", fault.Found, fault.Position, fault.Expected)));
        }
        return reading.Formula;
    }
}
