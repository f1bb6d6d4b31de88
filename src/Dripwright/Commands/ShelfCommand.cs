using System.CommandLine;
using System.Text;
using System.Text.Json;
using Dripwright.Engine.Catalogue;
using Dripwright.Screen;

namespace Dripwright.Commands;

/// <summary><c>shelf</c>: what a rig file can name.</summary>
internal static class ShelfCommand
{
    // In the order of the listing.
    private static readonly string[] s_kinds =
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
    ];

    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var kind = new Argument<string?>("kind")
        {
            Description = $"One shelf: {string.Join(", ", s_kinds)}. All of them where it is left out.",
            HelpName = "kind",
            Arity = ArgumentArity.ZeroOrOne,
        };
        kind.AcceptOnlyFromAmong(s_kinds);
        var json = new Option<bool>("--json") { Description = "As JSON." };
        var command = new Command("shelf", "List the parts that a rig file can name, with their sources.")
        {
            kind,
            json,
        };
        command.SetAction(
            (call, stop) =>
            {
                var shelves = CatalogueListing.Of(shared.ReadCatalogue(call, around, stop));
                var named = s_kinds
                    .Zip(shelves)
                    .Where(pair => call.GetValue(kind) is not { } wanted || pair.First == wanted);
                if (call.GetValue(json))
                {
                    around.Out.Write(Json(named));
                }
                else
                {
                    Consoles.Draw(
                        around,
                        shared.ShowsColour(call, around),
                        console => ShelfView.Draw(console, [.. named.Select(pair => pair.Second)])
                    );
                }

                return Task.FromResult(Exit.Good);
            }
        );
        return command;
    }

    private static string Json(IEnumerable<(string Kind, CatalogueShelf Shelf)> shelves)
    {
        using var bytes = new MemoryStream();
        var options = new JsonWriterOptions
        {
            Indented = true,
            NewLine = "\n",
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        using (var json = new Utf8JsonWriter(bytes, options))
        {
            json.WriteStartObject();
            foreach (var (kind, shelf) in shelves)
            {
                json.WriteStartArray(kind);
                foreach (var row in shelf.Rows)
                {
                    json.WriteStartObject();
                    for (var i = 0; i < row.Count; i++)
                    {
                        json.WriteString(Camel(shelf.Columns[i]), row[i]);
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
