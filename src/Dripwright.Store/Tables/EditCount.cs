using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store.Tables;

/// <summary>Counts the changes of a garden's file, so that an older file put in its place can be told.</summary>
/// <remarks>Only in a file: on a server every writer would wait for the one row, and nobody puts an older server in place unseen.</remarks>
internal static class EditCount
{
    /// <summary>Rows that the connection has changed so far; null on a server.</summary>
    public static async Task<long?> Before(GardenTables tables, CancellationToken stop) =>
        tables is SqliteTables
            ? await tables
                .Database.SqlQueryRaw<long>("SELECT total_changes() AS \"Value\"")
                .SingleAsync(stop)
                .ConfigureAwait(false)
            : null;

    /// <summary>Adds one where the transaction changed anything.</summary>
    public static async Task Add(GardenTables tables, long? before, CancellationToken stop)
    {
        if (before is { } known)
        {
            await tables
                .Database.ExecuteSqlAsync(
                    $"UPDATE gardens SET \"Edits\" = \"Edits\" + 1 WHERE total_changes() > {known}",
                    stop
                )
                .ConfigureAwait(false);
        }
    }
}
