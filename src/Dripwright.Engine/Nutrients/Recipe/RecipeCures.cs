using Dripwright.Engine.Catalogue.Salts;
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
public static class RecipeCures
{
    // Less than this is not worth a bag.
    private const double WorthWhile = 0.02;

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
            .ToList();
        if (missed.Count == 0)
        {
            return [];
        }
        var known = recipe.Job.Salts.Select(hand => hand.Salt.Key).ToHashSet();
        var tries = catalogue
            .Salts.Values.Where(salt => !known.Contains(salt.Key))
            .Select(salt =>
                (
                    Salt: salt,
                    Recipe: RecipePlanner.Plan(recipe.Job with { Salts = [.. recipe.Job.Salts, new SaltAtHand(salt)] })
                )
            )
            .Where(attempt => attempt.Recipe.Misfit < recipe.Misfit)
            .ToList();
        var cures = new List<SaltCure>();
        foreach (var element in missed)
        {
            var before = Math.Abs(element.Miss!.Value);
            var best = tries
                .Select(attempt => (attempt.Salt, attempt.Recipe, After: Math.Abs(MissOf(attempt.Recipe, element))))
                .Where(attempt => attempt.After < before - WorthWhile)
                // Nearly equal helps are told apart by the whole, then by name, so that the answer does not hang on a hair.
                .OrderBy(attempt => Math.Round(attempt.After, 3))
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

    private static double MissOf(NutrientRecipe recipe, ElementResult element) =>
        recipe.Elements.First(other => other.Constituent == element.Constituent).Miss!.Value;
}
