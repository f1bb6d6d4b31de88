using System.Buffers;
using Dripwright.Engine.Catalogue.Rows;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>One reading of a catalogue file: its shelves and rows, laid over a basis.</summary>
internal sealed class CatalogueOverlay
{
    private static readonly SearchValues<char> s_keyLetters = SearchValues.Create(
        "abcdefghijklmnopqrstuvwxyz0123456789-./"
    );

    private readonly FaultList _faults;
    private readonly Dictionary<string, Dictionary<string, CatalogueRow>> _shelves;
    private readonly OwnNutrients _feeds;
    private readonly List<(string Piece, FileNode Node, string Path)> _pieces = [];
    private readonly List<(string Target, FileNode Node, string Path)> _loopTargets = [];
    private string _currency;

    public CatalogueOverlay(string file, PartsCatalogue basis, FaultList faults)
    {
        File = file;
        _faults = faults;
        _currency = basis.Currency;
        _feeds = new OwnNutrients(basis.Salts, basis.Targets, faults);
        _shelves = new(StringComparer.Ordinal)
        {
            ["pipes"] = Copy(basis.Pipes),
            ["fittings"] = Copy(basis.Fittings),
            ["tubes"] = Copy(basis.Tubes),
            ["pots"] = Copy(basis.Pots),
            ["tanks"] = Copy(basis.Tanks),
            ["emitters"] = Copy(basis.Emitters),
            ["strainers"] = Copy(basis.Strainers),
            ["pumps"] = Copy(basis.Pumps),
            ["outlets"] = Copy(basis.Outlets),
            ["wires"] = Copy(basis.Wires),
            ["sundries"] = Copy(basis.Sundries),
            ["crops"] = Copy(basis.Crops),
        };
    }

    private string File { get; }

    /// <summary>Reads the whole file.</summary>
    public void Lay(FileNode root)
    {
        if (root is not FileObject file)
        {
            Fault("", root, "an object in { } with shelves such as \"pumps\"");
            return;
        }
        foreach (var member in file.Fields)
        {
            var shelf = CatalogueField.ShelfRows.FirstOrDefault(shelf => shelf.Name == member.Name);
            if (shelf.Name is not null)
            {
                Group(shelf.Name, shelf.Row, member.Value);
            }
            else if (OwnNutrients.Names.Contains(member.Name))
            {
                _feeds.Group(member);
            }
            else if (member.Name == "format")
            {
                if (member.Value is not FileNumber { Text: "1" })
                {
                    Fault("format", member.Value, "1, the only version of this format so far");
                }
            }
            else if (member.Name == "currency")
            {
                Currency(member.Value);
            }
            else if (member.Name != "$schema")
            {
                string[] known =
                [
                    "format",
                    "currency",
                    "$schema",
                    .. CatalogueField.ShelfRows.Select(known => known.Name),
                    .. OwnNutrients.Names,
                ];
                UnknownField("", member, "a shelf", known);
            }
        }
        _feeds.Finish(_shelves["crops"].Keys);
        foreach (var (target, node, path) in _loopTargets.Where(one => !_feeds.Targets.Targets.ContainsKey(one.Target)))
        {
            Fault(path, node, "the key of a target", NearestName.Of(target, _feeds.Targets.Targets.Keys));
        }
        var sundries = _shelves["sundries"];
        foreach (var (piece, node, path) in _pieces.Where(piece => !sundries.ContainsKey(piece.Piece)))
        {
            Fault(path, node, "the key of a row under \"sundries\"", NearestName.Of(piece, sundries.Keys));
        }
    }

    private void Currency(FileNode node)
    {
        if (node is FileText { Text: { Length: 3 } text } && text.All(char.IsAsciiLetterUpper))
        {
            _currency = text;
            return;
        }
        Fault("currency", node, "three capital letters such as \"USD\" or \"EUR\"");
    }

