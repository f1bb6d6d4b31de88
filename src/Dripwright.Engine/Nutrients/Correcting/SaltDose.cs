using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Recipe;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>The salts of a recipe, weighed straight into the tank. One unit is what a cubic metre of feed gets.</summary>
/// <remarks>
/// Acid is left out: it belongs to the alkalinity of fresh water, and a tank that has drifted gets its own, by its pH. The
/// volume of dissolved salts is left out too; in a feed it is under a thousandth.
/// </remarks>
public sealed record SaltDose : Strengthener
{
    private readonly IReadOnlyList<RecipeLine> lines;
    private readonly WeighingScale scale;

    /// <summary>The salts of a recipe.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="decisiemensPerMetre">[dS/m] What a unit adds to a cubic metre.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rise is not positive.</exception>
    public SaltDose(NutrientRecipe recipe, double decisiemensPerMetre)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        Strength = Guard.Positive(decisiemensPerMetre);
        lines = [.. recipe.Lines.Where(line => line.Salt.Kind != SaltKind.Acid)];
        scale = recipe.Job.Scale;
        Brings = lines.Aggregate(Composition.Nothing, (sum, line) => sum + (line.Salt.Brings * line.Concentration));
    }

    /// <inheritdoc/>
    public override double Strength { get; }

    /// <inheritdoc/>
    public override double Bulk => 0;

    /// <inheritdoc/>
    public override Composition Brings { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions =>
        [
            "Goggles and gloves when weighing and dissolving. Nitrates away from fuel, sawdust and heat; all salts away from children.",
        ];

    /// <summary>What to weigh for some units, the most first.</summary>
    /// <param name="units">[m³] Volume of full-strength feed that the salts would make.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is negative.</exception>
    public IReadOnlyList<WeighedSalt> Weigh(double units)
    {
        Guard.NotNegative(units);
        return
        [
            .. lines
                .Select(line =>
                {
                    double mass = line.Concentration * units;
                    double? measured = line.Salt.Density is { } density
                        ? RecipePlanner.Rounded(mass / density, scale.MeasureStep)
                        : null;
                    double weighed = measured * line.Salt.Density ?? RecipePlanner.Rounded(mass, scale.Step);
                    return new WeighedSalt(line.Salt.Name, mass, weighed, measured);
                })
                .OrderByDescending(salt => salt.Mass),
        ];
    }

    internal override IEnumerable<TankStep> Give(double units, string again)
    {
        IReadOnlyList<WeighedSalt> all = Weigh(units);
        List<WeighedSalt> some = [.. all.Where(salt => salt.Weighed > 0)];
        string less =
            some.Count < all.Count
                ? $" Too little for your scale, left out this time: {string.Join(", ", all.Where(salt => salt.Weighed <= 0).Select(salt => salt.Name))}."
                : "";
        yield return new TankStep(
            TankStepKind.Salts,
            0,
            $"Weigh these{again}. Dissolve each by itself in a bucket of tank water, pour it in and let it mix before the next.{less}"
        )
        {
            Weigh = some,
        };
    }
}
