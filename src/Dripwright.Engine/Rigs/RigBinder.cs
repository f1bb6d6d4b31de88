using System.Globalization;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Turns the tree of a rig file into records, by the description in their attributes.</summary>
/// <remarks>Where a field is at fault its default stands in, so that all others can still be judged.</remarks>
internal sealed class RigBinder(FaultList faults, PartsCatalogue catalogue)
{
    private readonly Dictionary<string, (int Line, int Column)> places = [];
    private readonly List<Assumed> assumed = [];
    private UnitSystem units;

    /// <summary>All that the file does not give.</summary>
    public IReadOnlyList<Assumed> Assumed => assumed;

    public Rig Bind(FileObject root) => Bind<Rig>(root);

    /// <summary>The record at the root of a file that says its units there, as a rig and a brief do.</summary>
    public T Bind<T>(FileObject root)
    {
        // The assumed sizes follow the units, so these are read first; their faults are told in the walk.
        var unitsField = RigField.Of(typeof(T)).First(field => field.Name == "units");
        units =
            root["units"]?.Value is FileText text && unitsField.ChoiceValue(text.Text) is UnitSystem known
                ? known
                : UnitSystem.Us;
        return (T)Record(typeof(T), "", root, root);
    }

    /// <summary>Where the field stands; of an absent one where the thing stands that lacks it.</summary>
    public (int Line, int Column) PlaceOf(string path)
    {
        while (!places.ContainsKey(path) && path.Length > 0)
        {
            path = path[..Math.Max(0, path.LastIndexOfAny(['.', '[']))];
        }
        return places.GetValueOrDefault(path, (1, 1));
    }

    private object Record(Type type, string path, FileObject? from, FileNode around)
    {
        var fields = RigField.Of(type);
        var made = Activator.CreateInstance(type)!;
        if (from is not null)
        {
            places[path] = (from.Line, from.Column);
            JudgeNames(fields, path, from);
        }
        foreach (var field in fields)
        {
            var fieldPath = path.Length == 0 ? field.Name : $"{path}.{field.Name}";
            var given = from?[field.Name];
            var value = given is null ? Absent(field, fieldPath, from ?? around) : Given(field, fieldPath, given.Value);
            field.Property.SetValue(made, value);
        }
        return made;
    }

