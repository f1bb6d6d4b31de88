using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Dripwright.Store;

/// <summary>Makes a place ready: the tables as this program knows them, and the documents of which there is exactly one.</summary>
internal static class Opening
{
    /// <summary>A catalogue that adds nothing.</summary>
    public const string EmptyCatalogue = "{\n  \"format\": 1\n}\n";

    /// <summary>Nothing on hand.</summary>
    public const string EmptyOnHand = "[]\n";

    /// <summary>How long another program may take to change the tables before we say that it was broken off.</summary>
    private static readonly TimeSpan s_lockPatience = TimeSpan.FromSeconds(3);

    /// <summary>The time as both kinds of database keep it, to the millisecond.</summary>
    public static DateTime Now(TimeProvider time)
    {
        var now = time.GetUtcNow().UtcDateTime;
        return now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMillisecond));
    }

    public static async Task Ready(Connection at, TimeProvider time, CancellationToken stop)
    {
        var isNew = at.Place.Path is { } path
            ? await ReadyFile(at, path, time, stop).ConfigureAwait(false)
            : await ReadyServer(at, stop).ConfigureAwait(false);
        try
        {
            await at.Change(tables => Furnish(tables, Now(time), stop), stop).ConfigureAwait(false);
        }
        catch (DbUpdateException wrong)
            when (wrong.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation })
        {
            // Another program opened the new garden at the same moment and was first: it is furnished.
        }

        if (at.Place.Path is not null)
        {
            await at.Read(tables => Mark(tables, isNew, at.IsPooled, stop)).ConfigureAwait(false);
        }
    }

    /// <summary>Throws where some of the versions are not known to this program.</summary>
    public static void RefuseNewer(GardenTables tables, IEnumerable<string> applied, string place)
    {
        if (applied.Except(tables.Database.GetMigrations()).Any())
        {
            throw new GardenException(
                TroubleKind.Newer,
                $"{place}: was written by a newer Dripwright: use that one. Nothing was changed."
            );
        }
    }

    private static async Task<bool> Mark(GardenTables tables, bool isNew, bool isPooled, CancellationToken stop)
    {
        if (isNew)
        {
            // Tools that tell kinds of files see "Drip" in ASCII.
            await tables.Database.ExecuteSqlRawAsync("PRAGMA application_id = 0x44726970", stop).ConfigureAwait(false);
        }

        if (isPooled)
        {
            // With a write-ahead log pages read while one writes. Copies come without it, so that they are one file.
            await tables.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL", stop).ConfigureAwait(false);
        }

        return true;
    }

    private static async Task<bool> ReadyFile(Connection at, string path, TimeProvider time, CancellationToken stop)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Troubles.NotWritable(path, wrong);
        }

        var look = SqliteLook.At(path);
        var tables = at.Open();
        await using (tables.ConfigureAwait(false))
        {
            RefuseNewer(tables, look.Applied, path);
            if (!look.IsEmpty && !tables.Database.GetMigrations().Except(look.Applied).Any())
            {
                return false;
            }
        }

        await Unlocked(path, look, time, stop).ConfigureAwait(false);
        if (!look.IsEmpty)
        {
            // Whatever goes wrong with the new tables, the old garden is still there.
            SqliteCopy.Write(path, $"{path}.{look.Applied[^1]}", replace: true);
        }

        await Migrate(at, stop).ConfigureAwait(false);
        return true;
    }

    private static async Task Unlocked(string path, SqliteLook look, TimeProvider time, CancellationToken stop)
    {
        var start = time.GetTimestamp();
        while (look.LockedSince is { } since)
        {
            if (time.GetElapsedTime(start) > s_lockPatience)
            {
                throw new GardenException(
                    TroubleKind.Locked,
                    $"{path}: a change of its tables began at {since} and has not ended."
                        + " If no other Dripwright is at work on it, the change was broken off and nothing is lost:"
                        + $" dripwright unlock --garden \"{path}\" takes the mark away, then open it again."
                );
            }

            await Task.Delay(TimeSpan.FromMilliseconds(200), time, stop).ConfigureAwait(false);
            look = SqliteLook.At(path);
        }
    }

    private static Task<bool> ReadyServer(Connection at, CancellationToken stop) =>
        at.Read(async tables =>
        {
            await MakeDatabase(tables.GetService<IRelationalDatabaseCreator>(), stop).ConfigureAwait(false);
            // The library's own lock is in a table that a new database lacks, so two programs could both begin.
            await tables.Database.OpenConnectionAsync(stop).ConfigureAwait(false);
            await tables.Database.ExecuteSqlRawAsync("SELECT pg_advisory_lock(1148348784)", stop).ConfigureAwait(false);
            try
            {
                var applied = (await tables.Database.GetAppliedMigrationsAsync(stop).ConfigureAwait(false)).ToList();
                RefuseNewer(tables, applied, at.Place.ToString());
                if (tables.Database.GetMigrations().Except(applied).Any())
                {
                    await tables.Database.MigrateAsync(stop).ConfigureAwait(false);
                    return true;
                }

                return false;
            }
            finally
            {
                await tables
                    .Database.ExecuteSqlRawAsync("SELECT pg_advisory_unlock(1148348784)", CancellationToken.None)
                    .ConfigureAwait(false);
            }
        });

    private static async Task MakeDatabase(IRelationalDatabaseCreator creator, CancellationToken stop)
    {
        if (await creator.ExistsAsync(stop).ConfigureAwait(false))
        {
            return;
        }

        try
        {
            await creator.CreateAsync(stop).ConfigureAwait(false);
        }
        catch (PostgresException wrong)
            when (wrong.SqlState is PostgresErrorCodes.DuplicateDatabase or PostgresErrorCodes.UniqueViolation)
        {
            // Another program made it at the same moment.
        }
    }

    private static Task<bool> Migrate(Connection at, CancellationToken stop) =>
        at.Read(async tables =>
        {
            await tables.Database.MigrateAsync(stop).ConfigureAwait(false);
            return true;
        });

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
