using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>What came of reading a catalogue file: a catalogue, or all that is wrong with the file.</summary>
/// <param name="Catalogue">The basis with the file laid over it; null when there is any fault.</param>
/// <param name="Faults">All faults, in the order of the file.</param>
public sealed record CatalogueReading(PartsCatalogue? Catalogue, IReadOnlyList<Fault> Faults);

/// <summary>Reads a user's own catalogue file and lays it over a catalogue.</summary>
/// <remarks>
/// A row whose key the basis knows overrides that row field by field; <c>basedOn</c> takes what is left out from another
/// row of the shelf; any other row must be whole. Everything is checked and all faults are reported at once.
/// </remarks>
public static class CatalogueReader
{
    /// <summary>The newest version of the catalogue file's format.</summary>
    public const int CurrentFormat = 1;

    /// <summary>Most rows of one shelf in a file.</summary>
    public const int MostRows = 2000;

    /// <summary>Reads a catalogue file.</summary>
    /// <param name="bytes">The file, JSON in UTF-8.</param>
    /// <param name="fileName">Its name, for the faults.</param>
    /// <param name="basis">The catalogue to lay it over, as a rule <see cref="PartsCatalogue.Default"/>.</param>
    /// <returns>The two together, or the faults. Never throws for what stands in the file.</returns>
    public static CatalogueReading Read(byte[] bytes, string fileName, PartsCatalogue basis)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(basis);
        var faults = new FaultList(fileName);
        var overlay = new CatalogueOverlay(fileName, basis, faults);
        if (FileTree.Read(bytes, faults) is { } root)
        {
            overlay.Lay(root);
        }
        return faults.Any ? new CatalogueReading(null, faults.InOrder()) : new CatalogueReading(overlay.Whole(), []);
    }
}
