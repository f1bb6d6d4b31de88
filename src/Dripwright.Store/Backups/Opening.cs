using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Dripwright.Store.Backups;

/// <summary>Makes a place ready: the tables as this program knows them, and the documents of which there is exactly one.</summary>
internal static class Opening
{
    /// <summary>A catalogue that adds nothing.</summary>
    public const string EmptyCatalogue = "{\n  \"format\": 1\n}\n";

    /// <summary>Nothing on hand.</summary>
    public const string EmptyOnHand = "[]\n";

    /// <summary>The time as both kinds of database keep it, to the millisecond.</summary>
    public static DateTime Now(TimeProvider time)
    {
        var now = time.GetUtcNow().UtcDateTime;
        return now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMillisecond));
    }

    /// <summary>Makes a place ready.</summary>
    /// <exception cref="GardenException">It cannot be opened; the message says why and what to do.</exception>
    public static async Task Ready(Connection at, TimeProvider time, CancellationToken stop)
    {
        if (at.Place.Path is { } path)
        {
            await ReadyFile(path, time, stop).ConfigureAwait(false);
            // With a write-ahead log pages read while one writes. Backups come without it, so that they are one file.
            await at.Read(tables => tables.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL", stop))
                .ConfigureAwait(false);
        }
        else
        {
            await ReadyServer(at, stop).ConfigureAwait(false);
        }

        if (await at.Read(tables => tables.Gardens.AnyAsync(stop)).ConfigureAwait(false))
        {
            return;
        }

        try
        {
            await at.Change(tables => Furnish(tables, Now(time), stop), stop).ConfigureAwait(false);
        }
        catch (DbUpdateException wrong)
            when (wrong.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation })
        {
            // Another program opened the new garden at the same moment and was first: it is furnished.
        }
    }

    /// <summary>Throws where some of the versions are not known to this program.</summary>
    public static void RefuseNewer(
        GardenTables tables,
        IEnumerable<string> applied,
        string place,
        string name = Troubles.TheGarden
    )
    {
        if (applied.Except(tables.Database.GetMigrations()).Any())
        {
            throw Troubles.Of(TroubleKind.Newer, place, "store.newer", null, name);
        }
    }

    /// <summary>Makes a new garden in a file that is nobody else's yet, with all that every garden has.</summary>
    public static async Task Make(string path, TimeProvider time, CancellationToken stop)
    {
        await NewGarden.Make(path, null, stop).ConfigureAwait(false);
        await new Connection(GardenPlace.File(path), pooling: false)
            .Change(tables => Furnish(tables, Now(time), stop), stop)
            .ConfigureAwait(false);
        SqliteCopy.OnDisk(path);
    }

    private static async Task ReadyFile(string path, TimeProvider time, CancellationToken stop)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            Passing.Sweep(path);
            if (!File.Exists(path) && !Directory.Exists(path))
            {
                await MakeFile(path, time, stop).ConfigureAwait(false);
            }
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Troubles.NotWritable(path, wrong);
        }

        var look = SqliteLook.At(path);
        if (look.IsNew || IsOlder(look, path))
        {
            await Upgrading.Run(path, time, stop).ConfigureAwait(false);
        }
    }

    private static bool IsOlder(SqliteLook look, string path)
    {
        using var tables = new SqliteTables(
            new DbContextOptionsBuilder<SqliteTables>().UseSqlite("Data Source=:memory:").Options
        );
        RefuseNewer(tables, look.Applied, path);
        return Upgrading.IsBehind(look);
    }

    // Made elsewhere and moved in whole: a program that is killed meanwhile leaves no half garden, and of many at once one is first.
    private static async Task MakeFile(string path, TimeProvider time, CancellationToken stop)
    {
        using var passing = Passing.Beside(path);
        var draft = passing.At("new");
        await Make(draft, time, stop).ConfigureAwait(false);
        try
        {
            File.Move(draft, path, overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            // Another program was first: the garden is its.
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
            .Add(tables, DocumentKinds.Catalogue, "Own catalogue", EmptyCatalogue, "new", new Moment(now, ""), stop)
            .ConfigureAwait(false);
        await Documents
            .Add(tables, DocumentKinds.OnHand, "Parts on hand", EmptyOnHand, "new", new Moment(now, ""), stop)
            .ConfigureAwait(false);
        return true;
    }
}
