using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>How near a concentrate is to letting one of its salts crystallise.</summary>
/// <param name="Solid">The salt by its ions, or the product where it crystallises as itself.</param>
/// <param name="Share">[-] 1 is saturated: the mean of its ions over what its own saturated solution holds.</param>
/// <param name="Guessed">True where its solubility at this temperature is a guess.</param>
public readonly record struct CanSaturation(Phrase Solid, double Share, bool Guessed);

/// <summary>Judges what stands dissolved in a can.</summary>
/// <remarks>
/// A salt of ions i with ν_i of each crystallises when Π m_i^ν_i passes that of its saturated solution, whichever salts brought the
/// ions (common ions add up): share = [Π (m_i / (ν_i s))^ν_i]^(1/Σν), m in mol per kilogram of water, s its solubility.
/// Activities are taken as those of the pure saturated solution. A kilogram of dissolved ions takes up 0.4 L (from memory of
/// densities: 0.1 to 0.45). Method page: docs/methods/recipe.md
/// </remarks>
internal static class CanContents
{
    private const double VolumePerMass = 0.0004;

    private static readonly double[] s_ionMass =
    [
        .. Composition.Constituents.Select(key =>
            key switch
            {
                Constituent.NitrateNitrogen => Formula.Parse("NO3").MolarMass,
                Constituent.AmmoniumNitrogen => Formula.Parse("NH4").MolarMass,
                Constituent.Phosphorus => Formula.Parse("H2PO4").MolarMass,
                Constituent.Sulfur => Formula.Parse("SO4").MolarMass,
                Constituent.Boron => Formula.Parse("H3BO3").MolarMass,
                Constituent.Molybdenum => Formula.Parse("MoO4").MolarMass,
                _ => AtomicMasses.Of(Forms.Symbol(key)),
            }
        ),
    ];

    private sealed record Crystal(
        string Key,
        Phrase Name,
        SolubilityCurve Curve,
        IReadOnlyList<(Constituent Ion, double Count)> Ions
    );

    private static readonly Lazy<IReadOnlyList<Crystal>> s_crystals = new(() =>
        Crystals(SaltCatalogue.Default.Salts.Values)
    );

    /// <summary>[kg/m³] Water in a cubic metre of a solution; never less than a tenth, for what would not dissolve anyway.</summary>
    public static double Water(Composition contents)
    {
        var mass = Composition.Constituents.Sum(key => Math.Max(0, contents[key]) * s_ionMass[(int)key]);
        return Math.Max(100, 1000 * (1 - VolumePerMass * mass));
    }

    /// <summary>Every crystal whose ions are all there, the nearest to saturation first.</summary>
    /// <param name="contents">[mol/m³] What a cubic metre of the concentrate holds.</param>
    /// <param name="own">Salts in it, whose solubility the catalogue may not have.</param>
    /// <param name="temperature">[K] The coldest it is stored at.</param>
    public static IReadOnlyList<CanSaturation> Saturations(
        Composition contents,
        IEnumerable<Salt> own,
        double temperature
    )
    {
        var water = Water(contents);
        var shares = new Dictionary<string, CanSaturation>(StringComparer.Ordinal);
        foreach (var crystal in s_crystals.Value.Concat(Crystals(own)))
        {
            if (crystal.Ions.Any(ion => contents[ion.Ion] <= 0))
            {
                continue;
            }
            var (molality, beyond) = crystal.Curve.At(temperature);
            var log = 0.0;
            foreach (var (ion, count) in crystal.Ions)
            {
                log += count * Math.Log(contents[ion] / water / (count * molality));
            }
            var share = Math.Exp(log / crystal.Ions.Sum(ion => ion.Count));
            if (!shares.TryGetValue(crystal.Key, out var known) || known.Share < share)
            {
                shares[crystal.Key] = new CanSaturation(crystal.Name, share, beyond);
            }
        }
        return
        [
            .. shares
                .OrderByDescending(pair => pair.Value.Share)
                .ThenBy(pair => pair.Key, StringComparer.Ordinal)
                .Select(pair => pair.Value),
        ];
    }

    // A chelate crystallises as itself; its metal counts it. Acids and bases do not crystallise from a feed concentrate.
    private static List<Crystal> Crystals(IEnumerable<Salt> salts)
    {
        var found = new List<Crystal>();
        foreach (var salt in salts)
        {
            if (salt.Solubility is not { } curve || salt.Kind is SaltKind.Acid or SaltKind.Base)
            {
                continue;
            }
            if (salt.Kind == SaltKind.Chelate)
            {
                var metal = Composition.Constituents.FirstOrDefault(key =>
                    Charges.IsTrace(key) && salt.Brings[key] > 0
                );
                found.Add(new Crystal(salt.Name, Phrase.Plain(salt.Name), curve, [(metal, 1)]));
            }
            else if (
                salt.Label.Count == 0
                && salt.Formula is { } formula
                && SaltComposition.TryOf(formula, out _) is { } ions
                && ions[Constituent.Calcium] * (ions[Constituent.Sulfur] + ions[Constituent.Phosphorus]) == 0
                && !(ions[Constituent.Calcium] > 0 && ions[Constituent.AmmoniumNitrogen] > 0)
            )
            {
                List<(Constituent, double)> counted =
                [
                    .. Composition.Constituents.Where(key => ions[key] > 0).Select(key => (key, ions[key])),
                ];
                found.Add(new Crystal(KeyOf(counted), NameOf(counted), curve, counted));
            }
        }
        return found;
    }

    private static string KeyOf(List<(Constituent Ion, double Count)> ions) =>
        string.Join('+', ions.Select(ion => Forms.ShortName(ion.Ion)));

    private static Phrase NameOf(List<(Constituent Ion, double Count)> ions) =>
        Phrase.Of("stock.solid", new Several([.. ions.Select(ion => Elements.Ion(ion.Ion))]));
}
