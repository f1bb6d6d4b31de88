using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue.Rows;

namespace Dripwright.Engine.Catalogue;

/// <summary>JSON Schema of a user's own catalogue file, made from the same descriptions the reader uses.</summary>
public static class CatalogueSchema
{
    private static readonly JsonSerializerOptions s_layout = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The schema (draft 2020-12) as text with a line break at its end.</summary>
    public static string Text()
    {
        var shelves = new JsonObject
        {
            ["format"] = Format(),
            ["$schema"] = new JsonObject { ["type"] = "string" },
            ["currency"] = new JsonObject
            {
                ["type"] = "string",
                ["pattern"] = "^[A-Z]{3}$",
                ["description"] =
                    "Currency of all your prices, three capital letters; USD where you do not say. The invented typical prices are in US dollars and count with USD only.",
            },
        };
        var rows = new JsonObject();
        foreach (var (name, row) in CatalogueField.ShelfRows)
        {
            shelves[name] = new JsonObject
            {
                ["type"] = "array",
                ["maxItems"] = CatalogueReader.MostRows,
                ["items"] = new JsonObject { ["$ref"] = $"#/$defs/{name}" },
            };
            rows[name] = Row(row);
        }
        rows["point"] = Row(typeof(CurvePoint));
        foreach (var name in OwnNutrients.Names)
        {
            shelves[name] = new JsonObject
            {
                ["type"] = "array",
                ["maxItems"] = CatalogueReader.MostRows,
                ["items"] = new JsonObject { ["$ref"] = $"#/$defs/{name}" },
            };
            rows[name] = NutrientSchema.Row(name);
        }
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Dripwright catalogue",
            ["description"] = "Your own parts, laid over the built-in catalogue.",
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["properties"] = shelves,
            ["$defs"] = rows,
        };
        return schema.ToJsonString(s_layout) + "\n";
    }

    private static JsonObject Format() =>
        new()
        {
            ["type"] = "integer",
            ["minimum"] = 1,
            ["maximum"] = CatalogueReader.CurrentFormat,
            ["description"] = "Version of the catalogue file's format.",
        };

    private static JsonObject Row(Type type)
    {
        var fields = new JsonObject();
        var needed = new JsonArray();
        foreach (var field in CatalogueField.Of(type))
        {
            fields[field.Name] = Field(field);
            if (type == typeof(CurvePoint) || field.Name == "key")
            {
                needed.Add(field.Name);
            }
        }
        if (type != typeof(CurvePoint))
        {
            fields["basedOn"] = new JsonObject
            {
                ["type"] = "string",
                ["description"] = "Key of the row of this shelf from which all fields you leave out are taken.",
            };
        }
        return new JsonObject
        {
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["required"] = needed,
            ["properties"] = fields,
        };
    }

    private static JsonObject Field(CatalogueField field)
    {
        var value = Value(field);
        if (field.Items is { } items)
        {
            value = new JsonObject
            {
                ["type"] = "array",
                ["minItems"] = items.Min,
                ["maxItems"] = items.Max,
                ["items"] = value,
            };
        }
        value["description"] = field.Says;
        return value;
    }

    private static JsonObject Value(CatalogueField field)
    {
        if (field.ElementType == typeof(CurvePoint))
        {
            return new JsonObject { ["$ref"] = "#/$defs/point" };
        }
        if (field.ElementType.IsEnum)
        {
            var names = field.Choices.Keys.Select(name => (JsonNode)name);
            return new JsonObject { ["enum"] = new JsonArray([.. names]) };
        }
        if (field.ElementType == typeof(bool))
        {
            return new JsonObject { ["type"] = "boolean" };
        }
        if (field.Quantity is { } quantity)
        {
            return new JsonObject
            {
                ["type"] = "string",
                ["$comment"] =
                    $"{CatalogueField.Dashed(quantity.Dimension.ToString())}, {quantity.Min} to {quantity.Max}",
            };
        }
        if (field.Number is { } number)
        {
            return new JsonObject
            {
                ["type"] = "number",
                ["minimum"] = number.Min,
                ["maximum"] = number.Max,
            };
        }
        if (field.Whole is { } whole)
        {
            return new JsonObject
            {
                ["type"] = "integer",
                ["minimum"] = whole.Min,
                ["maximum"] = whole.Max,
            };
        }
        return new JsonObject
        {
            ["type"] = "string",
            ["minLength"] = 1,
            ["maxLength"] = field.Text!.MaxLength,
        };
    }
}
