using System.Collections;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>Writes a record as a file for people, by the description in the attributes of its records.</summary>
/// <param name="units">Units preferred; the assumed values follow them.</param>
/// <param name="leaveOutAssumed">Leaves out what equals the assumed value.</param>
/// <param name="comments">Puts what each field means before it.</param>
internal sealed class RecordText(UnitSystem units, bool leaveOutAssumed, bool comments)
{
    private readonly StringBuilder _text = new();

    public string Write(object root)
    {
        _text.Clear();
        Record(root, 1, isRoot: true);
        return _text.Append('\n').ToString();
    }

    private void Record(object record, int depth, bool isRoot = false)
    {
        var written = FieldDescription
            .Of(record.GetType())
            .Select(field => (Field: field, Value: field.Property.GetValue(record)))
            .Where(pair => IsWritten(pair.Field, pair.Value, isRoot) || (comments && pair.Value is null))
            .ToList();
        if (written.Count == 0)
        {
            _text.Append("{}");
            return;
        }
        // Small things without comments, such as points of a curve, read best on one line.
        var isShort =
            !comments && !isRoot && written.TrueForAll(pair => IsSmall(pair.Field)) && written.Count <= 3 && depth > 2;
        _text.Append('{');
        for (var i = 0; i < written.Count; i++)
        {
            var (field, value) = written[i];
            var isLast = !written.Skip(i + 1).Any(later => later.Value is not null);
            StartLine(isShort, depth);
            if (comments)
            {
                Comment(field, value is null, depth);
            }
            if (value is not null)
            {
                _text.Append(CultureInfo.InvariantCulture, $"\"{field.Name}\": ");
                Value(field, value, depth);
                _text.Append(isLast ? "" : ",");
            }
        }
        StartLine(isShort, depth - 1);
        _text.Append('}');
    }

    private void Value(FieldDescription field, object value, int depth)
    {
        switch (field.Kind)
        {
            case FieldKind.Section:
                Record(value, depth + 1);
                break;
            case FieldKind.List:
                List(field.Element!, (IEnumerable)value, depth + 1);
                break;
            case FieldKind.Quantity:
                Quoted(QuantityText.Exact(field.Quantity!.Dimension, (double)value, units));
                break;
            case FieldKind.Whole:
                _text.Append(((int)value).ToString(CultureInfo.InvariantCulture));
                break;
            case FieldKind.Number or FieldKind.Ph:
                _text.Append(((double)value).ToString("R", CultureInfo.InvariantCulture));
                break;
            case FieldKind.Price:
                _text.Append(((decimal)value).ToString(CultureInfo.InvariantCulture));
                break;
            case FieldKind.Amounts:
                Amounts((IReadOnlyDictionary<string, double>)value);
                break;
            case FieldKind.Flag:
                _text.Append((bool)value ? "true" : "false");
                break;
            case FieldKind.Choice:
                Quoted(FieldDescription.Dashed(value.ToString()!));
                break;
            default:
                Quoted((string)value);
                break;
        }
    }

    private void Amounts(IReadOnlyDictionary<string, double> amounts)
    {
        var written = amounts.Select(one =>
            string.Create(CultureInfo.InvariantCulture, $"\"{one.Key}\": {one.Value:R}")
        );
        _text.Append(amounts.Count == 0 ? "{}" : $"{{ {string.Join(", ", written)} }}");
    }

    private void List(FieldDescription element, IEnumerable list, int depth)
    {
        var first = true;
        _text.Append('[');
        foreach (var item in list)
        {
            _text.Append(first ? "" : ",");
            StartLine(false, depth);
            Value(element, item, depth);
            first = false;
        }
        if (!first)
        {
            StartLine(false, depth - 1);
        }
        _text.Append(']');
    }

    private void Comment(FieldDescription field, bool isLeftOut, int depth)
    {
        _text.Append("// ");
        if (isLeftOut)
        {
            _text.Append(CultureInfo.InvariantCulture, $"\"{field.Name}\" is left out ({field.FoundBy}): ");
        }
        _text.Append(field.Says);
        if (field.Kind is FieldKind.Choice)
        {
            _text.Append(CultureInfo.InvariantCulture, $" One of {string.Join(", ", field.Choices)}.");
        }
        if (!isLeftOut)
        {
            StartLine(false, depth);
        }
    }

    private bool IsWritten(FieldDescription field, object? value, bool isRoot)
    {
        if (value is null)
        {
            return false;
        }
        if (!leaveOutAssumed || (isRoot && field.Name is "format" or "name" or "units" or "rows"))
        {
            return true;
        }
        return field.Kind switch
        {
            FieldKind.Section => FieldDescription
                .Of(field.ValueType)
                .Any(inner => IsWritten(inner, inner.Property.GetValue(value), false)),
            FieldKind.List => field.FoundBy is not null || ((IEnumerable)value).Cast<object>().Any(),
            _ => field.MustBeGiven || !value.Equals(field.AssumedValue(units)),
        };
    }

    private static bool IsSmall(FieldDescription field) => field.Kind is not (FieldKind.Section or FieldKind.List);

    private void StartLine(bool isShort, int depth)
    {
        if (isShort)
        {
            _text.Append(' ');
        }
        else
        {
            _text.Append('\n').Append(' ', 2 * depth);
        }
    }

    private void Quoted(string value) =>
        _text.Append('"').Append(JavaScriptEncoder.UnsafeRelaxedJsonEscaping.Encode(value)).Append('"');
}
