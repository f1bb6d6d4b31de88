using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Dripwright.Workbench.Editing;

/// <summary>Changes single fields in the text of a rig file. All else stays as typed, comments and layout too.</summary>
public static class RigFileText
{
    private static readonly JsonSerializerOptions s_plain = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Whether fields can be changed one by one: the text is JSON with an object at its root.</summary>
    /// <param name="text">The text.</param>
    public static bool IsEditable(string text) =>
        Spot.Read(Encoding.UTF8.GetBytes(text)) is { Kind: JsonTokenType.StartObject };

    /// <summary>What stands at a path; null where nothing does, or where the text is no JSON.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">The path.</param>
    public static JsonNode? Get(string text, string path)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        return Spot.Read(utf8) is { } root && Find(root, FieldPath.Steps(path)) is { } found ? Node(utf8, found) : null;
    }

    /// <summary>The whole text as nodes; null where it is no object.</summary>
    /// <param name="text">The text.</param>
    public static JsonObject? Root(string text)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        return Spot.Read(utf8) is { Kind: JsonTokenType.StartObject } root ? Node(utf8, root) as JsonObject : null;
    }

    /// <summary>The text with another value at a path. What is missing on the way is added.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">The path. An index may be one past the end of its list: then the element is added.</param>
    /// <param name="value">The value.</param>
    /// <exception cref="FormatException">The text is no JSON object, or an index lies beyond its list.</exception>
    public static string Set(string text, string path, JsonNode value)
    {
        ArgumentNullException.ThrowIfNull(value);
        var utf8 = Encoding.UTF8.GetBytes(text);
        var root = Spot.Read(utf8) is { Kind: JsonTokenType.StartObject } read
            ? read
            : throw new FormatException("The text is no rig file: it must be JSON with braces round it.");
        var steps = FieldPath.Steps(path);
        var at = root;
        for (var i = 0; i < steps.Count; i++)
        {
            var next = Step(at, steps[i]);
            if (next is not null)
            {
                at = next.Value;
                continue;
            }

            var isList = steps[i].Index >= 0;
            var fits = at.Kind == (isList ? JsonTokenType.StartArray : JsonTokenType.StartObject);
            if (
                (isList && steps[i].Index != (fits ? at.Members.Count : 0))
                || steps.Skip(i + 1).Any(step => step.Index > 0)
            )
            {
                throw new FormatException($"\"{path}\" lies beyond the end of its list.");
            }

            // A value of another kind stands where an object or list belongs: it makes room.
            return fits
                ? Insert(utf8, at, steps[i].Name, Written(Nested(steps, i + 1, value)))
                : Splice(utf8, at.Start, at.End, Written(Nested(steps, i, value)));
        }

        return Splice(utf8, at.Start, at.End, Written(value));
    }

    /// <summary>The text without what stands at a path; unchanged where nothing does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">The path.</param>
    public static string Remove(string text, string path)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        var steps = FieldPath.Steps(path);
        if (Spot.Read(utf8) is not { } root)
        {
            return text;
        }

        var holder = steps.Count == 1 ? root : Find(root, [.. steps.Take(steps.Count - 1)]);
        return holder is not null && Step(holder, steps[^1]) is { } member ? Without(utf8, holder, member) : text;
    }

    private static Spot? Find(Spot root, IReadOnlyList<(string Name, int Index)> steps)
    {
        var at = root;
        foreach (var step in steps)
        {
            if (Step(at, step) is not { } next)
            {
                return null;
            }

            at = next.Value;
        }

        return at;
    }

    private static SpotMember? Step(Spot at, (string Name, int Index) step) =>
        step.Index < 0
            ? at.Kind is JsonTokenType.StartObject
                ? at.Field(step.Name)
                : null
            : at.Kind is JsonTokenType.StartArray && step.Index < at.Members.Count
                ? at.Members[step.Index]
                : null;

    private static JsonNode Nested(IReadOnlyList<(string Name, int Index)> steps, int from, JsonNode value)
    {
        var made = value.DeepClone();
        for (var i = steps.Count - 1; i >= from; i--)
        {
            made = steps[i].Index < 0 ? new JsonObject { [steps[i].Name] = made } : new JsonArray(made);
        }

        return made;
    }

    // On one line with air, as a person writes it: { "pots": "1-6", "crop": "tomato" }
    private static string Written(JsonNode node) =>
        node switch
        {
            JsonObject { Count: 0 } => "{}",
            JsonObject made =>
                $"{{ {string.Join(", ", made.Select(field => $"{Quoted(field.Key)}: {(field.Value is null ? "null" : Written(field.Value))}"))} }}",
            JsonArray made => $"[{string.Join(", ", made.Select(item => item is null ? "null" : Written(item)))}]",
            _ => node.ToJsonString(s_plain),
        };

    private static string Quoted(string text) => JsonSerializer.Serialize(text, s_plain);

    private static JsonNode? Node(byte[] utf8, Spot spot)
    {
        try
        {
            return JsonNode.Parse(
                utf8.AsSpan(spot.Start, spot.End - spot.Start),
                documentOptions: new JsonDocumentOptions
                {
                    AllowTrailingCommas = true,
                    CommentHandling = JsonCommentHandling.Skip,
                }
            );
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static string Insert(byte[] utf8, Spot holder, string name, string value)
    {
        var made = name.Length == 0 ? value : $"{Quoted(name)}: {value}";
        if (holder.Members.Count == 0)
        {
            var (open, close) = holder.Kind is JsonTokenType.StartObject ? ("{ ", " }") : ("[", "]");
            // With nothing but blanks inside the brackets are closed anew; a comment inside stays where it is.
            var isBare = utf8.Skip(holder.Start + 1).Take(holder.End - holder.Start - 2).All(IsBlank);
            return isBare
                ? Splice(utf8, holder.Start, holder.End, open + made + close)
                : Splice(utf8, holder.Start + 1, holder.Start + 1, " " + made);
        }

        var last = holder.Members[^1];
        var comma = Comma(utf8, last.End);
        var isInLine = !utf8.AsSpan(holder.Start, last.Start - holder.Start).Contains((byte)'\n');
        if (isInLine)
        {
            return comma < 0
                ? Splice(utf8, last.End, last.End, ", " + made)
                : Splice(utf8, comma + 1, comma + 1, " " + made + ",");
        }

        var indent = Indent(utf8, last.Start);
        if (comma < 0)
        {
            // The comma goes to the value, the new line after a comment that belongs to it.
            var end = AfterComment(utf8, last.End);
            var between = Encoding.UTF8.GetString(utf8, last.End, end - last.End);
            return Splice(utf8, last.End, end, $",{between}\n{indent}{made}");
        }

        var after = AfterComment(utf8, comma + 1);
        return Splice(utf8, after, after, $"\n{indent}{made},");
    }

    private static string Without(byte[] utf8, Spot holder, SpotMember member)
    {
        var (start, end) = (member.Start, member.End);
        var comma = Comma(utf8, end);
        var cut = new List<(int Start, int End)>();
        if (comma >= 0)
        {
            // A comment between value and comma stays.
            cut.Add((start, end));
            cut.Add((comma, comma + 1));
        }
        else
        {
            cut.Add((start, end));
            var index = holder.Members.ToList().IndexOf(member);
            if (index > 0)
            {
                var before = Comma(utf8, holder.Members[index - 1].End);
                cut.Insert(0, (before, before + 1));
            }
        }

        var kept = new List<byte>(utf8.Length);
        var at = 0;
        var place = 0;
        foreach (var (from, to) in cut)
        {
            kept.AddRange(utf8.AsSpan(at, from - at));
            place = from == start ? kept.Count : place;
            at = to;
        }

        kept.AddRange(utf8.AsSpan(at));
        return Tidy([.. kept], place);
    }

    // Takes away the line that has become empty, or the blanks that have become two.
    private static string Tidy(byte[] utf8, int place)
    {
        var from = place;
        while (from > 0 && utf8[from - 1] is (byte)' ' or (byte)'\t')
        {
            from--;
        }

        var to = place;
        while (to < utf8.Length && utf8[to] is (byte)' ' or (byte)'\t' or (byte)'\r')
        {
            to++;
        }

        var isOwnLine = from > 0 && utf8[from - 1] == '\n' && to < utf8.Length && utf8[to] == '\n';
        if (isOwnLine)
        {
            return Splice(utf8, from, to + 1, "");
        }

        return from < place && to > place ? Splice(utf8, place, to, "") : Encoding.UTF8.GetString(utf8);
    }

    private static string Splice(byte[] utf8, int start, int end, string made) =>
        string.Concat(
            Encoding.UTF8.GetString(utf8, 0, start),
            made,
            Encoding.UTF8.GetString(utf8, end, utf8.Length - end)
        );

    private static string Indent(byte[] utf8, int start)
    {
        var line = Array.LastIndexOf(utf8, (byte)'\n', start) + 1;
        var end = line;
        while (end < start && utf8[end] is (byte)' ' or (byte)'\t')
        {
            end++;
        }

        return Encoding.UTF8.GetString(utf8, line, end - line);
    }

    // The comma that follows a value, past blanks and comments; -1 where the bracket comes first.
    private static int Comma(byte[] utf8, int from)
    {
        var at = from;
        while (at < utf8.Length)
        {
            if (IsBlank(utf8[at]))
            {
                at++;
            }
            else if (utf8[at] == '/' && at + 1 < utf8.Length)
            {
                at = EndOfComment(utf8, at);
            }
            else
            {
                return utf8[at] == ',' ? at : -1;
            }
        }

        return -1;
    }

    private static int EndOfComment(byte[] utf8, int at)
    {
        if (utf8[at + 1] == '/')
        {
            var line = Array.IndexOf(utf8, (byte)'\n', at);
            return line < 0 ? utf8.Length : line;
        }

        var end = utf8.AsSpan(at + 2).IndexOf("*/"u8);
        return end < 0 ? utf8.Length : at + 2 + end + 2;
    }

    // To the end of the line where only a comment stands on it, else the same place.
    private static int AfterComment(byte[] utf8, int from)
    {
        var at = from;
        while (at < utf8.Length && utf8[at] is (byte)' ' or (byte)'\t')
        {
            at++;
        }

        return at + 1 < utf8.Length && utf8[at] == '/' && utf8[at + 1] == '/' ? EndOfComment(utf8, at) : from;
    }

    private static bool IsBlank(byte letter) => letter is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n';
}
