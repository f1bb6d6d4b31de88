using System.Globalization;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>Reads the value of one field of a catalogue row by its description.</summary>
internal static class CatalogueValue
{
    /// <summary>The value, or null after noting a fault.</summary>
    public static object? Read(CatalogueField field, FileNode node, string path, FaultList faults) =>
        field.Items is { } items ? Items(field, items, node, path, faults) : Single(field, node, path, faults);

    private static Array? Items(
        CatalogueField field,
        ItemsAttribute items,
        FileNode node,
        string path,
        FaultList faults
    )
    {
        if (node is not FileList list || list.Items.Count < items.Min || list.Items.Count > items.Max)
        {
            Fault(faults, node, path, FormattableString.Invariant($"a list in [ ] of {items.Min} to {items.Max}"));
            return null;
        }
        var values = Array.CreateInstance(field.ElementType, list.Items.Count);
        var good = true;
        for (var i = 0; i < values.Length; i++)
        {
            var value = Single(field, list.Items[i], FormattableString.Invariant($"{path}[{i}]"), faults);
            good &= value is not null;
            if (value is not null)
            {
                values.SetValue(value, i);
            }
        }
        return good ? values : null;
    }

    private static object? Single(CatalogueField field, FileNode node, string path, FaultList faults)
    {
        var type = field.ElementType;
        return type == typeof(CurvePoint) ? Point(node, path, faults)
            : type.IsEnum ? Choice(field, node, path, faults)
            : type == typeof(bool) ? YesOrNo(node, path, faults)
            : field.Quantity is { } quantity ? Quantity(quantity, field, node, path, faults)
            : field.Number is { } number ? Number(number, type, node, path, faults)
            : field.Whole is { } whole ? Whole(whole, node, path, faults)
            : Text(field.Text!, node, path, faults);
    }

    private static CurvePoint? Point(FileNode node, string path, FaultList faults)
    {
        var fields = CatalogueField.Of(typeof(CurvePoint));
        string[] known = [.. fields.Select(field => field.Name)];
        if (
            node is not FileObject point
            || point.Fields.Count != known.Length
            || point.Fields.Select(member => member.Name).Except(known).Any()
        )
        {
            Fault(faults, node, path, "a point such as { \"flow\": \"100 gph\", \"head\": \"5 ft\" }");
            return null;
        }
        var values = fields
            .Select(field => Single(field, point[field.Name]!.Value, $"{path}.{field.Name}", faults))
            .ToList();
        return values.Contains(null) ? null : new CurvePoint((double)values[0]!, (double)values[1]!);
    }

    private static object? Choice(CatalogueField field, FileNode node, string path, FaultList faults)
    {
        var name = (node as FileText)?.Text ?? "";
        if (field.Choices.TryGetValue(name, out var value))
        {
            return value;
        }
        var known = field.Choices.Keys;
        Fault(faults, node, path, "one of " + string.Join(", ", known), NearestName.Of(name, known));
        return null;
    }

    private static bool? YesOrNo(FileNode node, string path, FaultList faults)
    {
        if (node is FileWord { Value: { } word })
        {
            return word;
        }
        Fault(faults, node, path, "true or false");
        return null;
    }

    private static double? Quantity(
        QuantityAttribute quantity,
        CatalogueField field,
        FileNode node,
        string path,
        FaultList faults
    )
    {
        if (node is not FileText written)
        {
            Fault(faults, node, path, QuantityText.Example(quantity.Dimension));
            return null;
        }
        var reading = QuantityText.Read(quantity.Dimension, written.Text);
        if (reading.Value is not { } value)
        {
            Fault(faults, node, path, reading.Expected, reading.Nearest);
            return null;
        }
        var (min, max) = field.Bounds;
        if (value < min || value > max)
        {
            Fault(faults, node, path, $"{quantity.Min} to {quantity.Max}");
            return null;
        }
        return value;
    }

    private static object? Number(NumberAttribute number, Type type, FileNode node, string path, FaultList faults)
    {
        if (
            node is FileNumber written
            && double.TryParse(written.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && value >= number.Min
            && value <= number.Max
        )
        {
            return type == typeof(decimal)
                ? decimal.Parse(written.Text, NumberStyles.Float, CultureInfo.InvariantCulture)
                : value;
        }
        Fault(
            faults,
            node,
            path,
            FormattableString.Invariant($"a number without quotes, {number.Min} to {number.Max}")
        );
        return null;
    }

    private static int? Whole(WholeAttribute whole, FileNode node, string path, FaultList faults)
    {
        if (
            node is FileNumber written
            && int.TryParse(written.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && value >= whole.Min
            && value <= whole.Max
        )
        {
            return value;
        }
        Fault(
            faults,
            node,
            path,
            FormattableString.Invariant($"a whole number without quotes, {whole.Min} to {whole.Max}")
        );
        return null;
    }

    private static string? Text(TextAttribute text, FileNode node, string path, FaultList faults)
    {
        if (
            node is FileText written
            && !string.IsNullOrWhiteSpace(written.Text)
            && written.Text.Length <= text.MaxLength
            && !written.Text.Any(char.IsControl)
        )
        {
            return written.Text;
        }
        Fault(faults, node, path, FormattableString.Invariant($"a text in quotes of 1 to {text.MaxLength} characters"));
        return null;
    }

    private static void Fault(FaultList faults, FileNode node, string path, string expected, string? nearest = null) =>
        faults.Add(path, node, FaultList.Show(node), expected, nearest);
}
