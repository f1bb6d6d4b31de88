using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>The JSON Schema of the rig file, for editors and other programs.</summary>
/// <remarks>
/// It agrees with <see cref="RigReader"/> about names, types, units, choices and counts. It does not know the bounds of
/// quantities (a schema cannot compare "2 in" with "5 cm"), whether a key stands in the catalogue (users add their own),
/// fields given twice, nor the checks across fields: those only the reader makes.
/// </remarks>
public static class RigSchema
{
    private static readonly JsonSerializerOptions Pretty = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The schema (draft 2020-12) as text.</summary>
    /// <param name="catalogue">The parts whose keys are given as examples.</param>
    public static string Write(PartsCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        var definitions = new JsonObject();
        var root = Record(typeof(Rig), definitions);
        root["properties"]!
            .AsObject()
            .Insert(
                0,
                "$schema",
                new JsonObject { ["type"] = "string", ["description"] = "This schema's address, for your editor." }
            );
        foreach (var dimension in Enum.GetValues<Dimension>())
        {
            definitions[NameOf(dimension)] = new JsonObject
            {
                ["type"] = "string",
                ["maxLength"] = QuantityText.MaxLength,
                ["description"] = Sentence(QuantityText.Example(dimension)),
                ["pattern"] = QuantityPattern.Of(dimension),
            };
        }
        foreach (var shelf in Enum.GetValues<PartGroup>())
        {
            var keys = GroupKeys.Keys(catalogue, shelf).Select(key => (JsonNode)key).ToArray();
            definitions[NameOf(shelf)] = new JsonObject
            {
                ["type"] = "string",
                ["description"] = Sentence(GroupKeys.Expected(shelf)),
                ["examples"] = new JsonArray(keys),
            };
        }
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Rig file",
            ["description"] =
                "One reservoir and all the rows it feeds. Comments and trailing commas are allowed. The program also checks bounds of quantities, keys of the catalogue, and fields against each other.",
        };
        foreach (var (name, value) in root.ToList())
        {
            root.Remove(name);
            schema[name] = value;
        }
        schema["$defs"] = definitions;
        return schema.ToJsonString(Pretty) + "\n";
    }

    private static JsonObject Record(Type type, JsonObject definitions)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        foreach (var field in RigField.Of(type))
        {
            properties[field.Name] = Property(field, definitions);
            if (field.MustBeGiven)
            {
                required.Add(field.Name);
            }
        }
        var schema = new JsonObject
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["additionalProperties"] = false,
        };
        if (required.Count > 0)
        {
            schema["required"] = required;
        }
        return schema;
    }

    private static JsonObject Property(RigField field, JsonObject definitions)
    {
        var schema = field.Kind switch
        {
            FieldKind.Quantity => Reference(NameOf(field.Quantity!.Dimension)),
            FieldKind.Part => Reference(NameOf(field.Part!.PartGroup)),
            FieldKind.Whole => new JsonObject
            {
                ["type"] = "integer",
                ["minimum"] = field.Whole!.Min,
                ["maximum"] = field.Whole.Max,
            },
            FieldKind.Flag => new JsonObject { ["type"] = "boolean" },
            FieldKind.Choice => new JsonObject
            {
                ["enum"] = new JsonArray([.. field.Choices.Select(choice => (JsonNode)choice)]),
            },
            FieldKind.Text => new JsonObject
            {
                ["type"] = "string",
                ["maxLength"] = field.Text!.MaxLength,
                ["pattern"] = field.MayHaveLines
                    ? "^[^\\u0000-\\u0008\\u000b-\\u001f\\u007f-\\u009f\\ufffe\\uffff]*$"
                    : "^[^\\u0000-\\u001f\\u007f-\\u009f\\ufffe\\uffff]*$",
            },
            FieldKind.List => new JsonObject
            {
                ["type"] = "array",
                ["minItems"] = field.Items!.Min,
                ["maxItems"] = field.Items.Max,
                ["items"] = Defined(field.ValueType, definitions),
            },
            _ => Defined(field.ValueType, definitions),
        };
        schema["description"] = Description(field);
        return schema;
    }

    private static string Description(RigField field)
    {
        var text = field.Says;
        if (field.Kind is FieldKind.Quantity)
        {
            text += $" From {field.Quantity!.Min} to {field.Quantity.Max}.";
        }
        var assumed = RigHandbook.Assumed(field);
        return assumed.Length == 0 ? text : $"{text} Left out: {assumed}.";
    }

    private static JsonObject Defined(Type type, JsonObject definitions)
    {
        var name = char.ToLowerInvariant(type.Name[0]) + type.Name[1..];
        if (!definitions.ContainsKey(name))
        {
            definitions[name] = null;
            definitions[name] = Record(type, definitions);
        }
        return Reference(name);
    }

    private static JsonObject Reference(string name) => new() { ["$ref"] = $"#/$defs/{name}" };

    private static string NameOf(Dimension dimension) =>
        char.ToLowerInvariant(dimension.ToString()[0]) + dimension.ToString()[1..];

    private static string NameOf(PartGroup shelf) => string.Create(CultureInfo.InvariantCulture, $"key{shelf}");

    private static string Sentence(string text) => $"{char.ToUpperInvariant(text[0])}{text[1..]}.";
}
