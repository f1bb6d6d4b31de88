using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>Reads the rows built into the engine, in the same format and by the same reader as a user's own file.</summary>
internal static class CatalogueData
{
    /// <summary>The groups, in the order in which they are read.</summary>
    public static IReadOnlyList<string> Groups { get; } =
    [.. FieldDescription.Of(typeof(CatalogueFile)).Where(field => field.Items is not null).Select(field => field.Name)];

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
            Media = new Dictionary<string, MediumType>(),
            Salts = SaltCatalogue.Empty,
            Targets = TargetCatalogue.Empty,
        };
        foreach (var group in Groups)
        {
            var reading = CatalogueReader.Read(Bytes(group), $"{group}.json", parts);
            parts =
                reading.Catalogue
                ?? throw new InvalidOperationException($"Our own catalogue is at fault: {reading.Faults[0]}");
        }
        return parts;
    }

    /// <summary>The file of one group.</summary>
    public static byte[] Bytes(string group)
    {
        using var stream =
            typeof(CatalogueData).Assembly.GetManifestResourceStream($"Dripwright.Engine.Catalogue.Data.{group}.json")
            ?? throw new InvalidOperationException($"The catalogue's group '{group}' is not built in.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
