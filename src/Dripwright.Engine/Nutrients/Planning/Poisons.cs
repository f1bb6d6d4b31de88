using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>Elements that poison the crop at a few times what feeds it.</summary>
/// <remarks>
/// Ceilings: R. S. Ayers and D. W. Westcot, Water quality for agriculture, FAO Irrigation and Drainage Paper 29, tables of trace
/// elements and of boron tolerance (from memory): boron 2 mg/L is the end of what cucumber bears; copper is poisonous to many
/// plants from 0.1 to 1 mg/L in solution; zinc at most 2 mg/L.
/// </remarks>
internal static class Poisons
{
    private static readonly (Constituent Element, double Ceiling, string Wanted)[] s_ceilings =
    [
        (Constituent.Boron, 2 / 10.81, "nutrients.wanted.boron"),
        (Constituent.Copper, 1 / 63.546, "nutrients.wanted.copper"),
        (Constituent.Zinc, 2 / 65.38, "nutrients.wanted.zinc"),
    ];

    /// <summary>A finding for each element over its ceiling.</summary>
    public static IEnumerable<Finding> In(NutrientPlan plan) =>
        s_ceilings
            .Where(c => plan.Recipe.Composition[c.Element] > c.Ceiling * (1 + 1e-9))
            .Select(c =>
                Judged.By(
                    "element-poisons",
                    Place.Of("place.nutrients"),
                    [c.Wanted, NutrientPaths.Of(c.Element), NutrientPaths.PureShare],
                    Phrase.Of("finding.element-poisons.what", Elements.Name(c.Element)),
                    Phrase.Of(Elements.Amount(c.Element, plan.Recipe.Composition[c.Element])),
                    Limit.AtMost(Elements.Amount(c.Element, c.Ceiling)),
                    Phrase.Of("finding.element-poisons.remedy")
                )
            );
}
