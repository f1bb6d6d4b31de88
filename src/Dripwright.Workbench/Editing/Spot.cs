using System.Text.Json;

namespace Dripwright.Workbench.Editing;

/// <summary>A value of a rig file with the bytes it takes, so that it can be replaced and all else left as typed.</summary>
/// <param name="Kind">Object, array or anything else.</param>
/// <param name="Start">First byte.</param>
/// <param name="End">Byte after the last.</param>
/// <param name="Members">Fields or elements, in the order of the file.</param>
internal sealed record Spot(JsonTokenType Kind, int Start, int End, IReadOnlyList<SpotMember> Members)
{
    /// <summary>The tree of a text; null where it is no JSON.</summary>
    public static Spot? Read(ReadOnlySpan<byte> utf8)
    {
        var reader = new Utf8JsonReader(
            utf8,
            new JsonReaderOptions
            {
                CommentHandling = JsonCommentHandling.Skip,
                AllowTrailingCommas = true,
                MaxDepth = 64,
            }
        );
        try
        {
            if (!reader.Read())
            {
                return null;
            }

            var root = Value(ref reader);
            while (reader.Read()) { }
            return root;
        }
        catch (JsonException)
        {
            return null;
        }
        catch (InvalidOperationException)
        {
            // A name with half a character in it.
            return null;
        }
    }

    /// <summary>The field of that name, the last where it stands twice, as a reader of JSON takes it.</summary>
    public SpotMember? Field(string name) => Members.LastOrDefault(member => member.Name == name);

    private static Spot Value(ref Utf8JsonReader reader)
    {
        var start = (int)reader.TokenStartIndex;
        var kind = reader.TokenType;
        var members = new List<SpotMember>();
        if (kind is JsonTokenType.StartObject)
        {
            while (reader.Read() && reader.TokenType is not JsonTokenType.EndObject)
            {
                var at = (int)reader.TokenStartIndex;
                var name = reader.GetString()!;
                reader.Read();
                members.Add(new SpotMember(name, at, Value(ref reader)));
            }
        }
        else if (kind is JsonTokenType.StartArray)
        {
            while (reader.Read() && reader.TokenType is not JsonTokenType.EndArray)
            {
                var at = (int)reader.TokenStartIndex;
                members.Add(new SpotMember("", at, Value(ref reader)));
            }
        }

        return new Spot(kind, start, (int)reader.BytesConsumed, members);
    }
}

/// <summary>A field of an object or an element of an array.</summary>
/// <param name="Name">The field's name; empty for an element.</param>
/// <param name="Start">First byte: of the name where there is one.</param>
/// <param name="Value">The value.</param>
internal sealed record SpotMember(string Name, int Start, Spot Value)
{
    /// <summary>Byte after the last.</summary>
    public int End => Value.End;
}
