using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Files;

/// <summary>Reads JSON into a tree that knows where everything stands. Comments and trailing commas are allowed.</summary>
internal static class FileTree
{
    /// <summary>Most bytes of a file.</summary>
    public const int MaxBytes = 1 << 20;

    /// <summary>Deepest nesting.</summary>
    public const int MaxDepth = 32;

    /// <summary>The tree, or null when the bytes are no JSON: then there is a fault.</summary>
    public static FileNode? Read(ReadOnlySpan<byte> utf8, FaultList faults)
    {
        if (utf8.StartsWith(Encoding.UTF8.Preamble))
        {
            utf8 = utf8[Encoding.UTF8.Preamble.Length..];
        }
        if (utf8.Length > MaxBytes)
        {
            faults.Add("", 1, 1, Phrase.Of("fault.file-large.found"), Phrase.Of("fault.file-large.expected"));
            return null;
        }
        if (!Utf8.IsValid(utf8))
        {
            var place = new Place();
            place.MoveTo(utf8, FirstInvalid(utf8));
            faults.Add(
                "",
                place.Line,
                place.Column,
                Phrase.Of("fault.no-utf8.found"),
                Phrase.Of("fault.no-utf8.expected")
            );
            return null;
        }
        return new Walk(faults).Run(utf8);
    }

    /// <summary>The object at the root of a file, or null after noting what stands there instead.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="faults">Where faults go.</param>
    /// <param name="expected">What the object is.</param>
    public static FileObject? ReadObject(ReadOnlySpan<byte> utf8, FaultList faults, Phrase expected)
    {
        var tree = Read(utf8, faults);
        if (tree is FileObject root)
        {
            return root;
        }
        if (tree is not null)
        {
            faults.Add("", tree, FaultList.Show(tree), expected);
        }
        else if (!faults.Any)
        {
            faults.Add("", 1, 1, Phrase.Of("fault.end-of-file"), expected);
        }
        return null;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> utf8)
    {
        var at = 0;
        while (
            at < utf8.Length
            && Rune.DecodeFromUtf8(utf8[at..], out _, out var used) is System.Buffers.OperationStatus.Done
        )
        {
            at += used;
        }
        return at;
    }

    /// <summary>A place that only moves forward, so that finding all places takes one pass.</summary>
    private struct Place()
    {
        private int _offset;

        public int Line { get; private set; } = 1;

        public int Column { get; private set; } = 1;

        public void MoveTo(ReadOnlySpan<byte> utf8, int target)
        {
            for (; _offset < target; _offset++)
            {
                if (utf8[_offset] == '\n')
                {
                    Line++;
                    Column = 1;
                }
                else if ((utf8[_offset] & 0xC0) != 0x80)
                {
                    Column++;
                }
            }
        }
    }

