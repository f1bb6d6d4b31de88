using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>One generic part of the catalogue: something that is bought.</summary>
public abstract record CatalogueEntry : CatalogueRow
{
    /// <summary>True where no standard fixes the figures and typical ones were made up.</summary>
    [Choice("false"), Says("Whether the figures are made up because nothing fixes them.")]
    public bool Invented { get; init; }

    /// <summary>[money] Price of one pack in the catalogue's <see cref="PartsCatalogue.Currency"/>; null where unknown.</summary>
    [Price, FoundByPlan("not known"), Says("Price of one pack, in the catalogue's currency.")]
    public decimal? Price { get; init; }

    /// <summary>
    /// [US$] Made-up typical price of one pack, no shop's, used where <see cref="Price"/> is null and the catalogue's currency
    /// is the US dollar. Of a pipe, hose or tube that of the shortest length sold; longer ones cost in proportion.
    /// </summary>
    [
        Price,
        FoundByPlan("not known"),
        Says(
            "Invented typical price of one pack in US dollars, no shop's, used where you give no price and the catalogue's currency is USD. Of pipe, hose and tube: of the shortest length sold, longer ones in proportion."
        )
    ]
    public decimal? TypicalPrice { get; init; }

    /// <summary>Pieces sold together; 1 where sold singly.</summary>
    [Whole(1, 10000, 1), Says("Pieces sold together.")]
    public int Pack { get; init; } = 1;
}
