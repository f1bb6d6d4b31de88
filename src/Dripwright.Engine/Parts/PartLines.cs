using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>Turns counts into lines: spares added, what is on hand taken off, the rest rounded up to packs.</summary>
internal static class PartLines
{
    /// <summary>The section of pumps.</summary>
    public const string Electrical = "electrical";

    /// <summary>The section of pots and tanks.</summary>
    public const string Garden = "garden";

    /// <summary>The section of what is printed.</summary>
    public const string Printed = "printed";

    private static readonly string[] s_sections =
    [
        "plumbing",
        "irrigation",
        Garden,
        SaltParts.Section,
        "hardware",
        Electrical,
        Printed,
        "tools",
    ];

    /// <summary>What a section is called; one that only the grower's catalogue knows by its own name.</summary>
    public static Phrase NameOf(string section) =>
        s_sections.Contains(section) ? Phrase.Of($"part.section.{section}") : Phrase.Plain(section);

    /// <summary>A line for every counted part.</summary>
    public static IEnumerable<PartLine> Of(PartsTally tally, IReadOnlyList<OnHand> onHand, PartsCatalogue catalogue)
    {
        var have = onHand.GroupBy(h => h.Part).ToDictionary(g => g.Key, g => g.Sum(h => h.Count));
        Dictionary<string, CatalogueEntry> entries = [];
        foreach (var entry in catalogue.All)
        {
            entries.TryAdd(entry.Key, entry);
        }

        foreach (var part in tally.Counted)
        {
            var wanted = part.Needed + part.Spares;
            var used = Math.Min(wanted, have.GetValueOrDefault(part.Key));
            var where = Phrase.Of(new Several([.. part.Where], Joint.Comma));
            yield return entries.GetValueOrDefault(part.Key) is { } entry
                ? Of(entry, part.Key, part.Needed, part.Spares, used, where, 0, part.Note)
            : part.Own is { } own
                ? Missing(part.Key, own.Name, part.Needed, where) with
                {
                    Section = own.Section,
                    Spares = part.Spares,
                    OnHand = used,
                    Buy = wanted - used,
                    Packs = wanted - used,
                    Note = part.Note,
                }
            : Missing(part.Key, Phrase.Plain(part.Key), part.Needed, where) with
            {
                Spares = part.Spares,
                OnHand = used,
                Buy = wanted - used,
                Packs = wanted - used,
            };
        }
    }

    /// <summary>One line.</summary>
    public static PartLine Of(
        CatalogueEntry entry,
        string key,
        int needed,
        int spares,
        int onHand,
        Phrase where,
        double eachLength,
        Phrase note
    )
    {
        var missing = Math.Max(0, needed + spares - onHand);
        // A coil is a pack by its length already.
        var pack = eachLength > 0 && entry is Sundry ? 1 : Math.Max(1, entry.Pack);
        var packs = (missing + pack - 1) / pack;
        var measure = entry.Source.Contains("measure yours", StringComparison.Ordinal);
        Phrase[] notes = [note, measure ? Phrase.Of("part.measure") : Phrase.None];
        return new PartLine(
            key,
            Phrase.Plain(entry.Name),
            SectionOf(entry),
            where,
            needed,
            spares,
            onHand,
            packs * pack,
            packs,
            pack,
            eachLength,
            (OwnPriceOf(entry, eachLength) ?? TypicalPriceOf(entry, eachLength)) is { } price ? packs * price : null,
            OwnPriceOf(entry, eachLength) is null && TypicalPriceOf(entry, eachLength) is not null,
            Phrase.Of(new Several(notes, Joint.Semicolon))
        );
    }

    /// <summary>A part that the rig takes and the catalogue lacks.</summary>
    public static PartLine Missing(string key, Phrase name, int needed, Phrase where) =>
        new(key, name, "hardware", where, needed, 0, 0, needed, needed, 1, 0, null, false, Phrase.Of("part.missing"));

    /// <summary>The user's own price of one pack, or null. A pipe in several lengths has no one price.</summary>
    public static decimal? OwnPriceOf(CatalogueEntry entry, double eachLength) =>
        entry switch
        {
            PipeSize { StockLengths.Count: > 1 } or TubeSize { StockLengths.Count: > 1 } => null,
            PipeSize pipe when Math.Abs(pipe.StockLengths[0] - eachLength) > 1e-6 => null,
            TubeSize tube when Math.Abs(tube.StockLengths[0] - eachLength) > 1e-6 => null,
            _ => entry.Price,
        };

    /// <summary>The made-up typical price of one pack, or null. A longer pipe costs in proportion to the shortest sold.</summary>
    public static decimal? TypicalPriceOf(CatalogueEntry entry, double eachLength) =>
        (entry.TypicalPrice, entry) switch
        {
            (null, _) => null,
            (_, PipeSize pipe) => InProportion(entry.TypicalPrice.Value, eachLength, pipe.StockLengths[0]),
            (_, TubeSize tube) => InProportion(entry.TypicalPrice.Value, eachLength, tube.StockLengths[0]),
            _ => entry.TypicalPrice,
        };

    private static decimal InProportion(decimal price, double length, double shortest) =>
        Math.Round(price * (decimal)(length / shortest), 2, MidpointRounding.AwayFromZero);

    /// <summary>Lines by section, each in the order in which its parts turned up.</summary>
    public static IReadOnlyList<PartLine> InSections(IEnumerable<PartLine> lines) =>
        [.. lines.OrderBy(l => Array.IndexOf(s_sections, l.Section) is >= 0 and var at ? at : s_sections.Length)];

    public static CostSum Cost(IReadOnlyList<PartLine> lines)
    {
        PartLine[] bought = [.. lines.Where(l => l.Buy > 0)];
        PartLine[] priced = [.. bought.Where(l => l.Price is not null)];
        return new CostSum(
            priced.Sum(l => l.Price!.Value),
            priced.Length,
            bought.Length - priced.Length,
            priced.Any(l => l.InventedPrice)
        );
    }

    private static string SectionOf(CatalogueEntry entry) =>
        entry switch
        {
            Sundry sundry => sundry.Section,
            PipeSize { Flexible: true } or EmitterType or StrainerType => "irrigation",
            FittingType { Family: PipeFamily.HoseInch or PipeFamily.HoseMetric } => "irrigation",
            PipeSize or FittingType => "plumbing",
            TubeSize => "hardware",
            PumpModel => Electrical,
            _ => Garden,
        };
}
