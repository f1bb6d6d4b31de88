using System.Globalization;
using System.Reflection;
using System.Text.Json;

namespace Dripwright.Engine.Catalogue;

/// <summary>Reads the embedded rows of our own catalogue. They are ours, so a fault in them is a bug and throws.</summary>
internal static class CatalogueData
{
    private static readonly Dictionary<string, double> s_units = new(StringComparer.Ordinal)
    {
        ["in"] = 0.0254,
        ["ft"] = 0.3048,
        ["mm"] = 0.001,
        ["m"] = 1,
        ["um"] = 1e-6,
        ["gal"] = 0.003785411784,
        ["L"] = 0.001,
        ["gph"] = 0.003785411784 / 3600,
        ["L/h"] = 0.001 / 3600,
        ["psi"] = 4.4482216152605 / (0.0254 * 0.0254),
        ["kPa"] = 1000,
        ["W"] = 1,
    };

    public static PartsCatalogue Load() =>
        new()
        {
            Pipes = Shelf<PipeSize>("pipes"),
            Fittings = Shelf<FittingType>("fittings"),
            Tubes = Shelf<TubeSize>("tubes"),
            Pots = Shelf<PotType>("pots"),
            Tanks = Shelf<TankType>("tanks"),
            Emitters = Shelf<EmitterType>("emitters"),
            Strainers = Shelf<StrainerType>("strainers"),
            Pumps = Shelf<PumpModel>("pumps"),
            Outlets = Shelf<DrainOutletType>("outlets"),
            Sundries = Shelf<Sundry>("sundries"),
        };

    private static Dictionary<string, T> Shelf<T>(string name)
        where T : CatalogueEntry
    {
        using var stream =
            typeof(CatalogueData).Assembly.GetManifestResourceStream($"Dripwright.Engine.Catalogue.Data.{name}.json")
            ?? throw new InvalidOperationException($"The catalogue's shelf '{name}' is not embedded.");
        using var document = JsonDocument.Parse(stream);
        var shelf = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var row in document.RootElement.GetProperty(name).EnumerateArray())
        {
            var entry = (T)Read(typeof(T), row);
            shelf.Add(entry.Key, entry);
        }

        return shelf;
    }

    private static object Read(Type type, JsonElement row)
    {
        var entry = Activator.CreateInstance(type)!;
        foreach (var field in row.EnumerateObject())
        {
            var name = field.Name == "massKg" ? "Mass" : char.ToUpperInvariant(field.Name[0]) + field.Name[1..];
            var property =
                type.GetProperty(name, BindingFlags.Instance | BindingFlags.Public)
                ?? throw new InvalidOperationException($"{type.Name} has no field '{field.Name}'.");
            property.SetValue(entry, Value(property.PropertyType, field.Value));
        }

        return entry;
    }

    private static object Value(Type type, JsonElement value) =>
        type switch
        {
            _ when type == typeof(double) => Number(value),
            _ when type == typeof(string) => value.GetString()!,
            _ when type == typeof(bool) => value.GetBoolean(),
            _ when type == typeof(int) => value.GetInt32(),
            _ when type == typeof(CurvePoint) => new CurvePoint(
                Number(value.GetProperty("flow")),
                Number(value.GetProperty("head"))
            ),
            _ when type.IsEnum => Enum.Parse(
                type,
                value.GetString()!.Replace("-", "", StringComparison.Ordinal),
                ignoreCase: true
            ),
            _ when type.IsGenericType => Items(type.GetGenericArguments()[0], value),
            _ => throw new InvalidOperationException($"A field of type {type.Name} cannot be read."),
        };

    private static Array Items(Type element, JsonElement values)
    {
        var items = Array.CreateInstance(element, values.GetArrayLength());
        for (var i = 0; i < items.Length; i++)
        {
            items.SetValue(Value(element, values[i]), i);
        }

        return items;
    }

    private static double Number(JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Number)
        {
            return value.GetDouble();
        }

        var text = value.GetString()!;
        var gap = text.IndexOf(' ', StringComparison.Ordinal);
        return double.Parse(text.AsSpan(0, gap), CultureInfo.InvariantCulture) * s_units[text[(gap + 1)..]];
    }
}
