using Dripwright.Engine.Nutrition.Recipe;
using Dripwright.Engine.Nutrition.Salts;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Nutrition.Planning;

/// <summary>The salts and the acid that a rig says are at hand.</summary>
public static class NutritionShelf
{
    /// <summary>Salts with the grower's prices and stocks, and the acid.</summary>
    /// <param name="mix">The rig's nutrition section.</param>
    /// <exception cref="KeyNotFoundException">It names a salt that there is not.</exception>
    public static IReadOnlyList<SaltAtHand> Of(NutritionMix mix)
    {
        ArgumentNullException.ThrowIfNull(mix);
        IEnumerable<SaltAtHand> salts = mix.Salts is { } named
            ? named.Select(one => new SaltAtHand(Priced(SaltCatalogue.Default[one.Salt], one.PricePerKg), one.Have))
            : NutritionPlanner.UsualSalts.Select(key => new SaltAtHand(SaltCatalogue.Default[key]));
        return mix.Acid == CatalogueShelf.None
            ? [.. salts]
            : [.. salts, new SaltAtHand(SaltCatalogue.Default[mix.Acid])];
    }

    private static Salt Priced(Salt salt, string? price) =>
        price is not null && NutritionText.Plain(price) is { } money
            ? salt with
            {
                Pack = 1,
                Price = (decimal)money,
            }
            : salt;
}
