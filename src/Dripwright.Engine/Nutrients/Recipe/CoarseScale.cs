using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>What to do where a scale or measure is too coarse for a fertiliser.</summary>
internal static class CoarseScale
{
    // A litre bottle is what everyone has.
    private const double Bottle = 0.001;
    private const double RoomTemperature = 293.15;

    /// <summary>The cure, or null where the line can be weighed well enough.</summary>
    public static CoarseCure? Cure(RecipeJob job, RecipeLine line)
    {
        var limit = RuleBook.Limit("scale-coarse");
        var step = line.Salt.Density is { } density ? job.Scale.MeasureStep * density : job.Scale.Step;
        var error = step / 2 / line.Mass;
        if (error <= limit)
        {
            return null;
        }
        var needed = step / 2 / limit;
        var into = Math.Max(Bottle, needed / Strongest(line.Salt));
        var take = RecipePlanner.Rounded(line.Mass / needed * into, job.Scale.MeasureStep);
        var measurable = job.Scale.MeasureStep / 2 <= limit * take;
        return new CoarseCure(
            line.Salt,
            error,
            job.Volume * needed / line.Mass,
            needed,
            into,
            measurable ? take : null
        );
    }

    // [kg/m³] What dissolves with a margin in a room's water; a salt of unknown solubility is taken to dissolve.
    internal static double Strongest(Salt salt) =>
        salt is { Solubility: { } curve, Formula: { } formula }
            ? RuleBook.Limit("stock-saturated") * 1000 * curve.At(RoomTemperature).Molality * formula.MolarMass
            : double.PositiveInfinity;
}
