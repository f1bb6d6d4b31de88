using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>The salts of a recipe, weighed straight into the tank. One unit is what a cubic metre of feed gets.</summary>
/// <remarks>
/// Acid is left out: it belongs to the alkalinity of fresh water, and a tank that has drifted gets its own, by its pH. The
/// volume of dissolved salts is left out too; in a feed it is under a thousandth.
/// </remarks>
public sealed record SaltDose : Strengthener
{
    private readonly IReadOnlyList<RecipeLine> _lines;
    private readonly WeighingScale _scale;

    /// <summary>The salts of a recipe.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="decisiemensPerMetre">[dS/m] What a unit adds to a cubic metre.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rise is not positive.</exception>
    public SaltDose(NutrientRecipe recipe, double decisiemensPerMetre)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        Strength = Guard.Positive(decisiemensPerMetre);
        _lines = [.. recipe.Lines.Where(line => line.Salt.Kind != SaltKind.Acid)];
        _scale = recipe.Job.Scale;
        Brings = _lines.Aggregate(Composition.Nothing, (sum, line) => sum + (line.Salt.Brings * line.Concentration));
    }

    /// <inheritdoc/>
    public override double Strength { get; }

    /// <inheritdoc/>
    public override double Bulk => 0;

    /// <inheritdoc/>
    public override Composition Brings { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<Phrase> Cautions => [Phrase.Of("tank.caution.salts")];

    /// <summary>What to weigh for some units, the most first.</summary>
    /// <param name="units">[m³] Volume of full-strength feed that the salts would make.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is negative.</exception>
    public IReadOnlyList<WeighedSalt> Weigh(double units)
    {
        Guard.NotNegative(units);
        return
        [
            .. _lines
                .Select(line =>
                {
                    var mass = line.Concentration * units;
                    double? measured = line.Salt.Density is { } density
                        ? RecipePlanner.Rounded(mass / density, _scale.MeasureStep)
                        : null;
                    var weighed = measured * line.Salt.Density ?? RecipePlanner.Rounded(mass, _scale.Step);
                    return new WeighedSalt(line.Salt.Name, mass, weighed, measured, _scale.Step);
                })
                .OrderByDescending(salt => salt.Mass),
        ];
    }

    internal override bool CanGive(double units) => Weigh(units).Any(salt => salt.Weighed > 0);

    internal override IEnumerable<TankStep> Give(double units, bool isPart)
    {
        var all = Weigh(units);
        List<Phrase> leftOut = [.. all.Where(salt => salt.Weighed <= 0).Select(salt => Phrase.Plain(salt.Name))];
        yield return new TankStep(
            TankStepKind.Salts,
            0,
            leftOut.Count == 0
                ? Phrase.Of(isPart ? "tank.step.salts.part" : "tank.step.salts")
                : Phrase.Of(isPart ? "tank.step.salts.part.left-out" : "tank.step.salts.left-out", new Several(leftOut))
        )
        {
            Weigh = [.. all.Where(salt => salt.Weighed > 0)],
        };
    }
}
