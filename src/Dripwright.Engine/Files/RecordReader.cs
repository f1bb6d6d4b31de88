using System.Globalization;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>Turns the tree of a file into records, by the description in their attributes.</summary>
/// <remarks>Where a field is at fault its default stands in, so that all others can still be judged.</remarks>
/// <param name="faults">Where faults go.</param>
/// <param name="keys">The keys that the file may name.</param>
/// <param name="rows">Where rows that lie over others go; null for a file without such rows.</param>
internal sealed partial class RecordReader(FaultList faults, IKeys keys, IRows? rows = null)
{
    private readonly Dictionary<string, (int Line, int Column)> _places = [];
    private readonly List<Assumed> _assumed = [];
    private UnitSystem _units;

    /// <summary>All that the file does not give.</summary>
    public IReadOnlyList<Assumed> Assumed => _assumed;

    /// <summary>The record at the root of a file. Where it says its units, as a rig and a brief do, the assumed sizes follow them.</summary>
    public T Read<T>(FileObject root)
    {
        // Read first, for all else to follow; their faults are told in the walk.
        var units = FieldDescription.Of(typeof(T)).FirstOrDefault(field => field.Name == "units");
        _units =
            root["units"]?.Value is FileText text && units?.ChoiceValue(text.Text) is UnitSystem known
                ? known
                : UnitSystem.Us;
        return (T)Record(typeof(T), "", root, root, null);
    }

    /// <summary>Where the field stands; of an absent one where the thing stands that lacks it.</summary>
    public (int Line, int Column) PlaceOf(string path)
    {
        while (!_places.ContainsKey(path) && path.Length > 0)
        {
            path = path[..Math.Max(0, path.LastIndexOfAny(['.', '[']))];
        }
        return _places.GetValueOrDefault(path, (1, 1));
    }

    private object Record(Type type, string path, FileObject? from, FileNode around, object? start)
    {
        var fields = FieldDescription.Of(type);
        var isRow = FieldDescription.IsRow(type);
        var made = Activator.CreateInstance(type)!;
        if (from is not null)
        {
            _places[path] = (from.Line, from.Column);
            JudgeNames(
                [.. fields.Select(field => field.Name), .. isRow ? [RowAttribute.BasedOn] : (string[])[]],
                path,
                from,
                fields
            );
        }
        var missing = new List<string>();
        foreach (var field in fields)
        {
            var fieldPath = path.Length == 0 ? field.Name : $"{path}.{field.Name}";
            if (from?[field.Name] is { } given)
            {
                field.Property.SetValue(made, Given(field, fieldPath, given.Value));
            }
            else if (start is not null)
            {
                field.Property.SetValue(made, field.Property.GetValue(start));
            }
            else if (isRow && field.MustBeGiven)
            {
                missing.Add(field.Name);
            }
            else
            {
                field.Property.SetValue(made, Absent(field, fieldPath, from ?? around));
            }
        }
        // A row that names a wrong one to start from would be whole with the right one.
        if (missing.Count > 0 && from?[RowAttribute.BasedOn] is null)
        {
            var expected = Phrase.Of("fault.row-missing", string.Join(", ", missing), RowAttribute.BasedOn);
            faults.Add(path, around, FaultList.Show(around), expected);
        }
        return made;
    }

