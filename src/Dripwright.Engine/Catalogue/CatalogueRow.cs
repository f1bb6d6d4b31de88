using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>One row of the catalogue: a part or a crop. No row names a maker.</summary>
public abstract record CatalogueRow
{
    /// <summary>The name by which a file asks for it, lower case with dashes, such as <c>pvc40-1-1/2</c>.</summary>
    [Text(60), Says("The name by which a file asks for it: lower case, no spaces.")]
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
}
