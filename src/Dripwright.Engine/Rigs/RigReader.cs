using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Reads rig files: JSON with comments, quantities as text with units. Tells all faults at once.</summary>
/// <remarks>
/// Any bytes give a reading, never an exception, in a time that grows with their number. At most 1 MiB, 32 levels of
/// nesting, 1,000 faults told. Comments (<c>//</c> and <c>/* */</c>) and a comma after the last entry are allowed.
/// </remarks>
public static class RigReader
{
    /// <summary>Reads a rig file.</summary>
    /// <param name="utf8">The file's bytes; a byte order mark may stand before them.</param>
    /// <param name="fileName">The name under which faults tell of it.</param>
    /// <param name="catalogue">The parts it can name.</param>
    public static RigReading Read(ReadOnlySpan<byte> utf8, string fileName, PartsCatalogue catalogue) =>
        Read(utf8, fileName, catalogue, RigUpgrades.All);

    /// <summary>Reads the text of a rig file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">The name under which faults tell of it.</param>
    /// <param name="catalogue">The parts it can name.</param>
    public static RigReading Read(string text, string fileName, PartsCatalogue catalogue) =>
        Read(System.Text.Encoding.UTF8.GetBytes(text), fileName, catalogue);

    /// <summary>A rig in which every value is the assumed one.</summary>
    /// <param name="units">Units it prefers; the assumed sizes follow them.</param>
    /// <param name="catalogue">The parts it names.</param>
    /// <exception cref="InvalidOperationException">The catalogue lacks a part that is assumed.</exception>
    public static Rig Starter(UnitSystem units, PartsCatalogue catalogue)
    {
        var reading = ReadStarter(units, catalogue);
        return reading.Rig ?? throw new InvalidOperationException(string.Join(Environment.NewLine, reading.Faults));
    }

    /// <summary>The same with its faults, where the catalogue lacks what a rig file assumes.</summary>
    internal static RigReading ReadStarter(UnitSystem units, PartsCatalogue catalogue)
    {
        var name = FieldDescription.Dashed(units.ToString());
        return Read($$"""{ "units": "{{name}}" }""", "starter", catalogue);
    }

    internal static RigReading Read(
        ReadOnlySpan<byte> utf8,
        string fileName,
        PartsCatalogue catalogue,
        IReadOnlyList<RigUpgrade> upgrades
    )
    {
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(catalogue);
        var faults = new FaultList(fileName);
        var upgraded = new List<Phrase>();
        if (
            FileTree.ReadObject(utf8, faults, Phrase.Of("fault.file.rig")) is { } root
            && RigUpgrades.Bring(root, upgrades, faults, upgraded)
        )
        {
            var reader = new RecordReader(faults, catalogue);
            var rig = reader.Read<Rig>(root);
            void Say(string path, Phrase found, Phrase expected)
            {
                var (line, column) = reader.PlaceOf(path);
                faults.Add(path, line, column, found, expected);
            }

            RigChecks.All(rig, catalogue, faults, Say);
            var resolved = RigResolver.Resolve(rig, catalogue, section => !faults.Touch(section), Say);
            // Where no recipe is asked for, sixteen things not measured of the water are no news.
            var assumed =
                rig.Nutrients.Crop == GroupKeys.None
                    ? reader.Assumed.Where(one =>
                        one.Path == "nutrients.crop" || !one.Path.StartsWith("nutrients.", StringComparison.Ordinal)
                    )
                    : reader.Assumed;
            return new(resolved, faults.InOrder(), [.. assumed], upgraded);
        }
        return new(null, faults.InOrder(), [], upgraded);
    }
}
