using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
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

    /// <summary>What to weigh for some units, in the order in which it goes in.</summary>
    /// <remarks>What the scale is too coarse for comes out of a bottle: see <see cref="MixedBottle"/>.</remarks>
    /// <param name="units">[m³] Volume of full-strength feed that the salts would make.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is negative.</exception>
    public IReadOnlyList<WeighedSalt> Weigh(double units)
    {
        Guard.NotNegative(units);
        if (units <= 0)
        {
            return [];
        }
        var coarse = _lines
            .Where(line => IsCoarse(line, units))
            .GroupBy(line =>
                !RecipeModel.HasTraces(line.Salt) ? line.Salt.Key
                : line.Salt.Kind == SaltKind.Chelate ? "chelates"
                : "traces"
            )
            .Select(group => MixedBottle.Dose([.. group], units, _scale))
            .Where(dose => dose.Measured > 0);
        return
        [
            .. _lines
                .Where(line => !IsCoarse(line, units))
                .Select(line => Weighed(line, units))
                .Concat(coarse)
                .OrderBy(salt => salt.Order)
                .ThenByDescending(salt => salt.Mass),
        ];
    }

    /// <summary>The acid that so much fresh water gets with the recipe.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="water">[m³] The water.</param>
    public static IEnumerable<WeighedSalt> AcidFor(NutrientRecipe recipe, double water)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        foreach (var line in recipe.Lines.Where(line => line.Salt is { Kind: SaltKind.Acid, Density: not null }))
        {
            var density = line.Salt.Density!.Value;
            var mass = line.Concentration * water;
            var measured = MixedBottle.Syringe(mass / density);
            if (measured >= TankCorrection.LeastDose)
            {
                yield return new WeighedSalt(line.Salt.Name, mass, measured * density, measured, recipe.Job.Scale.Step)
                {
                    Brings = line.Salt.Brings * (measured * density),
                };
            }
        }
    }

    private bool IsCoarse(RecipeLine line, double units)
    {
        var mass = line.Concentration * units;
        var step = line.Salt.Density is { } density
            ? density * (mass / density < 1e-5 ? TankCorrection.LeastDose : _scale.MeasureStep)
            : _scale.Step;
        return step / 2 / mass > RuleBook.Limit("scale-coarse");
    }

    private WeighedSalt Weighed(RecipeLine line, double units)
    {
        var mass = line.Concentration * units;
        double? measured = line.Salt.Density is { } density ? MixedBottle.Syringe(mass / density) : null;
        var weighed = measured * line.Salt.Density ?? RecipePlanner.Rounded(mass, _scale.Step);
        return new WeighedSalt(line.Salt.Name, mass, weighed, measured, _scale.Step)
        {
            Brings = line.Salt.Brings * weighed,
            Order = MixingOrder.Of(line.Salt),
        };
    }

    // Less than what a kitchen tells apart is left alone, whatever the syringe could do.
    internal override bool CanGive(double units) =>
        _lines.Any(line => RecipePlanner.Rounded(line.Concentration * units, _scale.Step) > 0);

    internal override IEnumerable<TankStep> Give(double units, bool isPart)
    {
        yield return new TankStep(TankStepKind.Salts, 0, Phrase.Of(isPart ? "tank.step.salts.part" : "tank.step.salts"))
        {
            Weigh = Weigh(units),
        };
    }
}
