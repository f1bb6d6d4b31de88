using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>Makes a place ready: the tables as this program knows them, and the documents of which there is exactly one.</summary>
internal static class Opening
{
    /// <summary>A catalogue that adds nothing.</summary>
    public const string EmptyCatalogue = "{\n  \"format\": 1\n}\n";

    /// <summary>Nothing on hand.</summary>
    public const string EmptyOnHand = "[]\n";

    public static async Task Ready(Connection at, TimeProvider time, CancellationToken stop)
    {
        if (at.Place.Path is { } path)
        {
            try
            {
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            }
            catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
            {
                throw Troubles.NotWritable(path, wrong);
            }
        }

        await at.Read(async tables =>
            {
                await tables.Database.MigrateAsync(stop).ConfigureAwait(false);
                return 0;
            })
            .ConfigureAwait(false);
        await at.Change(tables => Furnish(tables, time.GetUtcNow().UtcDateTime, stop), stop).ConfigureAwait(false);
    }

    private static async Task<bool> Furnish(GardenTables tables, DateTime now, CancellationToken stop)
    {
        if (await tables.Gardens.AnyAsync(stop).ConfigureAwait(false))
        {
            return false;
        }

        tables.Gardens.Add(
            new GardenRow
            {
                Id = GardenRow.TheOne,
                Settings = SettingsText.Write(new GardenSettings()),
                MadeAt = now,
            }
        );
        await tables.SaveChangesAsync(stop).ConfigureAwait(false);
        await Documents
            .Add(tables, DocumentKinds.Catalogue, "Own catalogue", EmptyCatalogue, "new", now, stop)
            .ConfigureAwait(false);
        await Documents
            .Add(tables, DocumentKinds.OnHand, "Parts on hand", EmptyOnHand, "new", now, stop)
            .ConfigureAwait(false);
        return true;
    }
}
