using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>What was imported from a garden file.</summary>
/// <param name="Rigs">Rigs imported.</param>
/// <param name="Others">Other documents imported.</param>
/// <param name="Remarks">What was left out or got another name, one sentence each.</param>
public sealed record Imported(int Rigs, int Others, IReadOnlyList<string> Remarks);

public sealed partial class Garden
{
    /// <summary>Writes the whole garden as one open file: settings, drafts, all revisions, catalogue, bin. Not the steps of undo.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="stop">Asks to stop.</param>
    public async Task ExportAsync(Stream to, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(to);
        _hand.Need(GardenAct.TakeAway);
        var file = await FiledAsync(stop).ConfigureAwait(false);
        await (file with { Checksum = file.Sum() }).Write(to, stop).ConfigureAwait(false);
    }

    /// <summary>Imports a garden file, whole or not at all.</summary>
    /// <remarks>
    /// An empty garden becomes what the file says. To one that is in use the file's documents are added; a name that is
    /// taken gets a number, and settings, catalogue and parts on hand of this garden stay where it has any.
    /// </remarks>
    /// <param name="from">The file.</param>
    /// <param name="name">Its name, for what is wrong with it.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="GardenException">It is no garden file, or too large; the message says where. Nothing was imported.</exception>
    public async Task<Imported> ImportAsync(Stream from, string name, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(name);
        _hand.Need(GardenAct.Edit);
        var file = await GardenFile.Read(from, name, Limits.GardenFileBytes, stop).ConfigureAwait(false);
        var importing = new Importing(file, Now, _hand.Who);
        var imported = await _at.Change(tables => importing.Write(tables, stop), stop).ConfigureAwait(false);
        _root._catalogue = null;
        Tell(new GardenChange(GardenEvent.All, 0, 0));
        return imported;
    }

    // One transaction, so that the file shows one moment.
    internal Task<GardenFile> FiledAsync(CancellationToken stop) =>
        _at.Read(async tables =>
        {
            var moment = await tables
                .Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, stop)
                .ConfigureAwait(false);
            await using (moment.ConfigureAwait(false))
            {
                return await Filed(tables, stop).ConfigureAwait(false);
            }
        });

    private async Task<GardenFile> Filed(GardenTables tables, CancellationToken stop)
    {
        var garden = await tables.Gardens.AsNoTracking().SingleAsync(stop).ConfigureAwait(false);
        var documents = await tables
            .Documents.AsNoTracking()
            .OrderBy(row => row.Id)
            .ToListAsync(stop)
            .ConfigureAwait(false);
        var revisions = (
            await tables.Revisions.AsNoTracking().OrderBy(row => row.Number).ToListAsync(stop).ConfigureAwait(false)
        ).ToLookup(row => row.DocumentId);
        return new GardenFile
        {
            GardenFormat = GardenFile.CurrentFormat,
            Exported = Now,
            Settings = SettingsText.Read(garden.Settings),
            Documents =
            [
                .. documents.Select(row => new FiledDocument
                {
                    Kind = row.Kind,
                    Name = row.Name,
                    Made = row.MadeAt,
                    Changed = row.ChangedAt,
                    Removed = row.RemovedAt,
                    Draft = row.Text,
                    Revisions =
                    [
                        .. revisions[row.Id]
                            .Select(revision => new FiledRevision
                            {
                                Number = revision.Number,
                                At = revision.At,
                                Who = revision.Who,
                                Note = revision.Note,
                                Text = revision.Text,
                            }),
                    ],
                }),
            ],
        };
    }
}
