using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Dripwright.Store;

/// <summary>A whole garden as one open file. Its format is told in docs/handbook/garden-file.md.</summary>
internal sealed record GardenFile
{
    /// <summary>The newest version of the format.</summary>
    public const int CurrentFormat = 1;

    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        MaxDepth = 8,
        NumberHandling = JsonNumberHandling.Strict,
    };

    public required int GardenFormat { get; set; }

    public DateTime HandedOut { get; set; }

    public required GardenSettings Settings { get; set; }

    public required IReadOnlyList<FiledDocument> Documents { get; set; }

    public Task Write(Stream to, CancellationToken stop) => JsonSerializer.SerializeAsync(to, this, s_options, stop);

    /// <summary>Reads a garden file and judges all of it.</summary>
    /// <param name="from">The bytes.</param>
    /// <param name="name">The file's name, for what is wrong with it.</param>
    /// <param name="most">Most bytes.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="GardenException">It is no garden file; the message says where.</exception>
    public static async Task<GardenFile> Read(Stream from, string name, long most, CancellationToken stop)
    {
        try
        {
            var limited = new LimitedStream(from, most, name);
            await using (limited.ConfigureAwait(false))
            {
                var file =
                    await JsonSerializer.DeserializeAsync<GardenFile>(limited, s_options, stop).ConfigureAwait(false)
                    ?? throw Wrong(name, "the file says null");
                file.Judge(name);
                return file;
            }
        }
        catch (JsonException wrong)
        {
            var line = ((wrong.LineNumber ?? 0) + 1).ToString(CultureInfo.InvariantCulture);
            var at = wrong.Path is { Length: > 1 } path ? $", at {path.TrimStart('$', '.')}" : "";
            throw new GardenException(
                TroubleKind.Refused,
                $"{name}: is no garden file, or a damaged one: line {line}{at}. Nothing was taken in.",
                wrong
            );
        }
    }

    private static GardenException Wrong(string name, string what) =>
        new(TroubleKind.Refused, $"{name}: {what}. Nothing was taken in.");

    private void Judge(string name)
    {
        if (GardenFormat != CurrentFormat)
        {
            var format = GardenFormat.ToString(CultureInfo.InvariantCulture);
            throw Wrong(
                name,
                $"is a garden file of format {format}; this program reads format 1, a newer one may read it"
            );
        }

        if (Limits.NameFault(Settings.Name) is { } fault)
        {
            throw Wrong(name, $"settings: {fault.TrimEnd('.')}");
        }

        if (Settings.More.Any(setting => setting.Value is null || Limits.NoteFault(setting.Value) is not null))
        {
            throw Wrong(name, "settings.more: found what is no text of at most 2000 letters");
        }

        for (var at = 0; at < Documents.Count; at++)
        {
            // The reader lets null pass in a list.
            if ((Documents[at] is null ? ": found nothing" : Documents[at].Fault()) is { } wrong)
            {
                throw Wrong(name, string.Create(CultureInfo.InvariantCulture, $"documents[{at}]{wrong.TrimEnd('.')}"));
            }
        }

        foreach (var single in Documents.Where(d => Store.Documents.IsSingle(d.Kind)).GroupBy(d => d.Kind))
        {
            if (single.Count() > 1)
            {
                throw Wrong(name, $"has more than one document of kind \"{single.Key}\"; a garden has exactly one");
            }
        }
    }
}

/// <summary>A document in a garden file.</summary>
internal sealed record FiledDocument
{
    public required string Kind { get; set; }

    public required string Name { get; set; }

    public DateTime Made { get; set; }

    public DateTime Changed { get; set; }

    public DateTime? Removed { get; set; }

    public required string Draft { get; set; }

    public IReadOnlyList<FiledRevision> Revisions { get; set; } = [];

    /// <summary>What is wrong and where, after the document's own place; null where all is well.</summary>
    public string? Fault()
    {
        if (!Documents.IsKind(Kind))
        {
            return ".kind: found no short word in lower case such as \"rig\"";
        }

        if (Limits.NameFault(Name) is { } name)
        {
            return $".name: {name}";
        }

        if (Limits.TextFault(Draft) is { } draft)
        {
            return $".draft: {draft}";
        }

        if (
            !FiledRevision.IsSensible(Made)
            || !FiledRevision.IsSensible(Changed)
            || !FiledRevision.IsSensible(Removed ?? Made)
        )
        {
            return ": a date lies outside the years 1900 to 2200";
        }

        for (var at = 0; at < Revisions.Count; at++)
        {
            if ((Revisions[at] is null ? ": found nothing" : Revisions[at].Fault(at + 1)) is { } revision)
            {
                return string.Create(CultureInfo.InvariantCulture, $".revisions[{at}]{revision}");
            }
        }

        return null;
    }
}

/// <summary>A revision in a garden file.</summary>
internal sealed record FiledRevision
{
    public required int Number { get; set; }

    public DateTime At { get; set; }

    public string Who { get; set; } = "";

    public string Note { get; set; } = "";

    public required string Text { get; set; }

    public static bool IsSensible(DateTime at) => at.Year is 1 or (>= 1900 and < 2200);

    public string? Fault(int number) =>
        Number != number ? string.Create(CultureInfo.InvariantCulture, $".number: found {Number}; expected {number}")
        : (Limits.NoteFault(Who) ?? Limits.NoteFault(Note)) is { } note ? $": {note}"
        : Limits.TextFault(Text) is { } text ? $".text: {text}"
        : IsSensible(At) ? null
        : ".at: the date lies outside the years 1900 to 2200";
}
