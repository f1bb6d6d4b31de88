namespace Dripwright.Engine.Catalogue;

/// <summary>One generic part of the catalogue. No row names a maker.</summary>
public abstract record CatalogueEntry
{
    /// <summary>The name by which a rig file asks for the part, lower case with dashes, such as <c>pvc40-1-1/2</c>.</summary>
    public required string Key { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Name { get; init; }

    /// <summary>Where the figures come from: a standard, a publication, or "invented typical value".</summary>
    public required string Source { get; init; }

    /// <summary>True where no standard fixes the figures and typical ones were made up.</summary>
    public bool Invented { get; init; }

    /// <summary>Price of one pack in the currency of the user's own catalogue; null where unknown.</summary>
    public decimal? Price { get; init; }

    /// <summary>Pieces sold together; 1 where sold singly.</summary>
    public int Pack { get; init; } = 1;
}
