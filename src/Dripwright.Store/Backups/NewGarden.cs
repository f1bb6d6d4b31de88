using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Dripwright.Store.Backups;

/// <summary>A garden's tables in a fresh file that is nobody else's yet.</summary>
internal static class NewGarden
{
    /// <summary>Makes the file with its tables and nothing in them.</summary>
    /// <param name="path">The file.</param>
    /// <param name="version">Version of the tables; the newest where null.</param>
    /// <param name="stop">Asks to stop.</param>
    public static async Task Make(string path, string? version, CancellationToken stop)
    {
        await Migrate(path, version, stop).ConfigureAwait(false);
        using var connection = SqliteCopy.Open(path);
        // Tools that tell kinds of files see "Drip" in ASCII.
        _ = SqliteLook.Column(connection, "PRAGMA application_id = 0x44726970; SELECT 'set'");
        // One whole file, until a garden is opened in it.
        _ = SqliteLook.Column(connection, "PRAGMA journal_mode = DELETE");
    }

    /// <summary>Brings the tables of a file up to a version.</summary>
    public static async Task Migrate(string path, string? version, CancellationToken stop)
    {
        var tables = new Connection(GardenPlace.File(path), pooling: false).Open();
        await using (tables.ConfigureAwait(false))
        {
            await tables.GetService<IMigrator>().MigrateAsync(version, stop).ConfigureAwait(false);
        }
    }
}
