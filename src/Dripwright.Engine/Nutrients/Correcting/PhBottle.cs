using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>A bottle to bring pH down or up, by what is in it. The acid or base is what its ions leave open.</summary>
public sealed record PhBottle
{
    /// <summary>A bottle of a name and its contents.</summary>
    /// <param name="name">Name in the grower's words, such as "nitric acid 60 %".</param>
    /// <param name="contents">[mol/m³] What one cubic metre of the bottle's liquid holds.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, or the contents are neither acid nor base.</exception>
    public PhBottle(string name, Composition contents)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(contents);
        foreach (var constituent in Composition.Constituents)
        {
            Guard.NotNegative(contents[constituent], nameof(contents));
        }

        var acid = SaltComposition.AcidEquivalents(contents);
        if (Math.Abs(acid) < 1)
        {
            throw new ArgumentOutOfRangeException(
                nameof(contents),
                acid,
                "Acids and bases cancel out: this bottle moves no pH."
            );
        }

        Name = name;
        Contents = contents;
        Equivalents = acid;
    }

    /// <summary>A bottle of the catalogue; null where the product is no liquid acid or base.</summary>
    /// <param name="product">The product.</param>
    public static PhBottle? Of(Salt product)
    {
        ArgumentNullException.ThrowIfNull(product);
        return product.Density is { } density && Math.Abs(product.AcidEquivalents * density) >= 1
            ? new PhBottle(product.Name, product.Brings * density)
            : null;
    }

    /// <summary>A bottle that the grower makes up from a solid, such as potassium bicarbonate.</summary>
    /// <param name="product">The product.</param>
    /// <param name="gramsPerLitre">[g/L] How much of it in a litre of the bottle.</param>
    /// <exception cref="ArgumentOutOfRangeException">The amount is not positive, or the product moves no pH.</exception>
    public static PhBottle Dissolved(Salt product, double gramsPerLitre)
    {
        ArgumentNullException.ThrowIfNull(product);
        // A gram in a litre is a kilogram in a cubic metre.
        return new PhBottle(product.Name, product.Brings * Guard.Positive(gramsPerLitre));
    }

    /// <summary>Name in the grower's words.</summary>
    public string Name { get; }

    /// <summary>[mol/m³] What one cubic metre of it holds.</summary>
    public Composition Contents { get; }

    /// <summary>[mol/m³ of charge] Acid in it, phosphoric counted once, sulfuric twice; negative for a base.</summary>
    public double Equivalents { get; }

    /// <summary>Whether it brings pH down.</summary>
    public bool IsAcid => Equivalents > 0;

    /// <summary>What to mind when it is used.</summary>
    public IReadOnlyList<Phrase> Cautions =>
        [
            Phrase.Of("tank.caution.goggles"),
            Phrase.Of(IsAcid ? "tank.caution.acid-into-water" : "tank.caution.base-into-water"),
            Phrase.Of("tank.caution.never-together"),
            Phrase.Of("tank.caution.locked-away"),
        ];
}
