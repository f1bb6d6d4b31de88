using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Catalogue.Targets;

/// <summary>What a feed should hold.</summary>
/// <remarks>Method page: docs/methods/nutrient-targets.md</remarks>
public sealed record NutrientTarget
{
    // Factors between which a target may be thinned or strengthened; beyond, it is no longer that recipe.
    private const double LeastFactor = 0.1;
    private const double MostFactor = 5;

    /// <summary>Its name in a file, lower case with dashes.</summary>
    public required string Key { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Name { get; init; }

    /// <summary>[mol/m³] What is wanted. A constituent that is not listed is not asked for: it comes as the salts bring it.</summary>
    public required IReadOnlyDictionary<Constituent, double> Wanted { get; init; }

    /// <summary>True where the source states nitrogen as one sum: it then stands under nitrate, and ammonium counts towards it.</summary>
    public bool NitrogenIsSum { get; init; }

    /// <summary>[S/m] Strength its source lists for it; null where it lists none.</summary>
    public double? Conductivity { get; init; }

    /// <summary>Where the figures come from.</summary>
    public required string Source { get; init; }

    /// <summary>How sure they are.</summary>
    public Sureness Sure { get; init; } = Sureness.Published;

    /// <summary>The row as its file words it, from which another may start.</summary>
    internal TargetRow? Row { get; init; }

    /// <summary>[mol/m³] What is wanted as a composition, with sulfate filled up to neutral where it is not listed.</summary>
    /// <remarks>Salts are neutral, so what charge the other ions lack must come as sulfate (or chloride, which nobody wants).</remarks>
    public Composition Complete
    {
        get
        {
            var listed = Composition.Of(Wanted.Select(pair => (pair.Key, pair.Value)));
            var lacking = Charges.Cations(listed) - Charges.Anions(listed);
            return Wanted.ContainsKey(Constituent.Sulfur) || lacking <= 0
                ? listed
                : listed.With(Constituent.Sulfur, lacking / 2);
        }
    }

    /// <summary>The target with nitrogen as one sum, for salts that bring no ammonium to speak of.</summary>
    public NutrientTarget WithNitrogenAsSum()
    {
        if (NitrogenIsSum || !Wanted.TryGetValue(Constituent.AmmoniumNitrogen, out var ammonium))
        {
            return this;
        }
        var wanted = Wanted.Where(pair => pair.Key != Constituent.AmmoniumNitrogen).ToDictionary();
        wanted[Constituent.NitrateNitrogen] = ammonium + wanted.GetValueOrDefault(Constituent.NitrateNitrogen);
        return this with { Wanted = wanted, NitrogenIsSum = true };
    }

    /// <summary>The strength of a composition by the simple cation rule: 0.1 dS/m for 1 meq/L of cations.</summary>
    /// <param name="composition">[mol/m³] A feed.</param>
    /// <returns>[S/m] Conductivity at 25 °C, 6 to 13 % low for feeds under 25 meq/L.</returns>
    public static double CationRule(Composition composition) => 0.01 * Charges.Cations(composition);

    /// <summary>The target thinned or strengthened in its main elements; traces stay as they are.</summary>
    /// <remarks>Published stage tables hold the traces while the main elements change, so we do too.</remarks>
    /// <param name="factor">[-] 0.1 to 5.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is outside its range.</exception>
    public NutrientTarget Times(double factor)
    {
        Guard.Between(factor, LeastFactor, MostFactor);
        return this with
        {
            Wanted = Wanted.ToDictionary(
                pair => pair.Key,
                pair => Charges.IsTrace(pair.Key) ? pair.Value : pair.Value * factor
            ),
            Conductivity = null,
        };
    }

    /// <summary>The target at a wanted strength.</summary>
    /// <param name="conductivity">[S/m] Wanted conductivity at 25 °C; 1 dS/m = 0.1 S/m.</param>
    /// <param name="model">[S/m] Conductivity of a composition; <see cref="CationRule"/> where null. It must grow with strength.</param>
    /// <returns>The target, or null when no factor from 0.1 to 5 reaches the strength.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The strength is not above 0.</exception>
    public NutrientTarget? TryScaledTo(double conductivity, Func<Composition, double>? model = null)
    {
        Guard.Positive(conductivity);
        model ??= CationRule;
        var (low, high) = (LeastFactor, MostFactor);
        if (model(Times(low).Complete) > conductivity || model(Times(high).Complete) < conductivity)
        {
            return null;
        }
        // Halving needs nothing of the model but that it grows; 60 halvings are beyond what a double tells apart.
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (model(Times(middle).Complete) < conductivity)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }
        return Times((low + high) / 2) with { Conductivity = conductivity };
    }
}
