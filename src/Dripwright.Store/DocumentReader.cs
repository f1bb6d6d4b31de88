using System.Text;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Store.Ground;

namespace Dripwright.Store;

/// <summary>Judges the text of a document by its kind.</summary>
internal static class DocumentReader
{
    // A rig file whose only field is the list; its faults stand one line lower than in the list alone.
    private const string BeforeOnHand = "{ \"onHand\":\n";
    private const string AfterOnHand = "\n}";

    /// <summary>All faults of a text; none for kinds of which the store knows nothing.</summary>
    public static IReadOnlyList<Fault> Faults(string kind, string name, string text, PartsCatalogue catalogue) =>
        kind switch
        {
            DocumentKinds.Rig => RigReader.Read(text, name, catalogue).Faults,
            DocumentKinds.Catalogue => Read(text).Faults,
            DocumentKinds.OnHand => OnHand(text, catalogue).Faults,
            _ => [],
        };

    /// <summary>The catalogue that a text makes; the program's own where the text has faults.</summary>
    public static GardenCatalogue Catalogue(string text, int revision)
    {
        var reading = Read(text);
        return new GardenCatalogue(reading.Catalogue ?? PartsCatalogue.Default, revision, reading.Faults);
    }

    /// <summary>Parts on hand, or the faults of their list.</summary>
    public static (IReadOnlyList<OnHand> Parts, IReadOnlyList<Fault> Faults) OnHand(
        string text,
        PartsCatalogue catalogue
    )
    {
        var reading = RigReader.Read(BeforeOnHand + text + AfterOnHand, "parts on hand", catalogue);
        return (
            reading.Rig?.OnHand ?? [],
            [.. reading.Faults.Select(fault => fault with { Line = Math.Max(1, fault.Line - 1) })]
        );
    }

    private static CatalogueReading Read(string text) =>
        CatalogueReader.Read(Encoding.UTF8.GetBytes(text), "own catalogue", PartsCatalogue.Default);
}