    private ref struct Walk(FaultList faults)
    {
        private Place _place = new();
        private JsonTokenType _before = JsonTokenType.None;

        public FileNode? Run(ReadOnlySpan<byte> utf8)
        {
            var options = new JsonReaderOptions
            {
                CommentHandling = JsonCommentHandling.Skip,
                AllowTrailingCommas = true,
                MaxDepth = MaxDepth + 2,
            };
            var reader = new Utf8JsonReader(utf8, options);
            try
            {
                if (!Next(ref reader, utf8))
                {
                    return null;
                }
                var root = Value(ref reader, utf8);
                // What follows the root must be nothing; the reader throws where it is something.
                while (root is not null && reader.Read()) { }
                return root;
            }
            catch (JsonException wrong)
            {
                _place.MoveTo(utf8, OffsetOf(utf8, wrong));
                faults.Add(
                    "",
                    _place.Line,
                    _place.Column,
                    FoundAt(utf8, OffsetOf(utf8, wrong)),
                    ExpectedAfter(_before)
                );
                return null;
            }
        }

        private bool Next(ref Utf8JsonReader reader, ReadOnlySpan<byte> utf8)
        {
            if (!reader.Read())
            {
                return false;
            }
            _before = reader.TokenType;
            _place.MoveTo(utf8, (int)reader.TokenStartIndex);
            return true;
        }

        private FileNode? Value(ref Utf8JsonReader reader, ReadOnlySpan<byte> utf8)
        {
            var (line, column) = (_place.Line, _place.Column);
            switch (reader.TokenType)
            {
                case JsonTokenType.StartObject or JsonTokenType.StartArray when reader.CurrentDepth >= MaxDepth:
                    faults.Add(
                        "",
                        line,
                        column,
                        Phrase.Of("fault.deep.found", MaxDepth),
                        Phrase.Of("fault.deep.expected", MaxDepth)
                    );
                    return null;
                case JsonTokenType.StartObject:
                    return Object(ref reader, utf8, new FileObject(line, column, []));
                case JsonTokenType.StartArray:
                    var list = new FileList(line, column, []);
                    while (Next(ref reader, utf8) && reader.TokenType is not JsonTokenType.EndArray)
                    {
                        if (Value(ref reader, utf8) is not { } item)
                        {
                            return null;
                        }
                        list.Items.Add(item);
                    }
                    return list;
                case JsonTokenType.String:
                    return new FileText(line, column, Text(ref reader, line, column));
                case JsonTokenType.Number:
                    return new FileNumber(line, column, Encoding.UTF8.GetString(reader.ValueSpan));
                default:
                    bool? word = reader.TokenType is JsonTokenType.Null ? null : reader.TokenType is JsonTokenType.True;
                    return new FileWord(line, column, word);
            }
        }

        private FileObject? Object(ref Utf8JsonReader reader, ReadOnlySpan<byte> utf8, FileObject made)
        {
            while (Next(ref reader, utf8) && reader.TokenType is not JsonTokenType.EndObject)
            {
                var (line, column) = (_place.Line, _place.Column);
                var name = Text(ref reader, line, column);
                if (!Next(ref reader, utf8) || Value(ref reader, utf8) is not { } value)
                {
                    return null;
                }
                made.Fields.Add(new FileField(name, line, column, value));
            }
            return made;
        }

        private readonly string Text(ref Utf8JsonReader reader, int line, int column)
        {
            try
            {
                return reader.GetString() ?? "";
            }
            catch (InvalidOperationException)
            {
                // An escape such as \ud800 names half a character.
                faults.Add(
                    "",
                    line,
                    column,
                    Phrase.Of("fault.half-letter.found"),
                    Phrase.Of("fault.half-letter.expected")
                );
                return "";
            }
        }
    }

    private static int OffsetOf(ReadOnlySpan<byte> utf8, JsonException wrong)
    {
        var start = 0;
        for (var line = wrong.LineNumber ?? 0; line > 0; line--)
        {
            var end = utf8[start..].IndexOf((byte)'\n');
            if (end < 0)
            {
                break;
            }
            start += end + 1;
        }
        return (int)Math.Min(utf8.Length, start + (wrong.BytePositionInLine ?? 0));
    }

    private static Phrase FoundAt(ReadOnlySpan<byte> utf8, int offset)
    {
        if (offset >= utf8.Length)
        {
            return Phrase.Of("fault.end-of-file");
        }
        return Rune.DecodeFromUtf8(utf8[offset..], out var letter, out _) is System.Buffers.OperationStatus.Done
            ? (letter.Value == '"' ? Phrase.Of("fault.double-quote") : FaultList.Quote(letter.ToString()))
            : Phrase.Of("fault.broken-letter");
    }

    private static Phrase ExpectedAfter(JsonTokenType before) =>
        before switch
        {
            JsonTokenType.None => Phrase.Of("fault.json.start"),
            JsonTokenType.PropertyName => Phrase.Of("fault.json.after-name"),
            JsonTokenType.StartObject => Phrase.Of("fault.json.in-object"),
            JsonTokenType.StartArray => Phrase.Of("fault.json.in-list"),
            _ => Phrase.Of("fault.json.after-value"),
        };
}
