using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>What kind of value stands in a field.</summary>
internal enum FieldKind
{
    Quantity,
    Whole,
    Number,
    Ph,
    Price,
    Flag,
    Choice,
    Key,
    Text,
    Amounts,
    Section,
    List,
}

/// <summary>One field of a file, as the attributes on its property describe it.</summary>
/// <remarks>Read once for each record by reflection: reader, writer, schema and handbook all go by these.</remarks>
internal sealed class FieldDescription
{
    // Bounds in these are metric, so the other system is told beside them.
    private static readonly string[] s_metric = [" mm", "L/day", " g", " kg", " C", " Pa", " kPa"];

    private static readonly ConcurrentDictionary<Type, IReadOnlyList<FieldDescription>> s_known = new();

    private FieldDescription(PropertyInfo property, bool isElement = false)
    {
        Property = property;
        Name = char.ToLowerInvariant(property.Name[0]) + property.Name[1..];
        Quantity = property.GetCustomAttribute<QuantityAttribute>();
        Whole = property.GetCustomAttribute<WholeAttribute>();
        Number = property.GetCustomAttribute<NumberAttribute>();
        Ph = property.GetCustomAttribute<PhAttribute>();
        Text = property.GetCustomAttribute<TextAttribute>();
        Key = property.GetCustomAttribute<KeyAttribute>();
        Amounts = property.GetCustomAttribute<AmountsAttribute>();
        Items = isElement ? null : property.GetCustomAttribute<ItemsAttribute>();
        FoundBy = property.GetCustomAttribute<FoundByPlanAttribute>()?.How;
        Formerly = property.GetCustomAttribute<FormerlyAttribute>()?.Name;
        Says =
            property.GetCustomAttribute<SaysAttribute>()?.Text
            ?? throw new InvalidOperationException($"{property.DeclaringType}.{property.Name} says nothing.");
        Choice = property.GetCustomAttribute<ChoiceAttribute>()?.Assumed;
        ValueType =
            isElement || Items is not null
                ? property.PropertyType.GetGenericArguments()[0]
                : Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        Element = Items is null ? null : new FieldDescription(property, isElement: true);
        Kind =
            Items is not null ? FieldKind.List
            : Quantity is not null ? FieldKind.Quantity
            : Whole is not null ? FieldKind.Whole
            : Number is not null ? FieldKind.Number
            : Ph is not null ? FieldKind.Ph
            : property.GetCustomAttribute<PriceAttribute>() is not null ? FieldKind.Price
            : Text is not null ? FieldKind.Text
            : Key is not null ? FieldKind.Key
            : Amounts is not null ? FieldKind.Amounts
            : ValueType == typeof(bool) ? FieldKind.Flag
            : ValueType.IsEnum ? FieldKind.Choice
            : FieldKind.Section;
        (Min, Max) = Kind switch
        {
            FieldKind.Quantity => (
                QuantityText.Parse(Quantity!.Dimension, Quantity.Min),
                QuantityText.Parse(Quantity.Dimension, Quantity.Max)
            ),
            FieldKind.Number => (Number!.Min, Number.Max),
            FieldKind.Ph => (Ph!.Min, Ph.Max),
            FieldKind.Price => (0, PriceAttribute.Most),
            FieldKind.Amounts => (0, Amounts!.Max),
            _ => default((double, double)),
        };
        Choices = Kind is FieldKind.Choice ? [.. Enum.GetNames(ValueType).Select(Dashed)] : [];
    }

    public PropertyInfo Property { get; }

    /// <summary>The name in the file.</summary>
    public string Name { get; }

    /// <summary>The name it had before; null where it always had this one.</summary>
    public string? Formerly { get; }

    public FieldKind Kind { get; }

    public string Says { get; }

    /// <summary>How the plan finds the value; null where a value is assumed.</summary>
    public string? FoundBy { get; }

    public QuantityAttribute? Quantity { get; }

    /// <summary>[SI unit of the quantity] Bounds of a quantity, number, pH or price.</summary>
    public double Min { get; }

