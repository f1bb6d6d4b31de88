using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>Lists the salts and the acid of the first fill: of the reservoir, or of the two stock tanks.</summary>
internal static class SaltParts
{
    /// <summary>The section of the parts list in which they stand.</summary>
    public const string Section = "nutrients";

    /// <summary>A line for each salt of the recipe; none where no recipe is asked for.</summary>
    /// <param name="asked">What the rig asks for.</param>
    /// <param name="nutrients">The recipe.</param>
    public static IEnumerable<PartLine> Lines(ResolvedNutrients? asked, NutrientPlan? nutrients)
    {
        if (asked is null || nutrients is null)
        {
            return [];
        }

        var where = nutrients.Stock is null ? Phrase.Of("part.where.fill") : Phrase.Of("part.where.fill.stock");
        var have = asked.Salts.Where(one => one.Have is not null).Select(one => one.Salt.Key).ToHashSet();
        return nutrients.Recipe.Lines.Select(line => Line(line, have.Contains(line.Salt.Key), where));
    }

    // A salt of which the grower said how much there is: the recipe took no more of it.
    private static PartLine Line(RecipeLine line, bool isOnHand, Phrase where)
    {
        var salt = line.Salt;
        var mass = Math.Max(line.Mass, line.Weighed);
        (var needed, var unit) = salt.Density is { } density
            ? (RoundedUp(mass / density * 1e6), "mL")
            : (RoundedUp(mass * 1000), "g");
        var buy = isOnHand ? 0 : needed;
        return new PartLine(
            salt.Key,
            Phrase.Plain(salt.Name),
            Section,
            where,
            needed,
            0,
            isOnHand ? needed : 0,
            buy,
            Math.Min(1, buy),
            Math.Max(1, needed),
            0,
            PriceOf(salt, isOnHand ? 0 : mass),
            false,
            Phrase.None,
            unit
        );
    }

    // A bag lasts for many fills: what counts here is its share that one fill takes.
    private static decimal? PriceOf(Salt salt, double mass) =>
        salt.PricePerKilogram is { } kilogram
            ? Math.Round(kilogram * (decimal)mass, 2, MidpointRounding.AwayFromZero)
            : null;

    private static int RoundedUp(double amount) => (int)Math.Ceiling(amount - 1e-9);
}
