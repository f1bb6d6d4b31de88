using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dripwright.Language;
using Dripwright.Store.Ground;

namespace Dripwright.Workbench.Household;

/// <summary>The people file as text. What is wrong in it is told with its line and the person's name.</summary>
internal static class PeopleText
{
    public const int Format = 2;

    /// <summary>How long a key of the first format still holds after the file was brought up to date.</summary>
    private static readonly TimeSpan s_oldKeys = TimeSpan.FromDays(365);

    private static readonly JsonSerializerOptions s_json = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    public static string Write(IReadOnlyList<Person> people) =>
        JsonSerializer.Serialize(new Filed(Format, people), s_json) + "\n";

    /// <summary>Reads the file.</summary>
    /// <param name="bytes">What stands in it.</param>
    /// <param name="path">Where it stands, for what is wrong with it.</param>
    /// <param name="now">For what the first format did not say.</param>
    /// <exception cref="GardenException">It is spoilt; the message says where and what to do.</exception>
    public static IReadOnlyList<Person> Read(byte[] bytes, string path, DateTimeOffset now)
    {
        try
        {
            bytes = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
            // The first format was a bare list, and everybody could do everything.
            var people = IsList(bytes) ? Old(bytes, now) : New(bytes, path);
            Judge(people, bytes, path);
            return people;
        }
        catch (JsonException wrong)
        {
            throw Spoilt(
                path,
                (wrong.LineNumber ?? 0) + 1,
                Words.Of("people.file.field", wrong.Path ?? "$", What(wrong))
            );
        }
    }

    private static IReadOnlyList<Person> New(byte[] bytes, string path)
    {
        var filed = JsonSerializer.Deserialize<Filed>(bytes, s_json) ?? throw new JsonException("null");
        return filed.Format == Format
            ? filed.People
            : throw Spoilt(path, 1, Words.Of("people.file.format", filed.Format, Format));
    }

    private static List<Person> Old(byte[] bytes, DateTimeOffset now)
    {
        var old = JsonSerializer.Deserialize<List<OldPerson>>(bytes) ?? throw new JsonException("null");
        return
        [
            .. old.Select(
                (person, at) =>
                    person is null
                        ? throw new JsonException("null")
                        : new Person(
                            // The same at each reading, until something is written.
                            People.IdOf(person.Name),
                            person.Name,
                            // Who made the first account had the code of the terminal.
                            at == 0
                                ? Role.Owner
                                : Role.Grower,
                            person.Hash,
                            now,
                            [],
                            [
                                .. (person.Keys ?? []).Select(key => new Key(
                                    key.Id,
                                    key.Label,
                                    key.Hash,
                                    at == 0 ? Role.Owner : Role.Grower,
                                    key.MadeAt,
                                    now + s_oldKeys
                                )),
                            ]
                        )
            ),
        ];
    }

    private static void Judge(IReadOnlyList<Person> people, byte[] bytes, string path)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (var at = 0; at < people.Count; at++)
        {
            var person = people[at];
            var fault =
                person is null ? Words.Of("people.file.nothing")
                : People.NameFault(person.Name) is not null ? Words.Of("people.file.name")
                : !names.Add(People.Folded(person.Name)) ? Words.Of("people.file.twice")
                : Passphrases.RoundsOf(person.Passphrase) is null ? Words.Of("people.file.hash")
                : person.Sessions.Any(one => one is null) || person.Keys.Any(one => one is null)
                    ? Words.Of("people.file.nothing")
                : null;
            if (fault is not null)
            {
                throw Spoilt(path, LineOf(bytes, at), Words.Of("people.file.person", person?.Name ?? "", fault));
            }
        }

        if (people.Count > 0 && !people.Any(person => person.Role == Role.Owner))
        {
            throw Spoilt(path, 1, Words.Of("people.file.no-owner"));
        }
    }

    private static GardenException Spoilt(string path, long line, string what) =>
        new(
            TroubleKind.Damaged,
            Words.Of("people.file.spoilt", path, line, what),
            null,
            Words.Of("people.file.spoilt", Path.GetFileName(path), line, what)
        );

    // The platform's sentence ends with path and line, which are told before it; without values of the file.
    private static string What(JsonException wrong) =>
        wrong.Message.Split(" Path: ")[0].Split(" LineNumber: ")[0].TrimEnd('.');

    private static bool IsList(byte[] bytes) =>
        Array.Find(bytes, letter => !char.IsWhiteSpace((char)letter)) == (byte)'[';

    // Where the person of a number begins: counted in braces, for the reader of records does not say.
    private static long LineOf(byte[] bytes, int person)
    {
        var reader = new Utf8JsonReader(bytes);
        var depth = IsList(bytes) ? 1 : 2;
        var at = -1;
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.StartObject && reader.CurrentDepth == depth && ++at == person)
            {
                break;
            }
        }

        return bytes.AsSpan(0, (int)reader.TokenStartIndex).Count((byte)'\n') + 1;
    }

    private sealed record Filed(int Format, IReadOnlyList<Person> People);

    private sealed record OldPerson(string Name, string Hash, string? Stamp, IReadOnlyList<OldKey>? Keys);

    private sealed record OldKey(string Id, string Label, string Hash, DateTimeOffset MadeAt);
}
