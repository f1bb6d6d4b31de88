using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue.Targets;

/// <summary>A target as a file words it; <see cref="NutrientTarget"/> is what that means.</summary>
internal sealed record TargetRow : CatalogueRow
{
    // Names of elements in the file; nitrogen in three ways.
    private const string Names = "n no3 nh4 p k ca mg s na cl si fe mn zn cu b mo";

    private static readonly Dictionary<string, Constituent> s_constituents = new(StringComparer.Ordinal)
    {
        ["n"] = Constituent.NitrateNitrogen,
        ["no3"] = Constituent.NitrateNitrogen,
        ["nh4"] = Constituent.AmmoniumNitrogen,
        ["p"] = Constituent.Phosphorus,
        ["k"] = Constituent.Potassium,
        ["ca"] = Constituent.Calcium,
        ["mg"] = Constituent.Magnesium,
        ["s"] = Constituent.Sulfur,
        ["na"] = Constituent.Sodium,
        ["cl"] = Constituent.Chloride,
        ["si"] = Constituent.Silicon,
        ["fe"] = Constituent.Iron,
        ["mn"] = Constituent.Manganese,
        ["zn"] = Constituent.Zinc,
        ["cu"] = Constituent.Copper,
        ["b"] = Constituent.Boron,
        ["mo"] = Constituent.Molybdenum,
    };

    /// <summary>How sure the figures are.</summary>
    [Choice("published"), Says("How sure the figures are.")]
    public Sureness Sure { get; init; }

    /// <summary>[S/m] Strength that its source lists.</summary>
    [
        Quantity(Dimension.Conductivity, "0.1 dS/m", "20 dS/m"),
        Formerly("decisiemensPerMetre"),
        FoundByPlan("not listed"),
        Says("Strength (EC) at 25 °C that its source lists.")
    ]
    public double? Conductivity { get; init; }

    /// <summary>[mg/L] What is wanted, by the names of the elements.</summary>
    [Amounts(5000, Names), Says("What is wanted, nitrogen as N, sulfur as S.")]
    public IReadOnlyDictionary<string, double> MilligramsPerLitre { get; init; } = new Dictionary<string, double>();

    /// <summary>[mol/m³] What is wanted, by the names of the elements.</summary>
    [Amounts(200, Names), Says("What is wanted.")]
    public IReadOnlyDictionary<string, double> MillimolesPerLitre { get; init; } = new Dictionary<string, double>();

    /// <inheritdoc/>
    internal override CatalogueRow StartOf(Func<string, bool> gives) =>
        // Amounts are a whole: a few new ones among the old would be nobody's proportions.
        gives("milligramsPerLitre") || gives("millimolesPerLitre")
            ? this with
            {
                MilligramsPerLitre = new Dictionary<string, double>(),
                MillimolesPerLitre = new Dictionary<string, double>(),
            }
            : this;

    /// <summary>What the row means; null with what is wrong where it cannot be.</summary>
    public (NutrientTarget? Target, IReadOnlyList<Misfit> Misfits) Read()
    {
        var misfits = new List<Misfit>();
        var wanted = new Dictionary<Constituent, double>();
        var given = MilligramsPerLitre
            .Select(one => (one.Key, one.Value / 1000 / Forms.MassPerMole(s_constituents[one.Key])))
            .Concat(MillimolesPerLitre.Select(one => (one.Key, one.Value)));
        var isSum = false;
        foreach (var (name, amount) in given)
        {
            isSum |= name == "n";
            if (!wanted.TryAdd(s_constituents[name], amount))
            {
                misfits.Add(new("", Phrase.Of("fault.target.twice", name)));
            }
        }
        if (wanted.Count == 0)
        {
            misfits.Add(new("", Phrase.Of("fault.target.empty")));
        }
        if (isSum && wanted.ContainsKey(Constituent.AmmoniumNitrogen))
        {
            misfits.Add(new("", Phrase.Of("fault.target.nitrogen")));
        }
        if (misfits.Count > 0)
        {
            return (null, misfits);
        }
        var target = new NutrientTarget
        {
            Key = Key,
            Name = Name,
            Wanted = wanted,
            NitrogenIsSum = isSum,
            Conductivity = Conductivity,
            Source = Source,
            Sure = Sure,
            Row = this,
        };
        return (target, misfits);
    }
}
