namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>Charges of the constituents in the form in which they stand in a feed of pH 5 to 6.</summary>
/// <remarks>
/// Phosphate counts as H2PO4⁻, boron, silicon and carbon as uncharged (boric and silicic acid, carbon dioxide), metals as
/// their free ions of charge 2, molybdenum as MoO4²⁻. With these, cations less anions is the alkalinity: what acid the solution
/// takes up until all carbonate is gone and phosphate is H2PO4⁻. Ions that are not counted (a chelate's ligand) are left
/// out, so trace metals are not in the sums of <see cref="Cations"/> and <see cref="Anions"/>.
/// Method page: docs/methods/water-analysis.md
/// </remarks>
public static class Charges
{
    private static readonly int[] s_charges = [-1, 1, -1, 1, 2, 2, -2, 1, -1, 0, 0, 2, 2, 2, 2, 0, -2];

    /// <summary>[-] Charge of one mole of the constituent, in moles of charge with its sign.</summary>
    public static int Of(Constituent constituent) =>
        (int)constituent >= 0 && (int)constituent < s_charges.Length
            ? s_charges[(int)constituent]
            : throw new ArgumentOutOfRangeException(nameof(constituent), constituent, "No such constituent.");

    /// <summary>True for what plants take in traces: iron, manganese, zinc, copper, boron, molybdenum.</summary>
    public static bool IsTrace(Constituent constituent) => constituent >= Constituent.Iron;

    /// <summary>Charge of the cations: ammonium, potassium, calcium, magnesium, sodium.</summary>
    /// <returns>[mol/m³] Moles of charge; the same number as meq/L.</returns>
    public static double Cations(Composition composition) => Sum(composition, 1);

    /// <summary>Charge of the anions without bicarbonate: nitrate, phosphate as H2PO4⁻, sulfate, chloride.</summary>
    /// <returns>[mol/m³] Moles of charge, counted positive.</returns>
    public static double Anions(Composition composition) => Sum(composition, -1);

    private static double Sum(Composition composition, int sign)
    {
        ArgumentNullException.ThrowIfNull(composition);
        var sum = 0.0;
        foreach (var constituent in Composition.Constituents)
        {
            var charge = Of(constituent) * sign;
            if (charge > 0 && !IsTrace(constituent))
            {
                sum += charge * composition[constituent];
            }
        }
        return sum;
    }
}
