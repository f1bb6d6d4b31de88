using System.Collections.Concurrent;
using System.Reflection;
using System.Text;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>What kind of value stands in a field.</summary>
internal enum FieldKind
{
    Quantity,
    Whole,
    Flag,
    Choice,
    Part,
    Text,
    Section,
    List,
}

/// <summary>One field of the rig file, as the attributes on its property describe it.</summary>
/// <remarks>Read once for each record by reflection: reader, writer, schema and handbook all go by these.</remarks>
internal sealed class RigField
{
    private static readonly ConcurrentDictionary<Type, IReadOnlyList<RigField>> Known = new();

    private RigField(PropertyInfo property)
    {
        Property = property;
        Name = char.ToLowerInvariant(property.Name[0]) + property.Name[1..];
        Quantity = property.GetCustomAttribute<QuantityAttribute>();
        Whole = property.GetCustomAttribute<WholeAttribute>();
        Text = property.GetCustomAttribute<TextAttribute>();
        Part = property.GetCustomAttribute<PartKeyAttribute>();
        Items = property.GetCustomAttribute<ItemsAttribute>();
        FoundBy = property.GetCustomAttribute<FoundByPlanAttribute>()?.How;
        Says =
            property.GetCustomAttribute<SaysAttribute>()?.Text
            ?? throw new InvalidOperationException($"{property.DeclaringType}.{property.Name} says nothing.");
        Assumed = property.GetCustomAttribute<ChoiceAttribute>()?.Assumed;
        ValueType = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        Kind =
            Quantity is not null ? FieldKind.Quantity
            : Whole is not null ? FieldKind.Whole
            : Text is not null ? FieldKind.Text
            : Part is not null ? FieldKind.Part
            : Items is not null ? FieldKind.List
            : ValueType == typeof(bool) ? FieldKind.Flag
            : ValueType.IsEnum ? FieldKind.Choice
            : FieldKind.Section;
        if (Items is not null)
        {
            ValueType = property.PropertyType.GetGenericArguments()[0];
        }
        if (Quantity is not null)
        {
            Min = QuantityText.Parse(Quantity.Dimension, Quantity.Min);
            Max = QuantityText.Parse(Quantity.Dimension, Quantity.Max);
        }
        Choices = Kind is FieldKind.Choice ? [.. Enum.GetNames(ValueType).Select(Dashed)] : [];
    }

    public PropertyInfo Property { get; }

    /// <summary>The name in the file.</summary>
    public string Name { get; }

    public FieldKind Kind { get; }

    public string Says { get; }

    /// <summary>How the plan finds the value; null where a value is assumed.</summary>
    public string? FoundBy { get; }

    public QuantityAttribute? Quantity { get; }

    /// <summary>[SI unit of the quantity] Bounds of a quantity.</summary>
    public double Min { get; }

    /// <summary>[SI unit of the quantity] See <see cref="Min"/>.</summary>
    public double Max { get; }

    /// <summary>[SI unit of the quantity] Least size of a quantity that is not zero: a billionth of its greater bound.</summary>
    public double Least => 1e-9 * Math.Max(Math.Abs(Min), Math.Abs(Max));

    public WholeAttribute? Whole { get; }

    public TextAttribute? Text { get; }

    /// <summary>True for text that may run over several lines: notes. Names stand in title blocks, which have one.</summary>
    public bool MayHaveLines => Text is { MaxLength: > 200 };

    public PartKeyAttribute? Part { get; }

    public ItemsAttribute? Items { get; }

    /// <summary>Names of a choice, in the order of the enumeration.</summary>
    public IReadOnlyList<string> Choices { get; }

    /// <summary>The value's type without its question mark; of a list that of its elements.</summary>
    public Type ValueType { get; }

    private string? Assumed { get; }

    /// <summary>True for a part that no default can name.</summary>
    public bool MustBeGiven => Part is { Us: "" };

    /// <summary>The fields of a record, in the order in which they are declared.</summary>
    public static IReadOnlyList<RigField> Of(Type record) =>
        Known.GetOrAdd(
            record,
            type =>
                [
                    .. type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
                        .Where(property => property.CanWrite)
                        .OrderBy(property => property.MetadataToken)
                        .Select(property => new RigField(property)),
                ]
        );

    /// <summary>The value assumed where the file is silent, as a person would write it there. Empty for sections and lists.</summary>
    public string AssumedText(UnitSystem units)
    {
        var us = units is UnitSystem.Us;
        return Kind switch
        {
            FieldKind.Quantity => (us ? null : Quantity!.Metric) ?? Quantity!.Us ?? "",
            FieldKind.Whole => Whole!.Assumed.ToString(System.Globalization.CultureInfo.InvariantCulture),
            FieldKind.Text => Text!.Assumed,
            FieldKind.Part => us ? Part!.Us : Part!.Metric,
            FieldKind.Flag or FieldKind.Choice => Assumed ?? "",
            _ => "",
        };
    }

    /// <summary>The value assumed where the file is silent; null where the plan finds it.</summary>
    public object? AssumedValue(UnitSystem units)
    {
        if (FoundBy is not null)
        {
            return null;
        }
        var text = AssumedText(units);
        return Kind switch
        {
            FieldKind.Quantity => QuantityText.Parse(Quantity!.Dimension, text),
            FieldKind.Whole => Whole!.Assumed,
            FieldKind.Flag => text == "true",
            FieldKind.Choice => ChoiceValue(text),
            FieldKind.Text or FieldKind.Part => text,
            _ => null,
        };
    }

    /// <summary>The enumeration's value of that name; null where there is none.</summary>
    public object? ChoiceValue(string name)
    {
        var index = Choices.ToList().IndexOf(name);
        return index < 0 ? null : Enum.GetValues(ValueType).GetValue(index);
    }

    /// <summary>The bounds of a quantity in words, as the format gives them and in the other system.</summary>
    public string Range()
    {
        var (min, max) = (Quantity!.Min, Quantity.Max);
        var dimension = Quantity.Dimension;
        var isMetric = min.EndsWith(" mm", StringComparison.Ordinal) || max.EndsWith("L/day", StringComparison.Ordinal);
        var other = isMetric ? UnitSystem.Us : UnitSystem.Metric;
        var plain =
            dimension
            is Dimension.Share
                or Dimension.Slope
                or Dimension.Voltage
                or Dimension.Frequency
                or Dimension.Current
                or Dimension.Power
                or Dimension.Duration;
        return plain
            ? $"{min} to {max}"
            : $"{min} to {max} ({QuantityText.Format(dimension, Min, other)} to {QuantityText.Format(dimension, Max, other)})";
    }

    /// <summary>"BothEnds" as "both-ends".</summary>
    public static string Dashed(string name)
    {
        var dashed = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && dashed.Length > 0)
            {
                dashed.Append('-');
            }
            dashed.Append(char.ToLowerInvariant(letter));
        }
        return dashed.ToString();
    }
}
