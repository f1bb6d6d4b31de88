using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>Writes the JSON Schema (draft 2020-12) of a file, for editors and other programs.</summary>
/// <remarks>
/// It agrees with <see cref="RecordReader"/> about names, types, units, choices and counts. It does not know the bounds of
/// quantities (a schema cannot compare "2 in" with "5 cm"), whether a key stands in the catalogue (users add their own),
/// fields given twice, nor the checks across fields: those only the reader makes.
/// </remarks>
internal sealed class SchemaWriter
{
    // No control characters; those of a text of several lines but the line break and the tab.
    private const string Line = "[^\\u0000-\\u001f\\u007f-\\u009f\\ufffe\\uffff]*";
    private const string Lines = "[^\\u0000-\\u0008\\u000b-\\u001f\\u007f-\\u009f\\ufffe\\uffff]*";

    private static readonly JsonSerializerOptions s_pretty = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly IKeys _keys;
    private readonly JsonObject _definitions = [];

    private SchemaWriter(IKeys keys) => _keys = keys;

    /// <summary>The schema as text with a line break at its end.</summary>
    /// <param name="root">The record at the root of the file.</param>
    /// <param name="title">What the file is.</param>
    /// <param name="description">What it says, and what only the program checks.</param>
    /// <param name="keys">The keys that are given as examples.</param>
    public static string Write(Type root, string title, string description, IKeys keys)
    {
        var writer = new SchemaWriter(keys);
        var record = writer.Record(root);
        var address = new JsonObject
        {
            ["type"] = "string",
            ["description"] = "This schema's address, for your editor.",
        };
        record["properties"]!.AsObject().Insert(0, "$schema", address);
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = title,
            ["description"] = description,
        };
        foreach (var (name, value) in record.ToList())
        {
            record.Remove(name);
            schema[name] = value;
        }
        schema["$defs"] = writer._definitions;
        return schema.ToJsonString(s_pretty) + "\n";
    }

    private JsonObject Record(Type type)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        var isRow = FieldDescription.IsRow(type);
        foreach (var field in FieldDescription.Of(type))
        {
            properties[field.Name] = Property(field);
            // All else of a row may come from the one that it starts from.
            if (isRow ? field.Name == RowAttribute.Key : field.MustBeGiven)
            {
                required.Add(field.Name);
            }
        }
        if (isRow)
        {
            properties[RowAttribute.BasedOn] = new JsonObject
            {
                ["type"] = "string",
                ["description"] = "Key of the row of this group from which all fields you leave out are taken.",
            };
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

    private JsonObject Property(FieldDescription field)
    {
        var schema = Value(field);
        schema["description"] = Description(field);
        return schema;
    }

    private JsonObject Value(FieldDescription field) =>
        field.Kind switch
        {
            FieldKind.Quantity => Quantity(field.Quantity!.Dimension),
            FieldKind.Key => Key(field.Key!),
            FieldKind.Whole => Number("integer", field.Whole!.Min, field.Whole.Max),
            FieldKind.Number or FieldKind.Ph or FieldKind.Price => Number("number", field.Min, field.Max),
            FieldKind.Flag => new JsonObject { ["type"] = "boolean" },
            FieldKind.Choice => new JsonObject
            {
                ["enum"] = new JsonArray([.. field.Choices.Select(choice => (JsonNode)choice)]),
            },
            FieldKind.Text => Text(field),
            FieldKind.Amounts => new JsonObject
            {
                ["type"] = "object",
                ["properties"] = new JsonObject(
                    field.Amounts!.Names.Select(name =>
                        KeyValuePair.Create(name, (JsonNode?)Number("number", field.Min, field.Max))
                    )
                ),
                ["additionalProperties"] = false,
            },
            FieldKind.List => new JsonObject
            {
                ["type"] = "array",
                ["minItems"] = field.Items!.Min,
                ["maxItems"] = field.Items.Max,
                ["items"] = Value(field.Element!),
            },
            _ => Defined(Camel(field.ValueType.Name), () => Record(field.ValueType)),
        };

    private static JsonObject Text(FieldDescription field)
    {
        var text = new JsonObject { ["type"] = "string", ["maxLength"] = field.Text!.MaxLength };
        var line = field.MayHaveLines ? Lines : Line;
        text["pattern"] =
            field.Text.IsKey ? $"^(?!(?:{KeyText.None}|{KeyText.Usual})$)[a-z0-9./-]+$"
            : field.MustBeGiven ? $"^(?=.*\\S){line}$"
            : $"^{line}$";
        return text;
    }

    private static JsonObject Number(string type, double min, double max) =>
        new()
        {
            ["type"] = type,
            ["minimum"] = min,
            ["maximum"] = max,
        };

    private static string Description(FieldDescription field)
    {
        var text = field.Says;
        var what = field.Element ?? field;
        if (what.Kind is FieldKind.Quantity)
        {
            text += $" From {what.Quantity!.Min} to {what.Quantity.Max}.";
        }
        var assumed = FieldTables.Assumed(field);
        return assumed.Length == 0 || field.MustBeGiven && field.Kind is not FieldKind.Key
            ? text
            : $"{text} Left out: {assumed}.";
    }

    private JsonObject Quantity(Dimension dimension) =>
        Defined(
            Camel(dimension.ToString()),
            () =>
                new JsonObject
                {
                    ["type"] = "string",
                    ["maxLength"] = QuantityText.MaxLength,
                    ["description"] = $"A {Dashed(dimension)} such as {Listed(QuantityText.Examples(dimension))}.",
                    ["pattern"] = QuantityPattern.Of(dimension),
                }
        );

    private JsonObject Key(KeyAttribute key) =>
        Defined(
            key.Or is null
                ? $"key{key.GroupName}"
                : $"key{key.GroupName}Or{char.ToUpperInvariant(key.Or[0])}{key.Or[1..]}",
            () =>
            {
                var known = key.Or is null ? _keys.Of(key) : [key.Or, .. _keys.Of(key)];
                return new JsonObject
                {
                    ["type"] = "string",
                    ["description"] = Sentence(key.Allowed),
                    ["examples"] = new JsonArray([.. known.Select(one => (JsonNode)one)]),
                };
            }
        );

    private JsonObject Defined(string name, Func<JsonObject> make)
    {
        if (!_definitions.ContainsKey(name))
        {
            // Its place is taken first: what it holds comes behind it.
            _definitions[name] = null;
            _definitions[name] = make();
        }
        return new JsonObject { ["$ref"] = $"#/$defs/{name}" };
    }

    private static string Dashed(Dimension dimension) => FieldDescription.Dashed(dimension.ToString());

    // The schema is for programs and their authors: it stays English.
    private static string Listed(IReadOnlyList<string> examples)
    {
        string[] quoted = [.. examples.Select(one => $"\"{one}\"")];
        return quoted.Length == 1 ? quoted[0] : $"{string.Join(", ", quoted[..^1])} or {quoted[^1]}";
    }

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static string Sentence(string text) => $"{char.ToUpperInvariant(text[0])}{text[1..]}.";
}
