using System.Globalization;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>What a garden file adds, made ready before the writer's turn is taken, so that others wait only for the writing.</summary>
internal sealed class Importing
{
    private const string What = "imported";

    private readonly GardenFile _file;
    private readonly DateTime _now;
    private readonly string _who;
    private readonly List<(FiledDocument From, DocumentRow Row)> _documents = [];

    public Importing(GardenFile file, DateTime now, string who)
    {
        _file = file;
        _now = now;
        _who = who;
        foreach (var document in file.Documents.Where(document => !DocumentKinds.IsSingle(document.Kind)))
        {
            _documents.Add((document, Row(document)));
        }
    }

    /// <summary>Writes it, inside one transaction.</summary>
    public async Task<Imported> Write(GardenTables tables, CancellationToken stop)
    {
        List<string> remarks = [];
        // One import at a time.
        await tables
            .Gardens.ExecuteUpdateAsync(set => set.SetProperty(row => row.Settings, row => row.Settings), stop)
            .ConfigureAwait(false);
        var there = await tables
            .Documents.AsNoTracking()
            .Select(row => new
            {
                row.Id,
                row.Kind,
                row.Name,
                row.Version,
                IsSaved = tables.Revisions.Any(revision => revision.DocumentId == row.Id),
            })
            .ToListAsync(stop)
            .ConfigureAwait(false);
        var untouched = there
            .Where(row => DocumentKinds.IsSingle(row.Kind) && row.Version == 1 && !row.IsSaved)
            .ToDictionary(row => row.Kind, row => row.Id);
        if (there.TrueForAll(row => untouched.ContainsValue(row.Id)))
        {
            var settings = SettingsText.Write(_file.Settings);
            await tables
                .Gardens.ExecuteUpdateAsync(set => set.SetProperty(row => row.Settings, settings), stop)
                .ConfigureAwait(false);
        }
        else
        {
            remarks.Add(Words.Of("store.import.settings"));
        }

        var names = new FreeNames(there.Select(row => (row.Kind, row.Name)));
        foreach (var (from, row) in _documents)
        {
            row.Name = names.Take(from.Kind, from.Name);
            if (row.Name != from.Name)
            {
                remarks.Add(Words.Of("store.import.name", from.Name, row.Name));
            }
        }

        await Add(tables, stop).ConfigureAwait(false);
        var others = _documents.Count(document => document.Row.Kind != DocumentKinds.Rig);
        foreach (var single in _file.Documents.Where(document => DocumentKinds.IsSingle(document.Kind)))
        {
            var isFree =
                untouched.TryGetValue(single.Kind, out var id)
                && await Documents.Claim(tables, id, 1, stop).ConfigureAwait(false);
            if (isFree)
            {
                await Fill(tables, id, single, stop).ConfigureAwait(false);
                others += single.Revisions.Count > 0 ? 1 : 0;
            }
            else if (single.Revisions.Count > 0)
            {
                remarks.Add(Words.Of("store.import.own", single.Name));
            }
        }

        return new Imported(_documents.Count(document => document.Row.Kind == DocumentKinds.Rig), others, remarks);
    }

    private async Task Add(GardenTables tables, CancellationToken stop)
    {
        var documents = new RowWriter(
            tables,
            "documents",
            givesId: true,
            "Kind",
            "Name",
            "Text",
            "Version",
            "Step",
            "MadeAt",
            "ChangedAt",
            "RemovedAt",
            "ChangedBy"
        );
        var steps = new RowWriter(
            tables,
            "steps",
            givesId: false,
            "DocumentId",
            "Number",
            "Before",
            "After",
            "Text",
            "What",
            "At",
            "Who"
        );
        var revisions = new RowWriter(
            tables,
            "revisions",
            givesId: false,
            "DocumentId",
            "Number",
            "At",
            "Who",
            "Note",
            "Text"
        );
        await using (documents.ConfigureAwait(false))
        await using (steps.ConfigureAwait(false))
        await using (revisions.ConfigureAwait(false))
        {
            foreach (var (from, row) in _documents)
            {
                var id = await documents
                    .Write([row.Kind, row.Name, row.Text, 1, 1, row.MadeAt, row.ChangedAt, row.RemovedAt, _who], stop)
                    .ConfigureAwait(false);
                await steps.Write([id, 1, 0, 0, row.Text, What, _now, _who], stop).ConfigureAwait(false);
                foreach (var one in Revisions(id, from))
                {
                    await revisions
                        .Write([id, one.Number, one.At, one.Who, one.Note, one.Text], stop)
                        .ConfigureAwait(false);
                }
            }
        }
    }

