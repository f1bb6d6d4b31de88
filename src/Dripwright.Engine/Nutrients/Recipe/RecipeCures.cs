using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>A salt of the catalogue that would bring an element closer to its target.</summary>
/// <param name="Constituent">The element that is missed.</param>
/// <param name="Salt">The salt to get.</param>
/// <param name="MissBefore">[-] Miss over target now.</param>
/// <param name="MissAfter">[-] Miss over target with it.</param>
/// <param name="MisfitAfter">[-] Sum over all elements with it, against <see cref="NutrientRecipe.Misfit"/>.</param>
public sealed record SaltCure(
    Constituent Constituent,
    Salt Salt,
    double MissBefore,
    double MissAfter,
    double MisfitAfter
);

/// <summary>Says which salt, not at hand, would reach what these salts cannot.</summary>
/// <remarks>
/// A salt that brings chloride, sodium or silicon along, which nobody asked for, is no source of anything else; of traces the
/// pinch of sodium does not matter. Acids and bases are there for the pH. The salt that brings the whole nearest is named for every element that it helps, so that
/// one purchase cures most; only what it does not help has another. Method page: docs/methods/recipe.md
/// </remarks>
public static class RecipeCures
{
    // Less than this is not worth a bag.
    private const double WorthWhile = 0.02;

    private static readonly Constituent[] s_alongside = [Constituent.Chloride, Constituent.Sodium, Constituent.Silicon];

    /// <summary>For each element that is missed, the catalogue's salt that helps it most without harming the whole.</summary>
    /// <param name="recipe">The recipe as it is.</param>
    /// <param name="catalogue">Salts that could be bought.</param>
    /// <returns>One cure for each element that has one.</returns>
    public static IReadOnlyList<SaltCure> Of(NutrientRecipe recipe, SaltCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        ArgumentNullException.ThrowIfNull(catalogue);
        var missed = recipe
            .Elements.Where(element => element.Verdict is ElementVerdict.Under or ElementVerdict.Over)
            .Where(IsWorthASalt)
            .ToList();
        if (missed.Count == 0)
        {
            return [];
        }
        var known = recipe.Job.Salts.Select(hand => hand.Salt.Key).ToHashSet();
        var tries = catalogue
            .Salts.Values.Where(salt => !known.Contains(salt.Key) && IsClean(salt, recipe.Job.Target))
            .Select(salt =>
                (
                    Salt: salt,
                    Recipe: RecipePlanner.Plan(recipe.Job with { Salts = [.. recipe.Job.Salts, new SaltAtHand(salt)] })
                )
            )
            .Where(attempt => attempt.Recipe.Misfit < recipe.Misfit)
            .ToList();
        // Of those that bring the whole as near as the nearest, one that is sold in known packs.
        var nearest = tries.Count > 0 ? tries.Min(attempt => MainMisfit(attempt.Recipe)) : 0;
        var one = tries
            .Where(attempt => MainMisfit(attempt.Recipe) <= (1.05 * nearest) + 1e-6)
            .OrderBy(attempt => attempt.Salt.Pack is null)
            .ThenBy(attempt => Math.Round(attempt.Recipe.Misfit, 6))
            .ThenBy(attempt => attempt.Salt.Key, StringComparer.Ordinal)
            .FirstOrDefault()
            .Salt;
        int Helped(NutrientRecipe with) =>
            missed.Count(element =>
                Charges.IsTrace(element.Constituent)
                && Math.Abs(MissOf(with, element)) < Math.Abs(element.Miss!.Value) - WorthWhile
            );
        var cures = new List<SaltCure>();
        foreach (var element in missed)
        {
            var before = Math.Abs(element.Miss!.Value);
            var best = tries
                .Select(attempt => (attempt.Salt, attempt.Recipe, After: Math.Abs(MissOf(attempt.Recipe, element))))
                .Where(attempt => attempt.After < before - WorthWhile)
                // Nearly equal helps are told apart by the whole, then by name, so that the answer does not hang on a hair.
                .OrderByDescending(attempt =>
                    Charges.IsTrace(element.Constituent) ? Helped(attempt.Recipe)
                    : attempt.Salt == one ? 1
                    : 0
                )
                .ThenBy(attempt => Math.Round(attempt.After, 3))
                .ThenBy(attempt => attempt.Salt.Pack is null)
                .ThenBy(attempt => Math.Round(attempt.Recipe.Misfit, 6))
                .ThenBy(attempt => attempt.Salt.Key, StringComparer.Ordinal)
                .FirstOrDefault();
            if (best.Salt is not null)
            {
                cures.Add(
                    new SaltCure(
                        element.Constituent,
                        best.Salt,
                        element.Miss.Value,
                        MissOf(best.Recipe, element),
                        best.Recipe.Misfit
                    )
                );
            }
        }
        return cures;
    }

    private static double MainMisfit(NutrientRecipe recipe) =>
        recipe
            .Elements.Where(element => !Charges.IsTrace(element.Constituent))
            .Where(element => element.Constituent != Constituent.AmmoniumNitrogen)
            .Sum(element => element.Miss is { } miss ? Math.Pow(recipe.Job.Weights[element.Constituent] * miss, 2) : 0);

    // A little off needs no shopping; a trace too many cannot be bought away; ammonium is judged by its share.
    private static bool IsWorthASalt(ElementResult element) =>
        element.Constituent != Constituent.AmmoniumNitrogen
        && RecipeFindings.RuleOf(element) != "recipe-off"
        && (element.Verdict is ElementVerdict.Under || !Charges.IsTrace(element.Constituent));

    private static bool IsClean(Salt salt, NutrientTarget target) =>
        salt.Kind is SaltKind.Salt or SaltKind.Chelate
        && s_alongside.All(ion =>
            salt.Brings[ion] <= 0 || target.Wanted.GetValueOrDefault(ion) > 0 || RecipeModel.HasTraces(salt)
        );

    private static double MissOf(NutrientRecipe recipe, ElementResult element) =>
        recipe.Elements.First(other => other.Constituent == element.Constituent).Miss!.Value;
}
