namespace Dripwright.Engine.Catalogue;

/// <summary>Reads the rows built into the engine, in the same format and by the same reader as a user's own file.</summary>
internal static class CatalogueData
{
    /// <summary>Our own catalogue.</summary>
    /// <exception cref="InvalidOperationException">A row of ours is at fault: a bug.</exception>
    public static PartsCatalogue Load()
    {
        var parts = new PartsCatalogue
        {
            Pipes = new Dictionary<string, PipeSize>(),
            Fittings = new Dictionary<string, FittingType>(),
            Tubes = new Dictionary<string, TubeSize>(),
            Pots = new Dictionary<string, PotType>(),
            Tanks = new Dictionary<string, TankType>(),
            Emitters = new Dictionary<string, EmitterType>(),
            Strainers = new Dictionary<string, StrainerType>(),
            Pumps = new Dictionary<string, PumpModel>(),
            Outlets = new Dictionary<string, DrainOutletType>(),
            Wires = new Dictionary<string, WireType>(),
            Sundries = new Dictionary<string, Sundry>(),
            Crops = new Dictionary<string, CropType>(),
        };
        // Sundries stand first, because the rows of other shelves name them as their pieces.
        foreach (var shelf in CatalogueField.ShelfRows.Select(shelf => shelf.Name).OrderBy(name => name != "sundries"))
        {
            var reading = CatalogueReader.Read(Bytes(shelf), shelf, parts);
            parts =
                reading.Catalogue
                ?? throw new InvalidOperationException($"Our own catalogue is at fault: {reading.Faults[0]}");
        }
        return parts;
    }

    /// <summary>The file of one shelf.</summary>
    public static byte[] Bytes(string shelf)
    {
        using var stream =
            typeof(CatalogueData).Assembly.GetManifestResourceStream($"Dripwright.Engine.Catalogue.Data.{shelf}.json")
            ?? throw new InvalidOperationException($"The catalogue's shelf '{shelf}' is not built in.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