    /// <summary>[SI unit of the quantity] See <see cref="Min"/>.</summary>
    public double Max { get; }

    /// <summary>[SI unit of the quantity] Least size of a quantity that is not zero: a billionth of its greater bound.</summary>
    public double Least => 1e-9 * Math.Max(Math.Abs(Min), Math.Abs(Max));

    public WholeAttribute? Whole { get; }

    public TextAttribute? Text { get; }

    /// <summary>True for text that may run over several lines: notes. Names stand in title blocks, which have one.</summary>
    public bool MayHaveLines => Text is { MaxLength: > 1000 };

    public KeyAttribute? Key { get; }

    public AmountsAttribute? Amounts { get; }

    public ItemsAttribute? Items { get; }

    /// <summary>What stands in a list; null where the field is none.</summary>
    public FieldDescription? Element { get; }

    /// <summary>Names of a choice, in the order of the enumeration.</summary>
    public IReadOnlyList<string> Choices { get; }

    /// <summary>The value's type without its question mark; of a list that of its elements.</summary>
    public Type ValueType { get; }

    private NumberAttribute? Number { get; }

    private PhAttribute? Ph { get; }

    private string? Choice { get; }

    /// <summary>True where a file must give the field, because nothing can be assumed.</summary>
    public bool MustBeGiven =>
        FoundBy is null
        && Kind switch
        {
            FieldKind.Section => false,
            FieldKind.List => IsRequired
                && (Element!.Kind is not FieldKind.Section || Of(ValueType).Any(inner => inner.MustBeGiven)),
            FieldKind.Text => IsRequired,
            FieldKind.Amounts => false,
            _ => AssumedText(UnitSystem.Us).Length == 0,
        };

    private bool IsRequired => Property.IsDefined(typeof(RequiredMemberAttribute));

    /// <summary>The fields of a record: those that it inherits, then its own, in the order in which they are declared.</summary>
    public static IReadOnlyList<FieldDescription> Of(Type record) =>
        s_known.GetOrAdd(
            record,
            type =>
                [
                    .. type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                        .Where(property => property.CanWrite)
                        .OrderBy(property => Depth(property.DeclaringType!))
                        .ThenBy(property => property.MetadataToken)
                        .Select(property => new FieldDescription(property)),
                ]
        );

    /// <summary>True where the record is a row with a key; see <see cref="RowAttribute"/>.</summary>
    public static bool IsRow(Type record) => record.IsDefined(typeof(RowAttribute), inherit: true);

    /// <summary>The value assumed where the file is silent, as a person would write it there. Empty where none is.</summary>
    public string AssumedText(UnitSystem units)
    {
        var us = units is UnitSystem.Us;
        return Kind switch
        {
            FieldKind.Quantity => (us ? null : Quantity!.Metric) ?? Quantity!.Us ?? "",
            FieldKind.Whole => Whole!.Assumed.ToString(CultureInfo.InvariantCulture),
            FieldKind.Number => Plain(Number!.Assumed),
            FieldKind.Ph => Plain(Ph!.Assumed),
            FieldKind.Text => Text!.Assumed,
            FieldKind.Key => us ? Key!.Us : Key!.Metric,
            FieldKind.Flag or FieldKind.Choice => Choice ?? "",
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
            FieldKind.Quantity when text.Length > 0 => QuantityText.Parse(Quantity!.Dimension, text),
            FieldKind.Whole => Whole!.Assumed,
            FieldKind.Number when text.Length > 0 => Number!.Assumed,
            FieldKind.Ph when text.Length > 0 => Ph!.Assumed,
            FieldKind.Flag => text == "true",
            FieldKind.Choice => ChoiceValue(text),
            FieldKind.Text or FieldKind.Key => text,
            FieldKind.Amounts => new Dictionary<string, double>(),
            _ => null,
        };
    }

    /// <summary>The enumeration's value of that name; null where there is none.</summary>
    public object? ChoiceValue(string name)
    {
        var index = Choices.ToList().IndexOf(name);
        return index < 0 ? null : Enum.GetValues(ValueType).GetValue(index);
    }

