using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dripwright.Language;
using Dripwright.Store.Backups;
using Dripwright.Store.Ground;

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

    public DateTime Exported { get; set; }

    public required GardenSettings Settings { get; set; }

    public required IReadOnlyList<FiledDocument> Documents { get; set; }

    /// <summary>SHA-256 over the settings and documents; null in a file that another hand wrote.</summary>
    public string? Checksum { get; set; }

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
                    ?? throw Wrong(name, Words.Of("store.file.null"));
                file.Judge(name);
                return file;
            }
        }
        catch (JsonException wrong)
        {
            var line = ((wrong.LineNumber ?? 0) + 1).ToString(CultureInfo.InvariantCulture);
            var at = wrong.Path is { Length: > 1 } path
                ? ", " + Words.Of("store.file.at", path.TrimStart('$', '.'))
                : "";
            throw new GardenException(TroubleKind.Refused, Words.Of("store.file.no-json", name, line, at), wrong);
        }
    }

    /// <summary>Tries a garden file: whether a new garden imports it and exports the same.</summary>
    /// <param name="path">The file.</param>
    /// <param name="beside">A file beside which there is room.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="GardenException">It would not come back as it is.</exception>
    public static async Task Try(string path, string beside, CancellationToken stop)
    {
        using var passing = Passing.Beside(beside);
        var from = new FileStream(path, FileMode.Open, FileAccess.Read);
        await using (from.ConfigureAwait(false))
        {
            var said = await Read(from, Troubles.TheBackup, Limits.GardenFileBytes, stop).ConfigureAwait(false);
            from.Position = 0;
            var garden = await Garden
                .OpenAsync(GardenPlace.File(passing.At("trial")), stop: stop)
                .ConfigureAwait(false);
            await using (garden.ConfigureAwait(false))
            {
                await garden.ImportAsync(from, Troubles.TheBackup, stop).ConfigureAwait(false);
                if ((await garden.FiledAsync(stop).ConfigureAwait(false)).Sum() != said.Sum())
                {
                    throw Troubles.DamagedBackup(path, Words.Of("store.backup.differs"));
                }
            }
        }
    }

    private static GardenException Wrong(string name, string what) =>
        new(TroubleKind.Refused, Words.Of("store.file.wrong", name, what));

    private void Judge(string name)
    {
        if (GardenFormat != CurrentFormat)
        {
            throw Wrong(name, Words.Of("store.file.format", GardenFormat));
        }

        if (SettingsText.Fault(Settings) is { } fault)
        {
            throw Wrong(name, fault);
        }

        for (var at = 0; at < Documents.Count; at++)
        {
            // The reader lets null pass in a list.
            if ((Documents[at] is null ? ": " + Words.Of("store.file.nothing") : Documents[at].Fault()) is { } wrong)
            {
                throw Wrong(name, string.Create(CultureInfo.InvariantCulture, $"documents[{at}]{wrong.TrimEnd('.')}"));
            }
        }

        foreach (var single in Documents.Where(d => DocumentKinds.IsSingle(d.Kind)).GroupBy(d => d.Kind))
        {
            if (single.Count() > 1)
            {
                throw Wrong(name, Words.Of("store.file.two", single.Key));
            }
        }

        if (Checksum is { } said && said != Sum())
        {
            throw Wrong(name, Words.Of("store.file.sum"));
        }
    }

    /// <summary>The checksum of what it says: settings and documents in their order, as values and not as they are written.</summary>
    public string Sum()
    {
        using var sum = new ContentSum();
        sum.Add(Settings.Name);
        sum.Add(Settings.Units.ToString());
        foreach (var (setting, value) in Settings.More.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            sum.Add(setting);
            sum.Add(value);
        }

        foreach (var document in Documents)
        {
            sum.Add(document.Kind);
            sum.Add(document.Name);
            sum.Add(document.Made);
            sum.Add(document.Changed);
            sum.Add(document.Removed);
            sum.Add(document.Draft);
            sum.Add(document.Revisions.Count);
            foreach (var revision in document.Revisions)
            {
                sum.Add(revision.Number);
                sum.Add(revision.At);
                sum.Add(revision.Who);
                sum.Add(revision.Note);
                sum.Add(revision.Text);
            }
        }

        return sum.End();
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
        if (!DocumentKinds.IsKind(Kind))
        {
            return ".kind: " + Words.Of("store.file.kind");
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
            return ": " + Words.Of("store.file.date");
        }

        for (var at = 0; at < Revisions.Count; at++)
        {
            if (
                (Revisions[at] is null ? ": " + Words.Of("store.file.nothing") : Revisions[at].Fault(at + 1)) is
                { } revision
            )
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
        Number != number ? ".number: " + Words.Of("store.file.number", Number, number)
        : (Limits.NoteFault(Who) ?? Limits.NoteFault(Note)) is { } note ? $": {note}"
        : Limits.TextFault(Text) is { } text ? $".text: {text}"
        : IsSensible(At) ? null
        : ".at: " + Words.Of("store.file.date");
}
