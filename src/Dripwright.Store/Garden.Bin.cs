using Dripwright.Store.Backups;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

public sealed partial class Garden
{
    /// <summary>What lies in the bin, by name.</summary>
    /// <param name="stop">Asks to stop.</param>
    public Task<IReadOnlyList<DocumentEntry>> BinAsync(CancellationToken stop = default) =>
        List(row => row.RemovedAt != null, stop);

    /// <summary>Deletes for good what lies in the bin, with all revisions and steps, and gives its room back to the disk.</summary>
    /// <param name="ids">The documents that were shown; those of them that are in use again by now stay. All where null.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>How many were deleted.</returns>
    public async Task<int> EmptyBinAsync(IReadOnlyCollection<int>? ids = null, CancellationToken stop = default)
    {
        _hand.Need(GardenAct.EmptyBin);
        var deleted = await _at.Change(
                async tables =>
                {
                    var gone = tables.Documents.Where(row => row.RemovedAt != null);
                    gone = ids is null ? gone : gone.Where(row => ids.Contains(row.Id));
                    // Claimed first: nobody takes one out of the bin while its revisions go.
                    await gone.ExecuteUpdateAsync(set => set.SetProperty(row => row.Step, row => row.Step), stop)
                        .ConfigureAwait(false);
                    await tables
                        .Steps.Where(step => gone.Any(row => row.Id == step.DocumentId))
                        .ExecuteDeleteAsync(stop)
                        .ConfigureAwait(false);
                    await tables
                        .Revisions.Where(revision => gone.Any(row => row.Id == revision.DocumentId))
                        .ExecuteDeleteAsync(stop)
                        .ConfigureAwait(false);
                    return await gone.ExecuteDeleteAsync(stop).ConfigureAwait(false);
                },
                stop
            )
            .ConfigureAwait(false);
        if (deleted > 0)
        {
            await GiveRoomBack(stop).ConfigureAwait(false);
            Tell(new GardenChange(GardenEvent.List, 0, 0));
        }

        return deleted;
    }

    // On a server the server does it by itself.
    private Task GiveRoomBack(CancellationToken stop) =>
        Place.Path is { } path
            ? _at.Alone(
                () =>
                    Task.Run(
                        () =>
                        {
                            try
                            {
                                using var file = SqliteCopy.Open(path);
                                return SqliteLook.Column(file, "VACUUM").Count;
                            }
                            catch (Microsoft.Data.Sqlite.SqliteException)
                            {
                                // Another program reads, or the disk is full: what was deleted is deleted, the file stays large.
                                return 0;
                            }
                        },
                        stop
                    ),
                stop
            )
            : Task.CompletedTask;
}