    /// <summary>What a good value looks like.</summary>
    public Phrase Expected() =>
        Kind switch
        {
            FieldKind.Quantity => QuantityPhrases.Example(Quantity!.Dimension),
            FieldKind.Whole => Phrase.Of("fault.whole", Bounds()),
            FieldKind.Number => Phrase.Of("fault.number", Bounds()),
            FieldKind.Ph => Phrase.Of("fault.ph", Bounds(), PhText.Print((Min + Max) / 2)),
            FieldKind.Price => Phrase.Of("fault.price"),
            FieldKind.Flag => Phrase.Of("fault.flag"),
            FieldKind.Choice => Phrase.Of("fault.choice", NamesQuoted(Choices)),
            FieldKind.Key => Key!.Expected,
            FieldKind.Text when Text!.IsKey => Phrase.Of("fault.own-key"),
            FieldKind.Text => Phrase.Of(MustBeGiven ? "fault.text-given" : "fault.text", Whole10(Text!.MaxLength)),
            FieldKind.Amounts => Phrase.Of("fault.amounts", Plain(Max), string.Join(", ", Amounts!.Names)),
            FieldKind.List => Phrase.Of("fault.list", Bounds()),
            _ => Phrase.Of("fault.an-object"),
        };

    /// <summary>The bounds, to say: of a quantity as the format gives them and in the other system.</summary>
    public Phrase Bounds()
    {
        var (min, max, other) = Ends();
        var bounds = Phrase.Of("fault.bounds", min, max);
        return other is var (least, most)
            ? Phrase.Of("fault.bounds-both", bounds, Phrase.Of("fault.bounds", least, most))
            : bounds;
    }

    /// <summary>The same in English, for the handbook; empty where there are none.</summary>
    public string Range() =>
        Ends() switch
        {
            ("", "", _) => "",
            (var min, var max, var (least, most)) => $"{min} to {max} ({least} to {most})",
            var (min, max, _) => $"{min} to {max}",
        };

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

    // The bounds as a file writes them; those of a quantity that differs between the systems in the other one too.
    private (string Min, string Max, (string Min, string Max)? Other) Ends() =>
        Kind switch
        {
            FieldKind.Quantity => QuantityEnds(),
            FieldKind.Whole => (Whole10(Whole!.Min), Whole10(Whole.Max), null),
            FieldKind.List => (Whole10(Items!.Min), Whole10(Items.Max), null),
            FieldKind.Number or FieldKind.Ph or FieldKind.Price or FieldKind.Amounts => (Plain(Min), Plain(Max), null),
            _ => ("", "", null),
        };

    private (string Min, string Max, (string Min, string Max)? Other) QuantityEnds()
    {
        var (min, max) = (Quantity!.Min, Quantity.Max);
        var dimension = Quantity.Dimension;
        var isMetric = s_metric.Any(unit =>
            min.EndsWith(unit, StringComparison.Ordinal) || max.EndsWith(unit, StringComparison.Ordinal)
        );
        var other = isMetric ? UnitSystem.Us : UnitSystem.Metric;
        var isAlike =
            dimension
                is Dimension.Share
                    or Dimension.Slope
                    or Dimension.Voltage
                    or Dimension.Frequency
                    or Dimension.Current
                    or Dimension.Power
                    or Dimension.Duration
                    or Dimension.Conductivity
            || max.EndsWith(" g", StringComparison.Ordinal);
        return (
            min,
            max,
            isAlike ? null : (QuantityText.Format(dimension, Min, other), QuantityText.Format(dimension, Max, other))
        );
    }

    private static string NamesQuoted(IEnumerable<string> names) =>
        string.Join(", ", names.Select(name => $"\"{name}\""));

    private static int Depth(Type type) => type.BaseType is { } parent ? Depth(parent) + 1 : 0;

    private static string Plain(double number) =>
        double.IsNaN(number) ? "" : number.ToString("R", CultureInfo.InvariantCulture);

    private static string Whole10(int number) => number.ToString(CultureInfo.InvariantCulture);
}
