using System.Globalization;
using System.Text;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>The handbook's tables of a file's fields, made from the fields' own descriptions.</summary>
internal static class FieldTables
{
    /// <summary>A table in Markdown for the root of a file and each section in it.</summary>
    /// <param name="root">The record at the root.</param>
    /// <param name="title">What to call the root.</param>
    public static string Write(Type root, string title)
    {
        var text = new StringBuilder();
        Table(text, root, title, "", []);
        return text.ToString();
    }

    /// <summary>What stands in where the field is left out, in words.</summary>
    public static string Assumed(FieldDescription field)
    {
        if (field.FoundBy is { } how)
        {
            return how;
        }
        if (field.MustBeGiven)
        {
            return "not allowed";
        }
        var (us, metric) = (field.AssumedText(UnitSystem.Us), field.AssumedText(UnitSystem.Metric));
        return us == metric ? us : $"{us} (US), {metric} (metric)";
    }

    private static void Table(StringBuilder text, Type type, string title, string path, Dictionary<Type, string> told)
    {
        var fields = FieldDescription.Of(type);
        // What several records inherit is told once.
        var known = fields.Where(field => told.ContainsKey(field.Property.DeclaringType!)).ToList();
        text.Append(CultureInfo.InvariantCulture, $"### {title}\n\n");
        if (known.Count > 0)
        {
            var names = string.Join(", ", known.Select(field => $"`{field.Name}`"));
            text.Append(CultureInfo.InvariantCulture, $"{names}: as in {told[known[0].Property.DeclaringType!]}.\n\n");
        }
        text.Append("| field | what it says | allowed | left out |\n|---|---|---|---|\n");
        foreach (var field in fields.Except(known))
        {
            var assumed = Assumed(field);
            text.Append(
                CultureInfo.InvariantCulture,
                $"| `{field.Name}` | {field.Says} | {Allowed(field)} | {(assumed.Length == 0 ? "–" : assumed)} |\n"
            );
            if (field.Property.DeclaringType != type)
            {
                told.TryAdd(field.Property.DeclaringType!, title);
            }
        }
        text.Append('\n');
        foreach (var field in fields.Where(field => (field.Element ?? field).Kind is FieldKind.Section))
        {
            var inner = (path.Length == 0 ? "" : $"{path}.") + field.Name + (field.Kind is FieldKind.List ? "[]" : "");
            Table(text, field.ValueType, $"`{inner}`", inner, told);
        }
    }

    private static string Allowed(FieldDescription field) =>
        field.Kind switch
        {
            FieldKind.Quantity or FieldKind.Whole or FieldKind.Number or FieldKind.Ph => field.Range(),
            FieldKind.Price => "a price such as 2.40",
            FieldKind.Flag => "true, false",
            FieldKind.Choice => string.Join(", ", field.Choices),
            FieldKind.Key => field.Key!.Allowed,
            FieldKind.Text when field.Text!.IsKey => "lower case, digits, dashes, points and slashes",
            FieldKind.Text => string.Create(
                CultureInfo.InvariantCulture,
                $"text, at most {field.Text!.MaxLength} characters"
            ),
            FieldKind.Amounts => $"any of {string.Join(", ", field.Amounts!.Names)}, each {field.Range()}",
            FieldKind.List when field.Element!.Kind is FieldKind.Section => $"list of {field.Range()}",
            FieldKind.List => $"list of {field.Range()}, each: {Allowed(field.Element)}",
            _ => "see below",
        };
}
