using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store.Backups;

/// <summary>Brings the tables of an older file up to date: all at once, or the file stays as it was.</summary>
/// <remarks>
/// It is done to a copy, which then takes the garden's place in one transaction: a program that is killed meanwhile leaves the old
/// garden and nothing to mend. Whoever does it holds a file beside the garden open, which the system lets go of with the program.
/// </remarks>
internal static class Upgrading
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(30);

    public static async Task Run(string path, TimeProvider time, CancellationToken stop)
    {
        try
        {
            using var turn = await Turn(path, time, stop).ConfigureAwait(false);
            var look = SqliteLook.At(path);
            if (look.IsNew)
            {
                // A file without a byte in the place of a garden that is to be.
                await Fill(path, time, stop).ConfigureAwait(false);
            }
            else if (IsBehind(look))
            {
                await Change(path, look, time, stop).ConfigureAwait(false);
            }
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Troubles.NotWritable(path, wrong);
        }
    }

    /// <summary>Whether this program has newer tables than a file.</summary>
    public static bool IsBehind(SqliteLook look)
    {
        using var tables = new SqliteTables(
            new DbContextOptionsBuilder<SqliteTables>().UseSqlite("Data Source=:memory:").Options
        );
        return tables.Database.GetMigrations().Except(look.Applied).Any();
    }

    private static async Task Fill(string path, TimeProvider time, CancellationToken stop)
    {
        using var passing = Passing.Beside(path);
        var draft = passing.At("new");
        await Opening.Make(draft, time, stop).ConfigureAwait(false);
        File.Move(draft, path, overwrite: true);
    }

    private static async Task Change(string path, SqliteLook look, TimeProvider time, CancellationToken stop)
    {
        using var passing = Passing.Beside(path);
        var draft = passing.At("upgraded");
        SqliteCopy.Vacuum(path, draft, path);
        // The mark of a change that a killed program began: nobody is at it, for the turn is ours.
        SqliteLook.Unlock(draft);
        try
        {
            await NewGarden.Migrate(draft, null, stop).ConfigureAwait(false);
        }
        catch (SqliteException wrong)
        {
            throw Troubles.Of(
                TroubleKind.Damaged,
                path,
                "store.half-changed",
                wrong,
                Troubles.TheGarden,
                look.Applied[^1]
            );
        }

        // Whatever is wrong with the new tables, the old garden is still there.
        SqliteCopy.Write(path, $"{path}.{look.Applied[^1]}", replace: true, Opening.Now(time));
        SqliteCopy.Overwrite(draft, path);
    }

    private static async Task<FileStream> Turn(string path, TimeProvider time, CancellationToken stop)
    {
        var beside = Path.Combine(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}.upgrading");
        var start = time.GetTimestamp();
        while (true)
        {
            try
            {
                return new FileStream(beside, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(beside))
            {
                if (time.GetElapsedTime(start) > s_patience)
                {
                    throw Troubles.Of(TroubleKind.Locked, path, "store.upgrading", null, Troubles.TheGarden);
                }
            }

            await Task.Delay(TimeSpan.FromMilliseconds(200), time, stop).ConfigureAwait(false);
        }
    }
}
