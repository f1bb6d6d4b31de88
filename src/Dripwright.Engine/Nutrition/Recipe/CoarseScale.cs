using Dripwright.Engine.Nutrition.Rules;

namespace Dripwright.Engine.Nutrition.Recipe;

/// <summary>What to do where a scale or measure is too coarse for a fertiliser.</summary>
internal static class CoarseScale
{
    // A litre bottle is what everyone has.
    private const double Bottle = 0.001;

    /// <summary>The cure, or null where the line can be weighed well enough.</summary>
    public static CoarseCure? Cure(RecipeJob job, RecipeLine line)
    {
        var limit = NutritionRules.Limit("scale-coarse");
        var step = line.Salt.Density is { } density ? job.Scale.MeasureStep * density : job.Scale.Step;
        var error = step / 2 / line.Mass;
        if (error <= limit)
        {
            return null;
        }
        var needed = step / 2 / limit;
        var take = RecipePlanner.Rounded(line.Mass / needed * Bottle, job.Scale.MeasureStep);
        var measurable = job.Scale.MeasureStep / 2 <= limit * take;
        return new CoarseCure(
            line.Salt,
            error,
            job.Volume * needed / line.Mass,
            needed,
            Bottle,
            measurable ? take : null
        );
    }
}
