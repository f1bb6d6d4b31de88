using System.Globalization;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <content>Single values: no sections, no lists. Each gives null after noting a fault.</content>
internal sealed partial class RecordReader
{
    private object? Value(FieldDescription field, string path, FileNode node) =>
        (field.Kind, node) switch
        {
            (FieldKind.Quantity, FileText text) => Quantity(field, path, text),
            (FieldKind.Key, FileText text) => Key(field, path, text),
            (FieldKind.Choice, FileText text) => Choice(field, path, text),
            (FieldKind.Text, FileText text) => Text(field, path, text),
            (FieldKind.Whole, FileNumber) => Whole(field, path, node),
            (FieldKind.Number or FieldKind.Ph, FileNumber number) => Number(field, path, number),
            (FieldKind.Price, FileNumber number) => Price(field, path, number),
            (FieldKind.Flag, FileWord { Value: { } flag }) => flag,
            (FieldKind.Amounts, FileObject amounts) => Amounts(field, path, amounts),
            _ => Wrong(field, path, node),
        };

    private object? Wrong(FieldDescription field, string path, FileNode node)
    {
        var expected = field.Expected();
        expected = node is FileWord { Value: null } ? Phrase.Of("fault.leave-out", expected) : expected;
        faults.Add(path, node, FaultList.Show(node), expected, Meant(field, node));
        return null;
    }

    // A bare number most likely means the unit in which the default is written; a number in quotes means the number.
    private string? Meant(FieldDescription field, FileNode node)
    {
        if (field.Kind is FieldKind.Quantity && node is FileNumber { Text.Length: < 12 } number)
        {
            var like = field.AssumedText(_units);
            like = like.Length == 0 ? field.Quantity!.Max : like;
            var unit = like.LastIndexOf(' ');
            return unit > 0 ? $"{number.Text}{like[unit..]}" : null;
        }
        return
            field.Kind is FieldKind.Whole or FieldKind.Number or FieldKind.Ph or FieldKind.Price
            && node is FileText { Text.Length: < 12 } text
            ? NumberText.Unquoted(text.Text)
            : null;
    }

    private double? Quantity(FieldDescription field, string path, FileText text)
    {
        var reading = QuantityText.Read(field.Quantity!.Dimension, text.Text);
        if (reading.Value is not { } si)
        {
            faults.Add(path, text, FaultList.Show(text), reading.Expected(), reading.Nearest);
            return null;
        }
        if (si < field.Min || si > field.Max)
        {
            faults.Add(path, text, FaultList.Show(text), field.Bounds());
            return null;
        }
        // A tube of 10⁻⁹⁰ m would overflow what is computed from it.
        if (si != 0 && Math.Abs(si) < field.Least)
        {
            faults.Add(path, text, FaultList.Show(text), Phrase.Of("fault.too-small", field.Bounds()));
            return null;
        }
        return si;
    }

    private int? Whole(FieldDescription field, string path, FileNode node)
    {
        if (WholeNumber.TryRead(node, out var whole) && whole >= field.Whole!.Min && whole <= field.Whole.Max)
        {
            return whole;
        }
        faults.Add(path, node, FaultList.Show(node), field.Expected());
        return null;
    }

    private double? Number(FieldDescription field, string path, FileNumber number)
    {
        if (
            double.TryParse(number.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && value >= field.Min
            && value <= field.Max
        )
        {
            return value + 0.0;
        }
        faults.Add(path, number, FaultList.Show(number), field.Expected());
        return null;
    }

    private decimal? Price(FieldDescription field, string path, FileNumber number)
    {
        if (
            decimal.TryParse(number.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var price)
            && price is >= 0 and <= PriceAttribute.Most
        )
        {
            return price;
        }
        faults.Add(path, number, FaultList.Show(number), Phrase.Of("fault.price-bounds", field.Bounds()));
        return null;
    }

    private Dictionary<string, double>? Amounts(FieldDescription field, string path, FileObject amounts)
    {
        var before = faults.Count;
        JudgeNames(field.Amounts!.Names, path, amounts, []);
        var read = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var name in field.Amounts.Names)
        {
            if (amounts[name] is not { Value: var node })
            {
                continue;
            }
            var inner = $"{path}.{name}";
            _places[inner] = (node.Line, node.Column);
            if (node is FileNumber number)
            {
                if (
                    double.TryParse(number.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                    && value >= 0
                    && value <= field.Max
                )
                {
                    read[name] = value + 0.0;
                    continue;
                }
            }
            faults.Add(inner, node, FaultList.Show(node), Phrase.Of("fault.number", field.Bounds()));
        }
        return faults.Count == before ? read : null;
    }

    private string? Text(FieldDescription field, string path, FileText text)
    {
        var (max, value) = (field.Text!.MaxLength, text.Text);
        var isGood =
            value.EnumerateRunes().Count() <= max
            && (!field.MustBeGiven || !string.IsNullOrWhiteSpace(value))
            && (!field.Text.IsKey || KeyText.IsGood(value));
        if (!isGood)
        {
            faults.Add(path, text, FaultList.Show(text), field.Expected());
            return null;
        }
        // Control characters have no place on a sheet, and no drawing or page can hold them.
        bool IsBarred(char letter) =>
            (char.IsControl(letter) && !(field.MayHaveLines && letter is ('\n' or '\t')))
            || letter is '\uFFFE' or '\uFFFF';

        if (value.Any(IsBarred))
        {
            var expected = field.MayHaveLines ? "fault.control-letters" : "fault.control-letters.line";
            faults.Add(path, text, FaultList.Show(text), Phrase.Of(expected));
            return null;
        }
        return value;
    }

    private object? Choice(FieldDescription field, string path, FileText text)
    {
        if (field.ChoiceValue(text.Text) is { } value)
        {
            return value;
        }
        faults.Add(path, text, FaultList.Show(text), field.Expected(), NearestName.Of(text.Text, field.Choices));
        return null;
    }

    private string? Key(FieldDescription field, string path, FileText text)
    {
        if (Has(field.Key!, text.Text))
        {
            return text.Text;
        }
        var known = field.Key!.Or is { } word ? [word, .. keys.Of(field.Key)] : keys.Of(field.Key);
        faults.Add(path, text, FaultList.Show(text), field.Expected(), NearestName.Of(text.Text, known));
        return null;
    }

    private bool Has(KeyAttribute field, string key) => key == field.Or || keys.Has(field, key);
}
