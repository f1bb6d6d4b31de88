using Dripwright.Store.Ground;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Dripwright.Store.Tables;

/// <summary>Opens the tables of a place, one context for each operation: a page lives for hours, a context must not.</summary>
internal sealed class Connection(GardenPlace place, bool pooling = true)
{
    // SQLite lets one write at a time and has the others sleep and ask again; within a process a queue is faster.
    private readonly SemaphoreSlim? _turn = place.Path is null ? null : new(1, 1);
    private readonly DbContextOptions _options = place.Path is { } path
        ? Sqlite(path, pooling)
        : Postgres(place.Connection!);

    public GardenPlace Place => place;

    /// <summary>Called after each change that was committed.</summary>
    public Action? Committed { get; set; }

    public GardenTables Open() =>
        _options is DbContextOptions<SqliteTables> sqlite
            ? new SqliteTables(sqlite)
            : new PostgresTables((DbContextOptions<PostgresTables>)_options);

    /// <summary>Reads.</summary>
    public async Task<T> Read<T>(Func<GardenTables, Task<T>> work)
    {
        try
        {
            var tables = Open();
            await using (tables.ConfigureAwait(false))
            {
                return await work(tables).ConfigureAwait(false);
            }
        }
        catch (Exception wrong) when (wrong is not OperationCanceledException)
        {
            if (Troubles.Told(wrong, place) is { } trouble)
            {
                throw trouble;
            }

            throw;
        }
    }

    /// <summary>Changes, all or nothing: what the work throws undoes it.</summary>
    public async Task<T> Change<T>(Func<GardenTables, Task<T>> work, CancellationToken stop)
    {
        var result = await Alone(() => Read(tables => InTransaction(tables, work, stop)), stop).ConfigureAwait(false);
        Committed?.Invoke();
        return result;
    }

    /// <summary>Waits until no one else of this process writes to the file, and works while they wait.</summary>
    public async Task<T> Alone<T>(Func<Task<T>> work, CancellationToken stop)
    {
        if (_turn is not null)
        {
            await _turn.WaitAsync(stop).ConfigureAwait(false);
        }

        try
        {
            return await work().ConfigureAwait(false);
        }
        finally
        {
            _turn?.Release();
        }
    }

    private static async Task<T> InTransaction<T>(
        GardenTables tables,
        Func<GardenTables, Task<T>> work,
        CancellationToken stop
    )
    {
        // On SQLite this takes the writer's lock at once, so that a reading in it cannot be outdated by its writing.
        var change = await tables.Database.BeginTransactionAsync(stop).ConfigureAwait(false);
        try
        {
            var before = await EditCount.Before(tables, stop).ConfigureAwait(false);
            var result = await work(tables).ConfigureAwait(false);
            await EditCount.Add(tables, before, stop).ConfigureAwait(false);
            await change.CommitAsync(stop).ConfigureAwait(false);
            return result;
        }
        finally
        {
            await End(change).ConfigureAwait(false);
        }
    }

    // With the connection gone there is nothing to take back, and what the driver says of that must not hide why it went.
    private static async Task End(IDbContextTransaction change)
    {
        try
        {
            await change.DisposeAsync().ConfigureAwait(false);
        }
        catch (Exception wrong) when (wrong is Npgsql.NpgsqlException or InvalidOperationException or IOException)
        {
            // Whatever ended the connection is on its way to the caller.
        }
    }

    /// <summary>Lets go of the file.</summary>
    public void Close()
    {
        if (place.Path is { } path)
        {
            LetGo(path);
        }
    }

    /// <summary>Closes what this process has open of a file and is not in use.</summary>
    public static void LetGo(string path)
    {
        using var any = new SqliteConnection(SqliteWords(path));
        SqliteConnection.ClearPool(any);
    }

    /// <summary>The words by which a SQLite file is opened.</summary>
    public static string SqliteWords(
        string path,
        SqliteOpenMode mode = SqliteOpenMode.ReadWriteCreate,
        bool pooling = true
    ) =>
        new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            Pooling = pooling,
            ForeignKeys = true,
            DefaultTimeout = 20,
        }.ToString();

    private static DbContextOptions<SqliteTables> Sqlite(string path, bool pooling) =>
        new DbContextOptionsBuilder<SqliteTables>().UseSqlite(SqliteWords(path, pooling: pooling)).Options;

    private static DbContextOptions<PostgresTables> Postgres(string words) =>
        new DbContextOptionsBuilder<PostgresTables>().UseNpgsql(words).Options;
}