    private void JudgeNames(
        IReadOnlyList<string> names,
        string path,
        FileObject from,
        IReadOnlyList<FieldDescription> fields
    )
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var field in from.Fields)
        {
            var isRoot = path.Length == 0;
            var shown = FaultList.Quoted(field.Name);
            var fieldPath = isRoot ? shown.Trim('"') : $"{path}.{shown.Trim('"')}";
            if (!seen.Add(field.Name))
            {
                faults.Add(
                    fieldPath,
                    field.Line,
                    field.Column,
                    Phrase.Of("fault.field-twice.found", shown),
                    Phrase.Of("fault.field-twice.expected")
                );
            }
            else if (isRoot && field.Name == "$schema")
            {
                if (field.Value is not FileText)
                {
                    faults.Add(fieldPath, field.Value, FaultList.Show(field.Value), Phrase.Of("fault.schema-address"));
                }
            }
            else if (fields.FirstOrDefault(known => known.Formerly == field.Name) is { } renamed)
            {
                faults.Add(
                    fieldPath,
                    field.Line,
                    field.Column,
                    Phrase.Of("fault.field-old.found", shown),
                    Phrase.Of("fault.field-old.expected", renamed.Name, renamed.Expected()),
                    renamed.Name
                );
            }
            else if (!names.Contains(field.Name))
            {
                faults.Add(
                    fieldPath,
                    field.Line,
                    field.Column,
                    Phrase.Of("fault.field-unknown.found", shown),
                    Phrase.Of("fault.field-unknown.expected", string.Join(", ", names)),
                    NearestName.Of(field.Name, names)
                );
            }
        }
    }

    private object? Absent(FieldDescription field, string path, FileNode around)
    {
        if (field.MustBeGiven)
        {
            faults.Add(path, around, Phrase.Of("fault.nothing"), field.Expected());
            return Nothing(field);
        }
        switch (field.Kind)
        {
            case FieldKind.Section:
                return Record(field.ValueType, path, null, around, null);
            case FieldKind.List when field.FoundBy is null && field.Items!.Min > 0:
                return ListOf(field, [Record(field.ValueType, $"{path}[0]", null, around, null)]);
            case FieldKind.List when field.FoundBy is null:
                _assumed.Add(new Assumed(path, "none", field.Says));
                return ListOf(field, []);
        }
        if (field.FoundBy is { } how)
        {
            _assumed.Add(new Assumed(path, "", how));
            return null;
        }
        var text = field.AssumedText(_units);
        _assumed.Add(new Assumed(path, text, field.Says));
        if (field.Kind is FieldKind.Key && !Has(field.Key!, text))
        {
            var found = Phrase.Of("fault.assumed-key-missing", FaultList.Quoted(text));
            faults.Add(path, around, found, field.Expected());
        }
        return field.AssumedValue(_units);
    }

    private object? Given(FieldDescription field, string path, FileNode node)
    {
        _places[path] = (node.Line, node.Column);
        var value = node switch
        {
            FileObject section when field.Kind is FieldKind.Section => Record(
                field.ValueType,
                path,
                section,
                node,
                null
            ),
            FileList list when field.Kind is FieldKind.List => Elements(field, path, list),
            _ => Value(field, path, node),
        };
        return value ?? StandIn(field, path, node);
    }

    // The faulty field's default, without saying that it is assumed.
    private object? StandIn(FieldDescription field, string path, FileNode node)
    {
        var before = _assumed.Count;
        var value =
            field.MustBeGiven ? Nothing(field)
            : field.Kind is FieldKind.Section or FieldKind.List ? Absent(field, path, node)
            : field.AssumedValue(_units);
        _assumed.RemoveRange(before, _assumed.Count - before);
        return value;
    }

    // Stands in for what must be given, so that nothing that looks at it falls over.
    private static object? Nothing(FieldDescription field) =>
        field.Kind is FieldKind.List ? ListOf(field, [])
        : field.Property.PropertyType == typeof(string) ? ""
        : null;

    private Array? Elements(FieldDescription field, string path, FileList list)
    {
        var (min, max) = (field.Items!.Min, field.Items.Max);
        if (list.Items.Count < min || list.Items.Count > max)
        {
            faults.Add(path, list, Phrase.Of("fault.list-of", list.Items.Count), field.Expected());
        }
        var isRow = rows is not null && FieldDescription.IsRow(field.ValueType);
        var made = new List<object>();
        foreach (var (index, item) in list.Items.Take(max).Index())
        {
            var itemPath = $"{path}[{index.ToString(CultureInfo.InvariantCulture)}]";
            _places[itemPath] = (item.Line, item.Column);
            var value =
                field.Element!.Kind is not FieldKind.Section ? Value(field.Element, itemPath, item)
                : item is not FileObject element ? Wrong(field.Element, itemPath, item)
                : isRow ? Row(field, itemPath, element)
                : Record(field.ValueType, itemPath, element, item, null);
            if (value is not null)
            {
                made.Add(value);
            }
        }
        return ListOf(field, made);
    }

    private object Row(FieldDescription group, string path, FileObject row)
    {
        var before = faults.Count;
        var record = Record(group.ValueType, path, row, row, rows!.Start(group, path, row));
        rows.Add(group, path, row, faults.Count == before ? record : null);
        return record;
    }

    private static Array ListOf(FieldDescription field, List<object> elements)
    {
        var list = Array.CreateInstance(field.ValueType, elements.Count);
        for (var i = 0; i < elements.Count; i++)
        {
            list.SetValue(elements[i], i);
        }
        return list;
    }
}
