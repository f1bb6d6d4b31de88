using System.Globalization;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue.Rows;

/// <summary>Reads the fields of one row of a salt, target or limit file; notes every fault and goes on.</summary>
internal sealed class RowReader(FileObject row, string path, FaultList faults)
{
    private readonly HashSet<string> _known = new(StringComparer.Ordinal);

    /// <summary>False once a field of this row was at fault.</summary>
    public bool Good { get; private set; } = true;

    public FileObject Row => row;

    public string Path => path;

    public bool Has(string name)
    {
        _known.Add(name);
        return row[name] is not null;
    }

    /// <summary>A text; null where it is absent or at fault.</summary>
    public string? Text(string name, int longest, bool needed = false)
    {
        if (Node(name, needed) is not { } node)
        {
            return null;
        }
        if (
            node is FileText written
            && !string.IsNullOrWhiteSpace(written.Text)
            && written.Text.Length <= longest
            && !written.Text.Any(char.IsControl)
        )
        {
            return written.Text;
        }
        Fault(name, node, FormattableString.Invariant($"a text in quotes of 1 to {longest} characters"));
        return null;
    }

    /// <summary>A number; null where it is absent or at fault.</summary>
    public double? Number(string name, double least, double most, bool needed = false)
    {
        if (Node(name, needed) is not { } node)
        {
            return null;
        }
        if (
            node is FileNumber written
            && double.TryParse(written.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && value >= least
            && value <= most
        )
        {
            return value;
        }
        Fault(name, node, FormattableString.Invariant($"a number without quotes, {least} to {most}"));
        return null;
    }

    /// <summary>One of an enumeration's names, lower case with dashes; null where it is absent or at fault.</summary>
    public T? Choice<T>(string name, bool needed = false)
        where T : struct, Enum
    {
        if (Node(name, needed) is not { } node)
        {
            return null;
        }
        return Choice<T>(name, node);
    }

    /// <summary>A list of an enumeration's names.</summary>
    public IReadOnlyList<T> Choices<T>(string name, int most)
        where T : struct, Enum
    {
        if (Node(name, false) is not { } node)
        {
            return [];
        }
        if (node is not FileList list || list.Items.Count > most)
        {
            Fault(name, node, FormattableString.Invariant($"a list in [ ] of at most {most}"));
            return [];
        }
        return [.. list.Items.Select(item => Choice<T>(name, item)).OfType<T>().Distinct()];
    }

    /// <summary>True or false; null where it is absent or at fault.</summary>
    public bool? YesOrNo(string name)
    {
        if (Node(name, false) is not { } node)
        {
            return null;
        }
        if (node is FileWord { Value: { } word })
        {
            return word;
        }
        Fault(name, node, "true or false");
        return null;
    }

    /// <summary>The rows of a list of objects; empty where it is absent or at fault.</summary>
    public IReadOnlyList<RowReader> Rows(string name, int most)
    {
        if (Node(name, false) is not { } node)
        {
            return [];
        }
        if (node is not FileList list || list.Items.Count > most)
        {
            Fault(name, node, FormattableString.Invariant($"a list in [ ] of at most {most}"));
            return [];
        }
        var rows = new List<RowReader>();
        for (var i = 0; i < list.Items.Count; i++)
        {
            var place = FormattableString.Invariant($"{name}[{i}]");
            if (list.Items[i] is FileObject item)
            {
                rows.Add(new RowReader(item, $"{path}.{place}", faults));
            }
            else
            {
                Fault(place, list.Items[i], "a row with fields in { }");
            }
        }
        return rows;
    }

    /// <summary>An object of numbers by name, such as a label analysis.</summary>
    public IReadOnlyList<(string Name, double Value)> Numbers(
        string name,
        IReadOnlyCollection<string> names,
        double most
    )
    {
        if (Node(name, false) is not { } node)
        {
            return [];
        }
        if (node is not FileObject inner)
        {
            Fault(name, node, "numbers by name in { }");
            return [];
        }
        var reader = new RowReader(inner, $"{path}.{name}", faults);
        var values = new List<(string, double)>();
        foreach (var known in names)
        {
            if (reader.Number(known, 0, most) is { } value)
            {
                values.Add((known, value));
            }
        }
        reader.Finish();
        Good &= reader.Good;
        return values;
    }

    /// <summary>Notes the fields that nobody asked for, and those that stand twice.</summary>
    public void Finish()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var field in row.Fields)
        {
            if (!_known.Contains(field.Name))
            {
                Good = false;
                faults.Add(
                    path,
                    field.Line,
                    field.Column,
                    $"the field {FaultList.Quote(field.Name)}",
                    "a field of this row: " + string.Join(", ", _known.Order(StringComparer.Ordinal)),
                    NearestName.Of(field.Name, _known)
                );
            }
            else if (!seen.Add(field.Name))
            {
                Good = false;
                faults.Add(
                    Joined(field.Name),
                    field.Line,
                    field.Column,
                    $"the field {FaultList.Quote(field.Name)} a second time",
                    "each field once"
                );
            }
        }
    }

    /// <summary>Notes a fault at a field of the row.</summary>
    public void Fault(string name, FileNode node, string expected, string? nearest = null)
    {
        Good = false;
        faults.Add(Joined(name), node, FaultList.Show(node), expected, nearest);
    }

    /// <summary>Notes a fault of the row as a whole.</summary>
    public void Fault(string expected) => Fault("", row, expected);

    /// <summary>Notes a fault at a field if it is there, and of the row if not.</summary>
    public void FaultAt(string name, string expected)
    {
        if (row[name] is { } field)
        {
            Fault(name, field.Value, expected);
        }
        else
        {
            Fault(expected);
        }
    }

    private T? Choice<T>(string name, FileNode node)
        where T : struct, Enum
    {
        var names = Names<T>.ByName;
        var written = (node as FileText)?.Text ?? "";
        if (names.TryGetValue(written, out var value))
        {
            return value;
        }
        Fault(name, node, "one of " + string.Join(", ", names.Keys), NearestName.Of(written, names.Keys));
        return null;
    }

    private FileNode? Node(string name, bool needed)
    {
        _known.Add(name);
        if (row[name] is { Value: var node })
        {
            return node is FileWord { Value: null } ? null : node;
        }
        if (needed)
        {
            Fault($"the field \"{name}\" too");
        }
        return null;
    }

    private string Joined(string name) =>
        name.Length == 0 ? path
        : path.Length == 0 ? name
        : $"{path}.{name}";

    private static class Names<T>
        where T : struct, Enum
    {
        public static IReadOnlyDictionary<string, T> ByName { get; } =
            Enum.GetValues<T>()
                .ToDictionary(value => Catalogue.CatalogueField.Dashed(value.ToString()), StringComparer.Ordinal);
    }
}