    private async Task Fill(GardenTables tables, int id, FiledDocument document, CancellationToken stop)
    {
        var row = await tables
            .Documents.AsNoTracking()
            .SingleAsync(other => other.Id == id, stop)
            .ConfigureAwait(false);
        if (row.Text != document.Draft)
        {
            await Documents.Step(tables, row, document.Draft, What, new Moment(_now, _who), stop).ConfigureAwait(false);
        }

        tables.Revisions.AddRange(Revisions(id, document));
        await tables.SaveChangesAsync(stop).ConfigureAwait(false);
        tables.ChangeTracker.Clear();
        var (name, made, changed) = (document.Name, Date(document.Made), Date(document.Changed));
        await tables
            .Documents.Where(other => other.Id == id)
            .ExecuteUpdateAsync(
                set =>
                    set.SetProperty(other => other.Name, name)
                        .SetProperty(other => other.MadeAt, made)
                        .SetProperty(other => other.ChangedAt, changed),
                stop
            )
            .ConfigureAwait(false);
    }

    private DocumentRow Row(FiledDocument document) =>
        new()
        {
            Kind = document.Kind,
            Name = document.Name,
            Text = document.Draft,
            MadeAt = Date(document.Made),
            ChangedAt = Date(document.Changed),
            RemovedAt = document.Removed is { } removed ? Date(removed) : null,
        };

    private IEnumerable<RevisionRow> Revisions(int id, FiledDocument document) =>
        document.Revisions.Select(revision => new RevisionRow
        {
            DocumentId = id,
            Number = revision.Number,
            At = Date(revision.At),
            Who = revision.Who,
            Note = revision.Note,
            Text = revision.Text,
        });

    // A date left out reads as year 1, which not every database keeps.
    private DateTime Date(DateTime at)
    {
        if (at.Year == 1)
        {
            return _now;
        }

        var utc =
            at.Kind == DateTimeKind.Unspecified ? DateTime.SpecifyKind(at, DateTimeKind.Utc) : at.ToUniversalTime();
        return utc.AddTicks(-(utc.Ticks % TimeSpan.TicksPerMillisecond));
    }
}

/// <summary>Names that no document of a kind has yet: a taken one gets a number behind it.</summary>
/// <param name="taken">Kinds and names that are there.</param>
internal sealed class FreeNames(IEnumerable<(string Kind, string Name)> taken)
{
    // Leaves room for the longest number.
    private const int StartLetters = Limits.NameLetters - 13;

    private readonly HashSet<(string Kind, string Name)> _taken = [.. taken];
    private readonly Dictionary<(string Kind, string Start), int> _next = [];

    /// <summary>How many names were looked at so far. It grows with the names that are there and asked for, not with their product.</summary>
    public int Looks { get; private set; }

    /// <summary>The name, or the nearest free one after it.</summary>
    public string Take(string kind, string name)
    {
        Looks++;
        if (_taken.Add((kind, name)))
        {
            return name;
        }

        var start = name[..Math.Min(name.Length, StartLetters)];
        start = char.IsHighSurrogate(start[^1]) ? start[..^1] : start;
        // Numbers below the next one are taken for good: they are not looked at again.
        for (var n = _next.GetValueOrDefault((kind, start), 2); ; n++)
        {
            Looks++;
            var numbered = string.Create(CultureInfo.InvariantCulture, $"{start} ({n})");
            if (_taken.Add((kind, numbered)))
            {
                _next[(kind, start)] = n + 1;
                return numbered;
            }
        }
    }
}
