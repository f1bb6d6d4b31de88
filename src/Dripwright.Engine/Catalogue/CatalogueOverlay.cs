using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>One reading of a catalogue file: its rows, laid over those of a basis.</summary>
internal sealed class CatalogueOverlay : IKeys, IRows
{
    private readonly string _file;
    private readonly PartsCatalogue _basis;
    private readonly FaultList _faults;

    // Rows as files word them, by the name of their group and their key; those of this file last.
    private readonly Dictionary<string, Dictionary<string, CatalogueRow>> _groups;
    private readonly HashSet<(string Group, string Key)> _given = [];
    private readonly Dictionary<string, Salt> _salts;
    private readonly Dictionary<string, NutrientTarget> _targets;
    private CatalogueFile _read = new();

    public CatalogueOverlay(string file, PartsCatalogue basis, FaultList faults)
    {
        (_file, _basis, _faults) = (file, basis, faults);
        _salts = new(basis.Salts.Salts, StringComparer.Ordinal);
        _targets = new(basis.Targets.Targets, StringComparer.Ordinal);
        _groups = new(StringComparer.Ordinal)
        {
            ["sundries"] = Copy(basis.Sundries.Values),
            ["pipes"] = Copy(basis.Pipes.Values),
            ["fittings"] = Copy(basis.Fittings.Values),
            ["tubes"] = Copy(basis.Tubes.Values),
            ["pots"] = Copy(basis.Pots.Values),
            ["tanks"] = Copy(basis.Tanks.Values),
            ["emitters"] = Copy(basis.Emitters.Values),
            ["strainers"] = Copy(basis.Strainers.Values),
            ["pumps"] = Copy(basis.Pumps.Values),
            ["outlets"] = Copy(basis.Outlets.Values),
            ["wires"] = Copy(basis.Wires.Values),
            ["salts"] = Copy(basis.Salts.Salts.Values.Select(salt => salt.Row)),
            ["targets"] = Copy(basis.Targets.Targets.Values.Select(target => target.Row)),
            ["crops"] = Copy(basis.Crops.Values),
            ["media"] = Copy(basis.Media.Values),
        };
    }

    /// <summary>Reads the whole file.</summary>
    public void Lay(FileObject root)
    {
        var reader = new RecordReader(_faults, this, this);
        _read = reader.Read<CatalogueFile>(root);
        if (_read.Currency is { } currency && CurrencyWanted(currency) is { } expected)
        {
            var (line, column) = reader.PlaceOf("currency");
            _faults.Add("currency", line, column, FaultList.Quote(currency), expected);
        }
    }

    // What the currency must be where it is not that; null where it is good.
    private Phrase? CurrencyWanted(string currency)
    {
        if (currency.Length != 3 || !currency.All(char.IsAsciiLetterUpper))
        {
            return Phrase.Of("fault.currency");
        }
        var isPriced =
            _basis.All.Any(part => part.Price is not null)
            || _basis.Salts.Salts.Values.Any(salt => salt.Price is not null);
        return isPriced && currency != _basis.Currency ? Phrase.Of("fault.one-currency", _basis.Currency) : null;
    }

    bool IKeys.Has(KeyAttribute field, string key)
    {
        var group = Camel(field.GroupName);
        // A row that is at fault itself is there all the same.
        return _groups[group].ContainsKey(key) || _given.Contains((group, key));
    }

    IEnumerable<string> IKeys.Of(KeyAttribute field) => _groups[Camel(field.GroupName)].Keys;

    object? IRows.Start(FieldDescription group, string path, FileObject row)
    {
        var rows = _groups[group.Name];
        var key = (row[RowAttribute.Key]?.Value as FileText)?.Text;
        if (key is not null)
        {
            JudgeKey(group.Name, key, path, row[RowAttribute.Key]!.Value);
        }
        if (row[RowAttribute.BasedOn] is not { Value: var node })
        {
            return rows.GetValueOrDefault(key ?? "")?.StartOf(name => row[name] is not null);
        }
        var name = (node as FileText)?.Text ?? "";
        if (!rows.TryGetValue(name, out var start))
        {
            var expected = Phrase.Of("fault.based-on", group.Name);
            Fault($"{path}.{RowAttribute.BasedOn}", node, expected, NearestName.Of(name, rows.Keys));
        }
        return start?.StartOf(field => row[field] is not null);
    }

