using System.Globalization;
using System.Text;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>The handbook's tables of the rig file's fields, made from the fields' own descriptions.</summary>
public static class RigHandbook
{
    /// <summary>A table in Markdown for each section of the rig file.</summary>
    public static string Tables() => Tables(typeof(Rig), "The rig");

    /// <summary>A table in Markdown for each section of a file that is described by the same attributes.</summary>
    internal static string Tables(Type root, string title)
    {
        var text = new StringBuilder();
        Table(text, root, title, "");
        return text.ToString();
    }

    /// <summary>What stands in where the field is left out, in words.</summary>
    internal static string Assumed(RigField field)
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

    private static void Table(StringBuilder text, Type type, string title, string path)
    {
        var fields = RigField.Of(type);
        text.Append(
            CultureInfo.InvariantCulture,
            $"### {title}\n\n| field | what it says | allowed | left out |\n|---|---|---|---|\n"
        );
        foreach (var field in fields)
        {
            var assumed = Assumed(field);
            text.Append(
                CultureInfo.InvariantCulture,
                $"| `{field.Name}` | {field.Says} | {Allowed(field)} | {(assumed.Length == 0 ? "–" : assumed)} |\n"
            );
        }
        text.Append('\n');
        foreach (var field in fields.Where(field => field.Kind is FieldKind.Section or FieldKind.List))
        {
            var inner = (path.Length == 0 ? "" : $"{path}.") + field.Name + (field.Kind is FieldKind.List ? "[]" : "");
            Table(text, field.ValueType, $"`{inner}`", inner);
        }
    }

    private static string Allowed(RigField field) =>
        field.Kind switch
        {
            FieldKind.Quantity => field.Range(),
            FieldKind.Whole => string.Create(CultureInfo.InvariantCulture, $"{field.Whole!.Min} to {field.Whole.Max}"),
            FieldKind.Flag => "true, false",
            FieldKind.Choice => string.Join(", ", field.Choices),
            FieldKind.Part => GroupKeys.Expected(field.Part!.PartGroup),
            FieldKind.Text => string.Create(
                CultureInfo.InvariantCulture,
                $"text, at most {field.Text!.MaxLength} characters"
            ),
            FieldKind.List => string.Create(
                CultureInfo.InvariantCulture,
                $"list of {field.Items!.Min} to {field.Items.Max}"
            ),
            _ => "see below",
        };
}
