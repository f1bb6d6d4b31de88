using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Catalogue;

/// <summary>One row of a catalogue file: a part, a salt, a target or a crop. No row names a maker. It stands in its group under its key.</summary>
[Row]
public abstract record CatalogueRow
{
    /// <summary>The name by which a file asks for it, lower case with dashes, such as <c>pvc40-1-1/2</c>.</summary>
    [Text(60, IsKey = true), Says("The name by which a file asks for it: lower case, no spaces.")]
    public required string Key { get; init; }

    /// <summary>What a person calls it.</summary>
    [Text(80), Says("What you call it.")]
    public required string Name { get; init; }

    /// <summary>Where the figures come from: a standard, a publication, a label, or "invented typical value".</summary>
    [Text(600), Says("Where the figures come from: a data sheet, a label, a standard, your own ruler.")]
    public required string Source { get; init; }

    /// <summary>The row as one to start from, without what the new one replaces by giving something else.</summary>
    /// <param name="gives">Whether the new row gives a field, by its name in the file.</param>
    internal virtual CatalogueRow StartOf(Func<string, bool> gives) => this;
}

/// <summary>One field that does not fit the others of its row.</summary>
/// <param name="Field">The property's name; empty for the row as a whole.</param>
/// <param name="Expected">What would fit.</param>
internal readonly record struct Misfit(string Field, Phrase Expected);
