using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Dripwright.Engine.Catalogue;

/// <summary>The catalogue as JSON, as the command line and the HTTP interface give it.</summary>
public static class CatalogueJson
{
    /// <summary>Names of the kinds of part, in the order of <see cref="CatalogueListing"/>.</summary>
    public static IReadOnlyList<string> Kinds { get; } =
    [
        "pipes",
        "fittings",
        "tubes",
        "pots",
        "tanks",
        "emitters",
        "strainers",
        "pumps",
        "outlets",
        "wires",
        "sundries",
        "crops",
        "media",
        "salts",
        "targets",
    ];

    /// <summary>Writes kinds of part.</summary>
    /// <param name="kinds">Kinds of part, each with its name.</param>
    public static string Write(IEnumerable<(string Kind, CatalogueGroup Parts)> kinds)
    {
        ArgumentNullException.ThrowIfNull(kinds);
        using var bytes = new MemoryStream();
        var options = new JsonWriterOptions
        {
            Indented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        using (var json = new Utf8JsonWriter(bytes, options))
        {
            json.WriteStartObject();
            foreach (var (kind, parts) in kinds)
            {
                json.WriteStartArray(kind);
                foreach (var row in parts.Rows)
                {
                    json.WriteStartObject();
                    for (var i = 0; i < row.Count; i++)
                    {
                        json.WriteString(Camel(parts.Columns[i]), row[i]);
                    }

                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    // "Laying length" becomes "layingLength".
    private static string Camel(string head)
    {
        var words = head.Split(' ');
        return string.Concat(
            words.Select(
                (word, i) => (i == 0 ? char.ToLowerInvariant(word[0]) : char.ToUpperInvariant(word[0])) + word[1..]
            )
        );
    }
}
