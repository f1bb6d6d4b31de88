using Dripwright.Engine.Catalogue.Rows;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>What came of reading a salt file: a catalogue, or all that is wrong with the file.</summary>
/// <param name="Catalogue">The basis with the file laid over it; null when there is any fault.</param>
/// <param name="Faults">All faults, in the order of the file.</param>
public sealed record SaltReading(SaltCatalogue? Catalogue, IReadOnlyList<Fault> Faults);

/// <summary>Reads a file of fertilisers and lays it over a catalogue.</summary>
/// <remarks>
/// A row whose key the basis knows changes that row field by field; <c>basedOn</c> takes what is left out from another row; any
/// other row needs name, kind, source and a formula or a label. A label overrides what the formula says of the nutrients.
/// </remarks>
public static class SaltReader
{
    /// <summary>Reads a salt file.</summary>
    /// <param name="bytes">The file, JSON in UTF-8.</param>
    /// <param name="fileName">Its name, for the faults.</param>
    /// <param name="basis">The catalogue to lay it over, as a rule <see cref="SaltCatalogue.Default"/>.</param>
    /// <returns>The two together, or the faults. Never throws for what stands in the file.</returns>
    public static SaltReading Read(byte[] bytes, string fileName, SaltCatalogue basis)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(basis);
        var faults = new FaultList(fileName);
        var salts = new Dictionary<string, Salt>(basis.Salts, StringComparer.Ordinal);
        var given = new HashSet<string>(StringComparer.Ordinal);
        RowFile.Read(
            bytes,
            faults,
            (
                "salts",
                row =>
                {
                    if (Row(row, given, salts) is { } salt)
                    {
                        salts[salt.Key] = salt;
                    }
                }
            )
        );
        return faults.Any
            ? new SaltReading(null, faults.InOrder())
            : new SaltReading(new SaltCatalogue { Salts = salts }, []);
    }

    /// <summary>One row; null after noting what is wrong with it.</summary>
    /// <param name="row">The row.</param>
    /// <param name="given">Keys that earlier rows of this file have.</param>
    /// <param name="salts">Salts that are known already.</param>
    internal static Salt? Row(RowReader row, HashSet<string> given, Dictionary<string, Salt> salts)
    {
        var key = RowFile.Key(row, given);
        var start = Start(row, key, salts);
        var whole = start is null && !row.Has("basedOn");
        var name = row.Text("name", 80, whole) ?? start?.Name;
        var kind = row.Choice<SaltKind>("kind", whole) ?? start?.Kind;
        var source = row.Text("source", 600, whole) ?? Derived(start);
        var sure = row.Choice<Sureness>("sure") ?? start?.Sure ?? Sureness.Published;
        var density = row.Number("kilogramsPerLitre", 0.5, 3) * 1000 ?? start?.Density;
        var part = row.Choice<StockPart>("part");
        var pack = row.Number("packKilograms", 0.001, 2000) ?? start?.Pack;
        var price = row.Number("price", 0, 1e6);
        var hazards = row.Has("hazards") ? row.Choices<Hazard>("hazards", 12) : start?.Hazards ?? [];
        var range = PHRange(row) ?? start?.PHRange;
        var content = SaltContent.Read(row, start, kind);
        var solubility = SaltContent.Solubility(row, content?.Formula) ?? start?.Solubility;
        row.Finish();
        if (!row.Good || key is null || name is null || kind is null || source is null || content is null)
        {
            return null;
        }
        return new Salt
        {
            Key = key,
            Name = name,
            Kind = kind.Value,
            Formula = content.Formula,
            Purity = content.Purity,
            Label = content.Label,
            Brings = content.Brings,
            AcidEquivalents = content.AcidEquivalents,
            Density = density,
            PHRange = range,
            Solubility = solubility,
            Part = part ?? start?.Part ?? Natural(content.Brings),
            Pack = pack,
            Price = price is { } paid ? (decimal)paid : start?.Price,
            Hazards = hazards,
            Source = source,
            Sure = sure,
        };
    }

    private static Salt? Start(RowReader row, string? key, Dictionary<string, Salt> salts)
    {
        if (row.Text("basedOn", 60) is { } basedOn)
        {
            if (salts.TryGetValue(basedOn, out var start))
            {
                return start;
            }
            row.Fault(
                "basedOn",
                row.Row["basedOn"]!.Value,
                "the key of a known salt",
                NearestName.Of(basedOn, salts.Keys)
            );
        }
        return key is null ? null : salts.GetValueOrDefault(key);
    }

    private static string? Derived(Salt? start) =>
        start is null ? null : $"the grower's own row, based on {start.Key}: {start.Source}";

    private static (double, double)? PHRange(RowReader row)
    {
        var least = row.Number("phFrom", 0, 14);
        var most = row.Number("phTo", 0, 14);
        if (least is { } from && most is { } to)
        {
            if (from < to)
            {
                return (from, to);
            }
            row.FaultAt("phTo", "more than \"phFrom\"");
        }
        else if (least is not null || most is not null)
        {
            row.FaultAt(least is null ? "phTo" : "phFrom", "\"phFrom\" and \"phTo\" together");
        }
        return null;
    }

    /// <summary>The concentrate in which a product stands by what it brings.</summary>
    internal static StockPart Natural(Composition brings)
    {
        var calcium = brings[Constituent.Calcium] > 0;
        var other = brings[Constituent.Sulfur] > 0 || brings[Constituent.Phosphorus] > 0;
        return (calcium, other) switch
        {
            (true, true) => StockPart.Neither,
            (true, false) => StockPart.A,
            (false, true) => StockPart.B,
            _ => StockPart.Either,
        };
    }
}
