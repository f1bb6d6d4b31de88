using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>What a pure compound brings, read from the groups of its formula.</summary>
public static class SaltComposition
{
    /// <summary>Constituents in one mole of a formula, or why it cannot be told.</summary>
    /// <param name="formula">Formula of a salt, acid or base.</param>
    /// <param name="why">Why not; null when it can.</param>
    /// <returns>[mol/mol] The constituents, or null.</returns>
    /// <remarks>
    /// Nitrogen must stand as NO3 or NH4 (or NH3), sulfur as SO4, phosphorus as PO4, carbon as CO3: in any other group they are not
    /// what plants take up at once, or not what we count. Other elements but H and O, such as Al or Hg, are refused.
    /// </remarks>
    public static Composition? TryOf(Formula formula, out Phrase? why)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var nitrate = formula.Groups.GetValueOrDefault(AtomGroup.Nitrate);
        var ammonium = formula.Groups.GetValueOrDefault(AtomGroup.Ammonium);
        why =
            !Same(formula.Count("N"), nitrate + ammonium) ? Phrase.Of("fault.salt.nitrogen")
            : !Same(formula.Count("P"), formula.Groups.GetValueOrDefault(AtomGroup.Phosphate))
                ? Phrase.Of("fault.salt.phosphorus")
            : !Same(formula.Count("S"), formula.Groups.GetValueOrDefault(AtomGroup.Sulfate))
                ? Phrase.Of("fault.salt.sulfur")
            : !Same(formula.Count("C"), formula.Groups.GetValueOrDefault(AtomGroup.Carbonate))
                ? Phrase.Of("fault.salt.carbon")
            : null;
        if (why is not null)
        {
            return null;
        }
        var amounts = new List<(Constituent, double)>
        {
            (Constituent.NitrateNitrogen, nitrate),
            (Constituent.AmmoniumNitrogen, ammonium),
        };
        foreach (var (symbol, count) in formula.Atoms)
        {
            if (symbol is "H" or "O" or "N")
            {
                continue;
            }
            if (Counted(symbol) is not { } constituent)
            {
                why = Phrase.Of("fault.salt.not-counted", symbol);
                return null;
            }
            amounts.Add((constituent, count));
        }
        return Composition.Of(amounts);
    }

    /// <summary>Acid that a composition of neutral compounds sets free, as its charges tell.</summary>
    /// <param name="composition">[mol/kg or mol/mol] What is brought.</param>
    /// <returns>[mol of H⁺ in the same unit] Positive for acids, negative for bases, 0 for neutral salts.</returns>
    /// <remarks>Phosphate counts as H2PO4⁻, so phosphoric acid sets one H⁺ free. A fresh solution is neutral: what charge the
    /// constituents lack is H⁺, what they have too much is OH⁻ or carbonate.</remarks>
    public static double AcidEquivalents(Composition composition)
    {
        ArgumentNullException.ThrowIfNull(composition);
        return -Composition.Constituents.Sum(constituent => Charges.Of(constituent) * composition[constituent]);
    }

    private static Constituent? Counted(string symbol)
    {
        foreach (var constituent in Composition.Constituents)
        {
            if (symbol != "N" && Forms.Symbol(constituent) == symbol)
            {
                return constituent;
            }
        }
        return null;
    }

    private static bool Same(double a, double b) => Math.Abs(a - b) <= 1e-9 * Math.Max(a, b);
}