    void IRows.Add(FieldDescription group, string path, FileObject row, object? record)
    {
        if (record is not CatalogueRow read)
        {
            return;
        }
        var rows = _groups[group.Name];
        var basedOn = (row[RowAttribute.BasedOn]?.Value as FileText)?.Text ?? read.Key;
        if (rows.TryGetValue(basedOn, out var start) && row["source"] is null)
        {
            // A row that changes figures no longer has them all from where the row it starts from has them.
            read = read with
            {
                Source = $"{_file}, based on {start.Key}: {start.Source}",
            };
        }
        foreach (var misfit in Misfits(read))
        {
            var field = FieldDescription
                .Of(read.GetType())
                .FirstOrDefault(field => field.Property.Name == misfit.Field);
            Fault(field is null ? path : $"{path}.{field.Name}", row[field?.Name ?? ""]?.Value ?? row, misfit.Expected);
        }
        rows[read.Key] = read;
    }

    /// <summary>The basis with all rows that were read laid over it.</summary>
    public PartsCatalogue Whole() =>
        new()
        {
            Currency = Currency,
            Pipes = Rows<PipeSize>("pipes"),
            Fittings = Rows<FittingType>("fittings"),
            Tubes = Rows<TubeSize>("tubes"),
            Pots = Rows<PotType>("pots"),
            Tanks = Rows<TankType>("tanks"),
            Emitters = Rows<EmitterType>("emitters"),
            Strainers = Rows<StrainerType>("strainers"),
            Wires = Rows<WireType>("wires"),
            Pumps = Rows<PumpModel>("pumps"),
            Outlets = Rows<DrainOutletType>("outlets"),
            Sundries = Rows<Sundry>("sundries"),
            Crops = Rows<CropType>("crops"),
            Media = Rows<MediumType>("media"),
            Salts = new SaltCatalogue { Salts = _salts },
            Targets = new TargetCatalogue { Targets = _targets, Stages = [.. _basis.Targets.Stages, .. _read.Stages] },
        };

    private void JudgeKey(string group, string key, string path, FileNode node)
    {
        var other = _groups
            .FirstOrDefault(other =>
                other.Key != group && IsOfSameKind(group, other.Key) && other.Value.ContainsKey(key)
            )
            .Key;
        if (!_given.Add((group, key)))
        {
            Fault($"{path}.{RowAttribute.Key}", node, Phrase.Of("fault.key-twice"));
        }
        else if (other is not null)
        {
            Fault($"{path}.{RowAttribute.Key}", node, Phrase.Of("fault.key-elsewhere", other));
        }
    }

    // Parts are asked for by their key alone, whatever their group; salts, targets, crops and media are not.
    private static bool IsOfSameKind(string group, string other) => IsPart(group) && IsPart(other);

    private static bool IsPart(string group) => group is not ("salts" or "targets" or "crops" or "media");

    private IEnumerable<Misfit> Misfits(CatalogueRow read)
    {
        switch (read)
        {
            case SaltRow row:
                var (salt, ofSalt) = row.Read();
                Put(_salts, row.Key, salt);
                return ofSalt;
            case TargetRow row:
                var (target, ofTarget) = row.Read();
                Put(_targets, row.Key, target);
                return ofTarget;
            default:
                return CatalogueRules.Misfits(read);
        }
    }

    private static void Put<T>(Dictionary<string, T> known, string key, T? read)
        where T : class
    {
        if (read is not null)
        {
            known[key] = read;
        }
    }

    private void Fault(string path, FileNode at, Phrase expected, string? nearest = null) =>
        _faults.Add(path, at, FaultList.Show(at), expected, nearest);

    private string Currency => _read.Currency ?? _basis.Currency;

    private Dictionary<string, T> Rows<T>(string group)
        where T : CatalogueRow =>
        _groups[group].ToDictionary(row => row.Key, row => (T)InOneCurrency(row.Value), StringComparer.Ordinal);

    // A made-up price in dollars says nothing beside prices in another currency, and must not be added to them.
    private CatalogueRow InOneCurrency(CatalogueRow row) =>
        row is CatalogueEntry { TypicalPrice: not null } part && Currency != PartsCatalogue.Dollar
            ? part with
            {
                TypicalPrice = null,
            }
            : row;

    private static Dictionary<string, CatalogueRow> Copy(IEnumerable<CatalogueRow?> rows) =>
        rows.OfType<CatalogueRow>().ToDictionary(row => row.Key, StringComparer.Ordinal);

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
