using System.Globalization;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>Adds what a garden file says, inside one transaction.</summary>
internal sealed class TakingIn(GardenTables tables, GardenFile file, DateTime now, CancellationToken stop)
{
    private const string What = "taken in";

    private readonly List<string> _remarks = [];
    private readonly HashSet<(string Kind, string Name)> _names = [];
    private int _rigs;
    private int _others;

    public async Task<TakenIn> Run()
    {
        // One taking-in at a time.
        await tables
            .Gardens.ExecuteUpdateAsync(set => set.SetProperty(row => row.Settings, row => row.Settings), stop)
            .ConfigureAwait(false);
        var garden = await tables.Gardens.SingleAsync(stop).ConfigureAwait(false);
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
        _names.UnionWith(there.Select(row => (row.Kind, row.Name)));
        var untouched = there
            .Where(row => Documents.IsSingle(row.Kind) && row.Version == 1 && !row.IsSaved)
            .ToDictionary(row => row.Kind, row => row.Id);
        if (there.TrueForAll(row => untouched.ContainsValue(row.Id)))
        {
            garden.Settings = SettingsText.Write(file.Settings);
            await tables.SaveChangesAsync(stop).ConfigureAwait(false);
        }
        else
        {
            _remarks.Add("This garden is in use already, so it keeps its own name and settings.");
        }

        foreach (var document in file.Documents)
        {
            if (!Documents.IsSingle(document.Kind))
            {
                await Add(document).ConfigureAwait(false);
            }
            else if (
                untouched.TryGetValue(document.Kind, out var id)
                && await Documents.Claim(tables, id, 1, stop).ConfigureAwait(false)
            )
            {
                await Fill(id, document).ConfigureAwait(false);
            }
            else if (document.Revisions.Count > 0)
            {
                _remarks.Add($"{document.Name}: not taken in, for this garden has its own.");
            }
        }

        return new TakenIn(_rigs, _others, _remarks);
    }

    private async Task Add(FiledDocument document)
    {
        var name = FreeName(document);
        var row = await Documents
            .Add(tables, document.Kind, name, document.Draft, What, now, stop)
            .ConfigureAwait(false);
        row.MadeAt = Date(document.Made);
        row.ChangedAt = Date(document.Changed);
        row.RemovedAt = document.Removed is { } removed ? Date(removed) : null;
        await AddRevisions(row.Id, document).ConfigureAwait(false);
        if (document.Kind == DocumentKinds.Rig)
        {
            _rigs++;
        }
        else
        {
            _others++;
        }
    }

    private async Task Fill(int id, FiledDocument document)
    {
        var row = await tables
            .Documents.AsNoTracking()
            .SingleAsync(other => other.Id == id, stop)
            .ConfigureAwait(false);
        if (row.Text != document.Draft)
        {
            await Documents.Step(tables, row, document.Draft, What, now, stop).ConfigureAwait(false);
        }

        await AddRevisions(id, document).ConfigureAwait(false);
        _others += document.Revisions.Count > 0 ? 1 : 0;
    }

    private async Task AddRevisions(int id, FiledDocument document)
    {
        tables.Revisions.AddRange(
            document.Revisions.Select(revision => new RevisionRow
            {
                DocumentId = id,
                Number = revision.Number,
                At = Date(revision.At),
                Who = revision.Who,
                Note = revision.Note,
                Text = revision.Text,
            })
        );
        await tables.SaveChangesAsync(stop).ConfigureAwait(false);
        tables.ChangeTracker.Clear();
    }

    private string FreeName(FiledDocument document)
    {
        var name = document.Name;
        for (var n = 2; !_names.Add((document.Kind, name)); n++)
        {
            var end = string.Create(CultureInfo.InvariantCulture, $" ({n})");
            var start = document.Name[..Math.Min(document.Name.Length, Limits.NameLetters - end.Length)];
            name = (start.Length > 0 && char.IsHighSurrogate(start[^1]) ? start[..^1] : start) + end;
        }

        if (name != document.Name)
        {
            _remarks.Add($"{document.Name}: there is one of that name already, so it is now \"{name}\".");
        }

        return name;
    }

    // A date left out reads as year 1, which not every database keeps.
    private DateTime Date(DateTime at)
    {
        if (at.Year == 1)
        {
            return now;
        }

        var utc =
            at.Kind == DateTimeKind.Unspecified ? DateTime.SpecifyKind(at, DateTimeKind.Utc) : at.ToUniversalTime();
        return utc.AddTicks(-(utc.Ticks % TimeSpan.TicksPerMillisecond));
    }
}
