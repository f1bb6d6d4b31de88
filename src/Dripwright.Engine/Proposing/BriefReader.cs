using System.Globalization;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Proposing;

/// <summary>What came of reading a brief.</summary>
/// <param name="Brief">The brief; null when there is any fault.</param>
/// <param name="Faults">All faults, in the order of the file.</param>
/// <param name="Assumed">Every field the file does not give.</param>
public sealed record BriefReading(Brief? Brief, IReadOnlyList<Fault> Faults, IReadOnlyList<Assumed> Assumed);

/// <summary>Reads briefs: JSON with comments, quantities as text with units, as rig files are read. Tells all faults at once.</summary>
public static class BriefReader
{
    /// <summary>Reads a brief.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="fileName">The name under which faults tell of it.</param>
    /// <param name="catalogue">The parts it can name.</param>
    public static BriefReading Read(ReadOnlySpan<byte> utf8, string fileName, PartsCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(catalogue);
        var faults = new FaultList(fileName);
        if (FileTree.ReadObject(utf8, faults, Phrase.Of("fault.file.brief")) is not { } root)
        {
            return new(null, faults.InOrder(), []);
        }

        var reader = new RecordReader(faults, catalogue);
        var brief = reader.Read<Brief>(root);
        if (!faults.Any)
        {
            Check(brief, catalogue, faults, reader);
        }

        return new(faults.Any ? null : brief, faults.InOrder(), reader.Assumed);
    }

    /// <summary>Reads the text of a brief.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">The name under which faults tell of it.</param>
    /// <param name="catalogue">The parts it can name.</param>
    public static BriefReading Read(string text, string fileName, PartsCatalogue catalogue) =>
        Read(System.Text.Encoding.UTF8.GetBytes(text), fileName, catalogue);

    /// <summary>A brief as text; reading it gives the same brief.</summary>
    /// <param name="brief">The brief.</param>
    public static string Write(Brief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        return new RecordText(brief.Units, leaveOutAssumed: false, comments: false).Write(brief);
    }

    private static void Check(Brief brief, PartsCatalogue catalogue, FaultList faults, RecordReader reader)
    {
        void Say(string path, Phrase found, Phrase expected)
        {
            (var line, var column) = reader.PlaceOf(path);
            faults.Add(path, line, column, found, expected);
        }

        if (RigReader.ReadStarter(brief.Units, catalogue).Faults is [var lacking, ..])
        {
            Say("units", Phrase.Of("fault.no-starter.found", lacking.Found), lacking.Expected);
        }

        foreach ((var index, var wish) in brief.Crops.Index())
        {
            if (catalogue.CropOrOther(wish.Crop) is null)
            {
                var path = string.Create(CultureInfo.InvariantCulture, $"crops[{index}].crop");
                Say(path, FaultList.Quote(wish.Crop), Phrase.Of("fault.no-crop.expected", CropType.Other));
            }
        }

        var pots = faults.Any ? 0 : BriefPots.Count(brief, catalogue);
        if (pots > Brief.MostPots)
        {
            Say(
                "crops",
                Phrase.Of("fault.brief-pots.found", pots),
                Phrase.Of("fault.brief-pots.expected", Brief.MostPots)
            );
        }

        foreach ((var index, var part) in brief.OnHand.Index())
        {
            if (
                part.Length is null
                && (catalogue.Pipes.ContainsKey(part.Part) || catalogue.Tubes.ContainsKey(part.Part))
            )
            {
                var path = string.Create(CultureInfo.InvariantCulture, $"onHand[{index}]");
                Say(
                    $"{path}.length",
                    Phrase.Of("fault.nothing"),
                    Phrase.Of("fault.piece-length", FaultList.Quoted(part.Part))
                );
            }
        }
    }
}