    private void JudgeNames(IReadOnlyList<RigField> fields, string path, FileObject from)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var field in from.Fields)
        {
            var isRoot = path.Length == 0;
            var shown = FaultList.Quote(field.Name);
            var fieldPath = isRoot ? shown.Trim('"') : $"{path}.{shown.Trim('"')}";
            if (!seen.Add(field.Name))
            {
                faults.Add(fieldPath, field.Line, field.Column, $"the field {shown} a second time", "each field once");
            }
            else if (isRoot && field.Name == "$schema")
            {
                if (field.Value is not FileText)
                {
                    faults.Add(
                        fieldPath,
                        field.Value,
                        FaultList.Show(field.Value),
                        "text: the schema's address, for an editor"
                    );
                }
            }
            else if (!fields.Any(known => known.Name == field.Name))
            {
                var names = fields.Select(known => known.Name);
                var nearest = NearestName.Of(field.Name, names);
                faults.Add(
                    fieldPath,
                    field.Line,
                    field.Column,
                    $"the unknown field {shown}",
                    $"one of {string.Join(", ", names)}",
                    nearest
                );
            }
        }
    }

    private object? Absent(RigField field, string path, FileNode around)
    {
        switch (field.Kind)
        {
            case FieldKind.Section:
                return Record(field.ValueType, path, null, around);
            case FieldKind.List when field.FoundBy is null && field.Items!.Min > 0:
                return ListOf(field, [Record(field.ValueType, $"{path}[0]", null, around)]);
            case FieldKind.List when field.FoundBy is null:
                assumed.Add(new Assumed(path, "none", field.Says));
                return ListOf(field, []);
        }
        if (field.MustBeGiven)
        {
            faults.Add(path, around, "nothing", Expected(field));
            return "";
        }
        if (field.FoundBy is { } how)
        {
            assumed.Add(new Assumed(path, "", how));
            return null;
        }
        var text = field.AssumedText(units);
        assumed.Add(new Assumed(path, text, field.Says));
        if (field.Kind is FieldKind.Part && !Has(field.Part!.PartGroup, text))
        {
            faults.Add(
                path,
                around,
                $"nothing, and the catalogue lacks {FaultList.Quote(text)} which would be assumed",
                Expected(field)
            );
        }
        return field.AssumedValue(units);
    }

    private object? Given(RigField field, string path, FileNode node)
    {
        places[path] = (node.Line, node.Column);
        var value = node switch
        {
            FileObject section when field.Kind is FieldKind.Section => Record(field.ValueType, path, section, node),
            FileList list when field.Kind is FieldKind.List => Elements(field, path, list),
            FileText text when field.Kind is FieldKind.Quantity => Quantity(field, path, text),
            FileText text when field.Kind is FieldKind.Part => Part(field, path, text),
            FileText text when field.Kind is FieldKind.Choice => Choice(field, path, text),
            FileText text when field.Kind is FieldKind.Text => Text(field, path, text),
            FileNumber when field.Kind is FieldKind.Whole => Whole(field, path, node),
            FileWord { Value: { } flag } when field.Kind is FieldKind.Flag => flag,
            _ => Wrong(field, path, node),
        };
        return value ?? StandIn(field, path, node);
    }

    // The faulty field's default, without saying that it is assumed.
    private object? StandIn(RigField field, string path, FileNode node)
    {
        var before = assumed.Count;
        var value =
            field.MustBeGiven ? ""
            : field.Kind is FieldKind.Section or FieldKind.List ? Absent(field, path, node)
            : field.AssumedValue(units);
        assumed.RemoveRange(before, assumed.Count - before);
        return value;
    }

    private object? Wrong(RigField field, string path, FileNode node)
    {
        var isNull = node is FileWord { Value: null };
        var expected = isNull ? $"{Expected(field)}; leave the field out to have it chosen for you" : Expected(field);
        faults.Add(
            path,
            node,
            FaultList.Show(node),
            expected,
            field.Kind is FieldKind.Quantity ? WithUnit(field, node) : null
        );
        return null;
    }

    // A bare number most likely means the unit in which the default is written.
    private string? WithUnit(RigField field, FileNode node)
    {
        var like = field.AssumedText(units);
        like = like.Length == 0 ? field.Quantity!.Max : like;
        var unit = like.LastIndexOf(' ');
        return node is FileNumber { Text.Length: < 12 } number && unit > 0 ? $"{number.Text}{like[unit..]}" : null;
    }

    private Array Elements(RigField field, string path, FileList list)
    {
        var (min, max) = (field.Items!.Min, field.Items.Max);
        if (list.Items.Count < min || list.Items.Count > max)
        {
            var count = list.Items.Count.ToString(CultureInfo.InvariantCulture);
            faults.Add(path, list, $"a list of {count}", Expected(field));
        }
        var made = new List<object>();
        foreach (var (index, item) in list.Items.Take(max).Index())
        {
            var itemPath = $"{path}[{index.ToString(CultureInfo.InvariantCulture)}]";
            places[itemPath] = (item.Line, item.Column);
            if (item is FileObject element)
            {
                made.Add(Record(field.ValueType, itemPath, element, item));
            }
            else
            {
                faults.Add(itemPath, item, FaultList.Show(item), "an object { … }");
            }
        }
        return ListOf(field, made);
    }

    private static Array ListOf(RigField field, List<object> elements)
    {
        var list = Array.CreateInstance(field.ValueType, elements.Count);
        for (var i = 0; i < elements.Count; i++)
        {
            list.SetValue(elements[i], i);
        }
        return list;
    }

    private double? Quantity(RigField field, string path, FileText text)
    {
        var reading = QuantityText.Read(field.Quantity!.Dimension, text.Text);
        if (reading.Value is not { } si)
        {
            faults.Add(path, text, FaultList.Show(text), reading.Expected, reading.Nearest);
            return null;
        }
        if (si < field.Min || si > field.Max)
        {
            faults.Add(path, text, FaultList.Show(text), field.Range());
            return null;
        }
        // A tube of 10⁻⁹⁰ m would overflow what is computed from it.
        if (si != 0 && Math.Abs(si) < field.Least)
        {
            faults.Add(path, text, FaultList.Show(text), $"0, or {field.Range()} and more than a billionth of that");
            return null;
        }
        return si;
    }

    private int? Whole(RigField field, string path, FileNode node)
    {
        if (WholeNumber.TryRead(node, out var whole) && whole >= field.Whole!.Min && whole <= field.Whole.Max)
        {
            return whole;
        }
        faults.Add(path, node, FaultList.Show(node), Expected(field));
        return null;
    }

    private string? Text(RigField field, string path, FileText text)
    {
        var max = field.Text!.MaxLength;
        if (text.Text.EnumerateRunes().Count() > max)
        {
            faults.Add(path, text, FaultList.Show(text), Expected(field));
            return null;
        }
        // Control characters have no place on a sheet, and no drawing or page can hold them.
        bool IsBarred(char letter) =>
            (char.IsControl(letter) && !(field.MayHaveLines && letter is ('\n' or '\t')))
            || letter is '\uFFFE' or '\uFFFF';

        if (text.Text.Any(IsBarred))
        {
            var expected = field.MayHaveLines
                ? "text without control characters"
                : "text on one line, without control characters";
            faults.Add(path, text, FaultList.Show(text), expected);
            return null;
        }
        return text.Text;
    }

    private object? Choice(RigField field, string path, FileText text)
    {
        if (field.ChoiceValue(text.Text) is { } value)
        {
            return value;
        }
        faults.Add(path, text, FaultList.Show(text), Expected(field), NearestName.Of(text.Text, field.Choices));
        return null;
    }

    private string? Part(RigField field, string path, FileText text)
    {
        var shelf = field.Part!.PartGroup;
        if (Has(shelf, text.Text))
        {
            return text.Text;
        }
        faults.Add(
            path,
            text,
            FaultList.Show(text),
            Expected(field),
            NearestName.Of(text.Text, GroupKeys.Keys(catalogue, shelf))
        );
        return null;
    }

    private bool Has(PartGroup shelf, string key) => GroupKeys.Has(catalogue, shelf, key);

    private static string Expected(RigField field) =>
        field.Kind switch
        {
            FieldKind.Quantity => QuantityText.Example(field.Quantity!.Dimension),
            FieldKind.Whole => string.Create(
                CultureInfo.InvariantCulture,
                $"a whole number from {field.Whole!.Min} to {field.Whole.Max}"
            ),
            FieldKind.Flag => "true or false",
            FieldKind.Choice => $"one of {string.Join(", ", field.Choices.Select(choice => $"\"{choice}\""))}",
            FieldKind.Part => GroupKeys.Expected(field.Part!.PartGroup),
            FieldKind.Text => string.Create(
                CultureInfo.InvariantCulture,
                $"text of at most {field.Text!.MaxLength} characters"
            ),
            FieldKind.List => string.Create(
                CultureInfo.InvariantCulture,
                $"a list [ … ] of {field.Items!.Min} to {field.Items.Max} entries"
            ),
            _ => "an object { … }",
        };
}
