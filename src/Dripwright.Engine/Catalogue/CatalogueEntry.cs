using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>One generic part of the catalogue. No row names a maker.</summary>
public abstract record CatalogueEntry
{
    /// <summary>The name by which a rig file asks for the part, lower case with dashes, such as <c>pvc40-1-1/2</c>.</summary>
    [Text(60), Says("The name by which a rig file asks for the part: lower case, no spaces.")]
    public required string Key { get; init; }

    /// <summary>What a person calls it.</summary>
    [Text(80), Says("What you call it.")]
    public required string Name { get; init; }

    /// <summary>Where the figures come from: a standard, a publication, or "invented typical value".</summary>
    [Text(600), Says("Where the figures come from: a data sheet, a standard, your own ruler.")]
    public required string Source { get; init; }

    /// <summary>True where no standard fixes the figures and typical ones were made up.</summary>
    [Choice("false"), Says("Whether the figures are made up because nothing fixes them.")]
    public bool Invented { get; init; }

    /// <summary>Price of one pack in the currency of the user's own catalogue; null where unknown.</summary>
    [Number(0, 1e6), Says("Price of one pack, in your currency.")]
    public decimal? Price { get; init; }

    /// <summary>
    /// [US$] Made-up typical price of one pack, no shop's, used where <see cref="Price"/> is null. Of a pipe, hose or tube
    /// that of the shortest length sold; longer ones cost in proportion.
    /// </summary>
    [
        Number(0, 1e6),
        Says(
            "Invented typical price of one pack in US dollars, no shop's, used where you give no price. Of pipe, hose and tube: of the shortest length sold, longer ones in proportion."
        )
    ]
    public decimal? TypicalPrice { get; init; }

    /// <summary>Pieces sold together; 1 where sold singly.</summary>
    [Whole(1, 10000, 1), Says("Pieces sold together.")]
    public int Pack { get; init; } = 1;
}
