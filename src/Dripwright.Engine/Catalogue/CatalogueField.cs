using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>One field of a catalogue row, as the attributes on the records describe it.</summary>
/// <param name="Name">Name in the file.</param>
/// <param name="Property">Where the value goes.</param>
/// <param name="Needed">Whether a row that is based on no other must have it.</param>
/// <param name="Says">One sentence about it.</param>
internal sealed record CatalogueField(string Name, PropertyInfo Property, bool Needed, string Says)
{
    /// <summary>The fields of a kind of row: those that all rows have first.</summary>
    public static IReadOnlyList<CatalogueField> Of(Type type) => s_known[type];

    /// <summary>Group name in the file and kind of row, in the order of <see cref="PartsCatalogue"/>.</summary>
    public static IReadOnlyList<(string Name, Type Row)> ShelfRows { get; } =
    [
        .. typeof(PartsCatalogue)
            .GetProperties()
            .Where(property => property.PropertyType.IsGenericType && property.CanWrite)
            .Select(property => (Camel(property.Name), property.PropertyType.GetGenericArguments()[1])),
    ];

    // Stands after the shelves, because statics are made in the order they are written.
    private static readonly Dictionary<Type, IReadOnlyList<CatalogueField>> s_known = ShelfRows
        .Select(shelf => shelf.Row)
        .Append(typeof(CurvePoint))
        .ToDictionary(type => type, Describe);

    /// <summary>Its bounds in number where it is a list.</summary>
    public ItemsAttribute? Items { get; } = Property.GetCustomAttribute<ItemsAttribute>();

    /// <summary>What it measures where it is a quantity.</summary>
    public QuantityAttribute? Quantity { get; } = Property.GetCustomAttribute<QuantityAttribute>();

    /// <summary>Its bounds where it is a plain number.</summary>
    public NumberAttribute? Number { get; } = Property.GetCustomAttribute<NumberAttribute>();

    /// <summary>Its bounds where it is a whole number.</summary>
    public WholeAttribute? Whole { get; } = Property.GetCustomAttribute<WholeAttribute>();

    /// <summary>Its length where it is a text.</summary>
    public TextAttribute? Text { get; } = Property.GetCustomAttribute<TextAttribute>();

    /// <summary>[SI unit] Least and greatest value where it is a quantity.</summary>
    public (double Min, double Max) Bounds { get; } =
        Property.GetCustomAttribute<QuantityAttribute>() is { } quantity
            ? (
                QuantityText.Parse(quantity.Dimension, quantity.Min),
                QuantityText.Parse(quantity.Dimension, quantity.Max)
            )
            : default;

    /// <summary>The values of an enumeration by their names in the file.</summary>
    public IReadOnlyDictionary<string, object> Choices { get; } = ChoicesOf(Element(Property));

    /// <summary>The type of the value, or of the elements of a list.</summary>
    public Type ElementType { get; } = Element(Property);

    /// <summary>Lower case with dashes: how a file writes the values of an enumeration.</summary>
    public static string Dashed(string name)
    {
        var text = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && text.Length > 0)
            {
                text.Append('-');
            }
            text.Append(char.ToLowerInvariant(letter));
        }
        return text.ToString();
    }

    private static Type Element(PropertyInfo property) =>
        property.GetCustomAttribute<ItemsAttribute>() is not null
            ? property.PropertyType.GetGenericArguments()[0]
            : Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;

    private static Dictionary<string, object> ChoicesOf(Type type) =>
        type.IsEnum
            ? type.GetEnumValues()
                .Cast<object>()
                .ToDictionary(value => Dashed(value.ToString()!), StringComparer.Ordinal)
            : [];

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    // How many records a record stands on: what all rows have comes first.
    private static int Depth(Type type) => type.BaseType is { } basis ? 1 + Depth(basis) : 0;

    private static IReadOnlyList<CatalogueField> Describe(Type type) =>
        [
            .. type.GetProperties()
                .Where(property => property.GetCustomAttribute<SaysAttribute>() is not null)
                .OrderBy(property => Depth(property.DeclaringType!))
                .Select(property => new CatalogueField(
                    property.GetCustomAttribute<NumberAttribute>()?.Name ?? Camel(property.Name),
                    property,
                    type.IsValueType || property.GetCustomAttribute<RequiredMemberAttribute>() is not null,
                    property.GetCustomAttribute<SaysAttribute>()!.Text
                )),
        ];
}
