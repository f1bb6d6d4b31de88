using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>The salts and the acid that a rig says are at hand.</summary>
public static class OnHandSalts
{
    /// <summary>Salts with the grower's prices and stocks, and the acid.</summary>
    /// <param name="mix">The rig's nutrients section.</param>
    /// <param name="catalogue">The salts that it can name.</param>
    /// <exception cref="KeyNotFoundException">It names a salt that there is not.</exception>
    public static IReadOnlyList<SaltAtHand> Of(NutrientMix mix, SaltCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(catalogue);
        IEnumerable<SaltAtHand> salts = mix.Salts is { } named
            ? named.Select(one => new SaltAtHand(Priced(catalogue[one.Salt], one.PricePerKg), one.Have))
            : NutrientPlanner.UsualSalts.Select(key => new SaltAtHand(catalogue[key]));
        return mix.Acid == GroupKeys.None ? [.. salts] : [.. salts, new SaltAtHand(catalogue[mix.Acid])];
    }

    private static Salt Priced(Salt salt, decimal? pricePerKilogram) =>
        pricePerKilogram is { } price ? salt with { Pack = 1, Price = price } : salt;
}
