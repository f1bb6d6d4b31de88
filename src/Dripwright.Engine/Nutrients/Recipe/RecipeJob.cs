using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>A fertiliser that the grower has.</summary>
/// <param name="Salt">What it is.</param>
/// <param name="Most">[kg] How much of it there is for this mix; null for enough.</param>
public sealed record SaltAtHand(Salt Salt, double? Most = null);

/// <summary>What can be weighed and measured out.</summary>
/// <param name="Step">[kg] Smallest step of the scale; 0.0001 is a tenth of a gram.</param>
/// <param name="MeasureStep">[m³] Smallest step of the measure for liquids; 1e-6 is a millilitre.</param>
public sealed record WeighingScale(double Step = 0.0001, double MeasureStep = 1e-6);

/// <summary>What a recipe is asked for.</summary>
/// <remarks>Method page: docs/methods/recipe.md</remarks>
public sealed record RecipeJob
{
    /// <summary>The water to mix with.</summary>
    public required WaterSupply Water { get; init; }

    /// <summary>What the feed should hold.</summary>
    public required NutrientTarget Target { get; init; }

    /// <summary>What the elements are held against; the target itself where null.</summary>
    /// <remarks>A target is strengthened so that salts which miss a part of it still reach the EC; what they miss is told
    /// against the target as it was.</remarks>
    public NutrientTarget? Plain { get; init; }

    /// <summary>Fertilisers at hand. Their order does not matter; of two with the same key the first counts.</summary>
    public required IReadOnlyList<SaltAtHand> Salts { get; init; }

    /// <summary>[m³] Volume of feed to mix.</summary>
    public double Volume { get; init; } = 0.1;

    /// <summary>How much a miss of each element counts.</summary>
    public FitWeights Weights { get; init; } = FitWeights.Default;

    /// <summary>[mol/m³ of charge] Alkalinity to leave as a buffer where the water has more: 0.5 to 1 is common practice.</summary>
    public double AlkalinityLeft { get; init; } = 0.5;

    /// <summary>[mol/m³] H⁺ to add, where a model of the pH knows better than alkalinity less what is left.</summary>
    public double? AcidDemand { get; init; }

    /// <summary>[-] Most of the nitrogen that may be ammonium.</summary>
    public double MostAmmoniumShare { get; init; } = 0.15;

    /// <summary>[mol/m³] Most chloride in the feed; null for no limit.</summary>
    public double? MostChloride { get; init; }

    /// <summary>[mol/m³] Most sodium in the feed; null for no limit. What traces bring along does not count.</summary>
    public double? MostSodium { get; init; }

    /// <summary>[mol/m³] Most silicon in the feed; null for no limit.</summary>
    public double? MostSilicon { get; init; }

    /// <summary>[-] pH at which the feed will be kept, to see whether chelates hold.</summary>
    public double PH { get; init; } = 5.8;

    /// <summary>What can be weighed and measured.</summary>
    public WeighingScale Scale { get; init; } = new();

    internal double Demand => AcidDemand ?? Math.Max(0, Water.Alkalinity - AlkalinityLeft);
}

/// <summary>How much a miss of each element counts: the fit makes Σ (weight · miss / target)² least.</summary>
/// <remarks>
/// A miss is taken relative to the target, and where nothing is wanted to 1 mol/m³ (main elements) or 0.01 mol/m³
/// (traces). Main elements count 1; sulfur 0.3, because plants take a wide range of it; ammonium 0.3, because what
/// matters is that its share stays small, and its small target would else pull calcium along. A trace that comes in one bag with main
/// elements counts a fiftieth of that, so that the bag is weighed by its main elements. All are common practice.
/// </remarks>
public sealed record FitWeights
{
    /// <summary>The weights of the class remarks.</summary>
    public static FitWeights Default { get; } = new();

    /// <summary>[-] Weights that differ from the default.</summary>
    public IReadOnlyDictionary<Constituent, double> Changed { get; init; } = new Dictionary<Constituent, double>();

    /// <summary>[-] The weight of a constituent; 0 leaves it out of the fit.</summary>
    public double this[Constituent constituent] =>
        Changed.TryGetValue(constituent, out var weight) ? weight
        : constituent is Constituent.Sulfur or Constituent.AmmoniumNitrogen ? 0.3
        : 1;

    internal static double ScaleOf(Constituent constituent, double wanted) =>
        wanted > 0 ? wanted
        : Charges.IsTrace(constituent) ? 0.01
        : 1;
}