    private void Group(string shelf, Type row, FileNode node)
    {
        if (node is not FileList list || list.Items.Count > CatalogueReader.MostRows)
        {
            Fault(
                shelf,
                node,
                FormattableString.Invariant($"a list in [ ] of at most {CatalogueReader.MostRows} rows")
            );
            return;
        }
        var given = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < list.Items.Count; i++)
        {
            Row(shelf, row, list.Items[i], FormattableString.Invariant($"{shelf}[{i}]"), given);
        }
    }

    private void Row(string shelf, Type type, FileNode node, string path, HashSet<string> given)
    {
        if (node is not FileObject row)
        {
            Fault(path, node, "a row with fields in { }");
            return;
        }
        var fields = CatalogueField.Of(type);
        var key = Key(shelf, row, path, given);
        var start = Start(shelf, key, row, path);
        var entry = (CatalogueRow)Activator.CreateInstance(type)!;
        var good = start is not null || row["basedOn"] is null;
        var missing = new List<string>();
        foreach (var field in fields)
        {
            if (row[field.Name] is { } member)
            {
                var value = CatalogueValue.Read(field, member.Value, $"{path}.{field.Name}", _faults);
                good &= value is not null;
                field.Property.SetValue(entry, value ?? field.Property.GetValue(entry));
            }
            else if (start is not null)
            {
                // A row that changes figures no longer has them all from where the row it starts from has them.
                var source = $"{File}, based on {start.Key}: {start.Source}";
                field.Property.SetValue(entry, field.Name == "source" ? source : field.Property.GetValue(start));
            }
            else if (field.Needed && field.Name != "key")
            {
                missing.Add(field.Name);
            }
        }
        // A row that names a wrong base would be whole with the right one.
        if (missing.Count > 0 && row["basedOn"] is null)
        {
            good = false;
            var names = string.Join(", ", missing);
            Fault(path, node, $"{names} too, or \"basedOn\" with the key of a row to start from");
        }
        string[] known = [.. fields.Select(field => field.Name), "basedOn"];
        foreach (var member in row.Fields.Where(member => !known.Contains(member.Name)))
        {
            UnknownField(path, member, "a field of this shelf", known);
        }
        if (!good || key is null)
        {
            return;
        }
        foreach (var misfit in CatalogueRules.Misfits(entry))
        {
            var field = fields.First(field => field.Property.Name == misfit.Field);
            var place = row[field.Name]?.Value ?? node;
            Fault($"{path}.{field.Name}", place, misfit.Expected);
        }
        NotePieces(row, path);
        if (row["loopTarget"]?.Value is FileText target)
        {
            _loopTargets.Add((target.Text, target, path + ".loopTarget"));
        }
        _shelves[shelf][key] = entry;
    }

    private string? Key(string shelf, FileObject row, string path, HashSet<string> given)
    {
        const string Shape = "a key in lower case such as \"my-pump\": letters, digits, dashes, points and slashes";
        if (row["key"] is not { Value: var node })
        {
            Fault(path, row, "the field \"key\" too: " + Shape);
            return null;
        }
        path += ".key";
        // "none" is what a rig file writes for no part at all.
        var key = (node as FileText)?.Text;
        if (key is null or "" or "none" || key.Length > 60 || key.AsSpan().ContainsAnyExcept(s_keyLetters))
        {
            Fault(path, node, Shape);
            return null;
        }
        if (!given.Add(key))
        {
            Fault(path, node, "a key that no earlier row of this file has");
            return null;
        }
        var other = _shelves.FirstOrDefault(other => other.Key != shelf && other.Value.ContainsKey(key)).Key;
        if (other is not null)
        {
            Fault(path, node, $"a key that does not stand under \"{other}\" already");
            return null;
        }
        return key;
    }

    /// <summary>The row from which fields that are left out are taken, or null for a row that must be whole.</summary>
    private CatalogueRow? Start(string shelf, string? key, FileObject row, string path)
    {
        if (row["basedOn"] is not { Value: var node })
        {
            return key is null ? null : _shelves[shelf].GetValueOrDefault(key);
        }
        var name = (node as FileText)?.Text ?? "";
        if (_shelves[shelf].TryGetValue(name, out var found))
        {
            return found;
        }
        Fault(
            path + ".basedOn",
            node,
            $"the key of a built-in or earlier row under \"{shelf}\"",
            NearestName.Of(name, _shelves[shelf].Keys)
        );
        return null;
    }

    // Only pieces that the file itself names are looked up: those of the basis were when it was read.
    private void NotePieces(FileObject row, string path)
    {
        var items = (row["pieces"]?.Value as FileList)?.Items ?? [];
        for (var i = 0; i < items.Count; i++)
        {
            _pieces.Add((((FileText)items[i]).Text, items[i], FormattableString.Invariant($"{path}.pieces[{i}]")));
        }
    }

    private void Fault(string path, FileNode at, string expected, string? nearest = null) =>
        _faults.Add(path, at, FaultList.Show(at), expected, nearest);

    private void UnknownField(string path, FileField field, string what, string[] known) =>
        _faults.Add(
            path.Length == 0 ? field.Name : $"{path}.{field.Name}",
            field.Line,
            field.Column,
            $"the field {FaultList.Quote(field.Name)}",
            $"{what}: {string.Join(", ", known)}",
            NearestName.Of(field.Name, known)
        );

    /// <summary>The basis with all rows that were read laid over it.</summary>
    public PartsCatalogue Whole() =>
        new()
        {
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
            Currency = _currency,
            Salts = _feeds.Salts,
            Targets = _feeds.Targets,
        };

    private Dictionary<string, T> Rows<T>(string shelf)
        where T : CatalogueRow =>
        _shelves[shelf].ToDictionary(row => row.Key, row => (T)InOneCurrency(row.Value), StringComparer.Ordinal);

    // A made-up price in dollars says nothing beside prices in another currency, and must not be added to them.
    private CatalogueRow InOneCurrency(CatalogueRow row) =>
        row is CatalogueEntry { TypicalPrice: not null } part && _currency != PartsCatalogue.Dollar
            ? part with
            {
                TypicalPrice = null,
            }
            : row;

    private static Dictionary<string, CatalogueRow> Copy<T>(IReadOnlyDictionary<string, T> shelf)
        where T : CatalogueRow =>
        shelf.ToDictionary(row => row.Key, row => (CatalogueRow)row.Value, StringComparer.Ordinal);
}
