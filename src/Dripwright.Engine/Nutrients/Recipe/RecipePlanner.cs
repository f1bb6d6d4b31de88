using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>Finds what to weigh.</summary>
/// <remarks>
/// In this order: the acid that the alkalinity asks for, as far as there is any; then the amounts, none below 0 and all limits
/// held, whose weighted misses squared are least in sum; then, among all amounts that fit equally well, the cheapest.
/// Method page: docs/methods/recipe.md
/// </remarks>
public static class RecipePlanner
{
    /// <summary>Plans a recipe.</summary>
    /// <param name="job">What is asked.</param>
    /// <returns>The recipe with all that is to be said of it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number of the job makes no sense: a volume of nothing, a negative target, limit,
    /// weight or price.</exception>
    public static NutrientRecipe Plan(RecipeJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        Check(job);
        var model = new RecipeModel(job);
        var amounts = model.Solve();
        var lines = Lines(job, model, amounts);
        var added = Sum(lines, line => line.Concentration);
        var weighed = Sum(lines, line => line.Weighed / job.Volume);
        var water = job.Water.Composition;
        var whole = water + added;
        var given = lines.Sum(line => line.Concentration * RecipeModel.AcidOf(line.Salt));
        var nitrogen = whole[Constituent.NitrateNitrogen] + whole[Constituent.AmmoniumNitrogen];
        var recipe = new NutrientRecipe
        {
            Job = job,
            Lines = lines,
            Composition = whole,
            Elements = Elements(job, added, water + weighed),
            AcidDemand = job.Demand,
            AcidGiven = given,
            Alkalinity = job.Water.Alkalinity - given,
            AmmoniumShare = nitrogen > 0 ? whole[Constituent.AmmoniumNitrogen] / nitrogen : 0,
            Misfit = model.Misfit(amounts),
            Cost = lines.Sum(line => (line.Salt.PricePerKilogram ?? 0) * (decimal)line.Mass),
            Unpriced = [.. lines.Where(line => line.Salt.PricePerKilogram is null).Select(line => line.Salt.Name)],
            Coarse = [.. lines.Select(line => CoarseScale.Cure(job, line)).OfType<CoarseCure>()],
            Optimal = model.Optimal,
            Findings = [],
        };
        return recipe with { Findings = RecipeFindings.Of(recipe, []) };
    }

    private static void Check(RecipeJob job)
    {
        Guard.Positive(job.Volume);
        Guard.Between(job.MostAmmoniumShare, 0, 1);
        Guard.NotNegative(job.AlkalinityLeft);
        Guard.Between(job.PH, 2, 10);
        Guard.Positive(job.Scale.Step);
        Guard.Positive(job.Scale.MeasureStep);
        Guard.NotNegative(job.AcidDemand ?? 0);
        Guard.NotNegative(job.MostChloride ?? 0);
        Guard.NotNegative(job.MostSodium ?? 0);
        Guard.NotNegative(job.MostSilicon ?? 0);
        foreach (var (constituent, wanted) in job.Target.Wanted)
        {
            Guard.NotNegative(wanted, nameof(job));
            Guard.NotNegative(job.Weights[constituent], nameof(job));
        }
        foreach (var hand in job.Salts)
        {
            Guard.NotNegative(hand.Most ?? 0, nameof(job));
            ArgumentOutOfRangeException.ThrowIfNegative(hand.Salt.PricePerKilogram ?? 0, nameof(job));
        }
    }

    private static List<RecipeLine> Lines(RecipeJob job, RecipeModel model, double[] amounts)
    {
        var lines = new List<RecipeLine>();
        for (var j = 0; j < amounts.Length; j++)
        {
            if (amounts[j] <= 0)
            {
                continue;
            }
            var salt = model.AtHand[j].Salt;
            var mass = amounts[j] * job.Volume;
            if (salt.Density is { } density)
            {
                var measured = Rounded(mass / density, job.Scale.MeasureStep);
                lines.Add(new RecipeLine(salt, amounts[j], mass, measured * density, measured));
            }
            else
            {
                lines.Add(new RecipeLine(salt, amounts[j], mass, Rounded(mass, job.Scale.Step), null));
            }
        }
        return lines;
    }

    internal static double Rounded(double value, double step) =>
        Math.Round(value / step, MidpointRounding.AwayFromZero) * step;

    private static Composition Sum(List<RecipeLine> lines, Func<RecipeLine, double> amount) =>
        lines.Aggregate(Composition.Nothing, (sum, line) => sum + line.Salt.Brings * amount(line));

    private static List<ElementResult> Elements(RecipeJob job, Composition added, Composition weighed)
    {
        var water = job.Water.Composition;
        var target = job.Plain ?? job.Target;
        var elements = new List<ElementResult>();
        foreach (var key in Composition.Constituents)
        {
            double? wanted = target.Wanted.TryGetValue(key, out var value) ? value : null;
            if (wanted is null && water[key] + added[key] <= 0)
            {
                continue;
            }
            var sum = target.NitrogenIsSum && key == Constituent.NitrateNitrogen;
            double Of(Composition composition) =>
                composition[key] + (sum ? composition[Constituent.AmmoniumNitrogen] : 0);
            var tolerance = Tolerance(key);
            var verdict = Verdict(key, wanted, Of(water), Of(water) + Of(added), tolerance);
            elements.Add(new ElementResult(key, wanted, Of(water), Of(added), Of(weighed), tolerance, verdict));
        }
        return elements;
    }

    // Plants take a wide range of sulfur.
    private static double Tolerance(Constituent key) =>
        key == Constituent.Sulfur ? RuleBook.Limit("recipe-unreached")
        : Charges.IsTrace(key) ? RuleBook.Limit("recipe-trace-unreached")
        : RuleBook.Limit("recipe-off");

    private static ElementVerdict Verdict(
        Constituent key,
        double? wanted,
        double water,
        double result,
        double tolerance
    )
    {
        if (wanted is not { } target)
        {
            return ElementVerdict.NotAsked;
        }
        var room = tolerance * FitWeights.ScaleOf(key, target);
        return water > target + room ? ElementVerdict.WaterOver
            : result > target + room ? ElementVerdict.Over
            : result < target - room ? ElementVerdict.Under
            : ElementVerdict.Reached;
    }
}
