using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Catalogue;

/// <summary>What came of reading a catalogue file: a catalogue, or all that is wrong with the file.</summary>
/// <param name="Catalogue">The basis with the file laid over it; null when there is any fault.</param>
/// <param name="Faults">All faults, in the order of the file.</param>
public sealed record CatalogueReading(PartsCatalogue? Catalogue, IReadOnlyList<Fault> Faults);

/// <summary>Reads a catalogue file and lays it over a catalogue: parts, salts, targets and stages alike.</summary>
/// <remarks>
/// A row whose key the basis knows overrides that row field by field; <c>basedOn</c> takes what is left out from another
/// row of the group; any other row must be whole. Everything is checked and all faults are reported at once.
/// </remarks>
public static class CatalogueReader
{
    /// <summary>Reads a catalogue file.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="fileName">Its name, for the faults.</param>
    /// <param name="basis">The catalogue to lay it over, as a rule <see cref="PartsCatalogue.Default"/>.</param>
    /// <returns>The two together, or the faults. Never throws for what stands in the file.</returns>
    public static CatalogueReading Read(ReadOnlySpan<byte> utf8, string fileName, PartsCatalogue basis)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(basis);
        var faults = new FaultList(fileName);
        var overlay = new CatalogueOverlay(fileName, basis, faults);
        if (FileTree.ReadObject(utf8, faults, Phrase.Of("fault.file.catalogue")) is { } root)
        {
            overlay.Lay(root);
        }
        return faults.Any ? new CatalogueReading(null, faults.InOrder()) : new CatalogueReading(overlay.Whole(), []);
    }
}
