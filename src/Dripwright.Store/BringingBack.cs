using System.Globalization;
using Dripwright.Store.Tables;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>Puts a copy in the place of a garden, after it has been checked, and keeps what it replaces.</summary>
internal static class BringingBack
{
    /// <returns>Where the replaced garden is kept; null where there was none.</returns>
    public static async Task<string?> Run(string copy, string path, TimeProvider time, CancellationToken stop)
    {
        copy = Path.GetFullPath(copy);
        if (!File.Exists(copy))
        {
            throw new GardenException(TroubleKind.NotThere, $"{copy}: there is no such file: give the copy's name.");
        }

        if (copy == path)
        {
            throw new GardenException(TroubleKind.Refused, $"{copy}: is the garden itself, not a copy of it.");
        }

        if (SqliteLook.At(copy).IsEmpty)
        {
            throw Troubles.NotAGarden(copy);
        }

        var draft = SqliteCopy.Beside(path, "draft");
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            // Everything is done to a copy of the copy: it stays as it is, and may lie on a disk that cannot be written.
            SqliteCopy.Write(copy, draft, replace: false);
            await Check(draft, copy, time, stop).ConfigureAwait(false);
            return Replace(draft, path, Opening.Now(time));
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Troubles.NotWritable(path, wrong);
        }
        finally
        {
            SqliteCopy.Delete(draft);
        }
    }

    // Whole, of tables that this program knows and brought up to date, and nothing else in it.
    private static async Task Check(string draft, string copy, TimeProvider time, CancellationToken stop)
    {
        try
        {
            using (var connection = Raw(draft))
            {
                if (
                    SqliteLook.Words(connection, "PRAGMA integrity_check").Any(word => word != "ok")
                    || SqliteLook.Words(connection, "PRAGMA foreign_key_check").Count > 0
                )
                {
                    throw Troubles.Damaged(copy);
                }
            }

            SqliteLook.Unlock(draft);
            var at = new Connection(GardenPlace.File(draft), pooling: false);
            var tables = at.Open();
            await using (tables.ConfigureAwait(false))
            {
                Opening.RefuseNewer(tables, SqliteLook.At(draft).Applied, copy);
                await tables.Database.MigrateAsync(stop).ConfigureAwait(false);
            }

            await Opening.Ready(at, time, stop).ConfigureAwait(false);
            RefuseStrangers(draft, copy);
            var garden = await Garden.OpenAsync(at, time, stop).ConfigureAwait(false);
            await using (garden.ConfigureAwait(false))
            {
                await garden.SettingsAsync(stop).ConfigureAwait(false);
                foreach (var entry in await garden.DocumentsAsync(null, stop).ConfigureAwait(false))
                {
                    await garden.DraftAsync(entry.Id, stop).ConfigureAwait(false);
                }
            }
        }
        catch (Exception wrong)
            when (wrong
                    is SqliteException
                        or InvalidOperationException
                        or System.Text.Json.JsonException
                        or DbUpdateException
            )
        {
            throw Troubles.Damaged(copy, wrong);
        }
    }

    // A trigger or view in the copy would act in the grower's name.
    private static void RefuseStrangers(string draft, string copy)
    {
        using var connection = Raw(draft);
        string[] known = ["__EFMigrationsHistory", "__EFMigrationsLock", "gardens", "documents", "steps", "revisions"];
        var strangers = SqliteLook.Words(
            connection,
            "SELECT type || ' ' || name FROM sqlite_master WHERE type IN ('trigger', 'view')"
                + " OR (type = 'table' AND name NOT LIKE 'sqlite@_%' ESCAPE '@' AND name NOT IN ("
                + string.Join(", ", known.Select(name => $"'{name}'"))
                + "))"
        );
        if (strangers.Count > 0)
        {
            throw new GardenException(
                TroubleKind.NotAGarden,
                $"{copy}: holds what no garden holds ({strangers[0]}): take another copy."
            );
        }
    }

    private static string? Replace(string draft, string path, DateTime now)
    {
        var stamp = now.ToString("yyyyMMdd-HHmmssfff", CultureInfo.InvariantCulture);
        var aside = $"{path}.replaced-{stamp}";
        if (!File.Exists(path))
        {
            SqliteCopy.OnDisk(draft);
            File.Move(draft, path);
            return null;
        }

        if (TryKeepAside(path, aside))
        {
            // Through SQLite, so that pages that have it open see the one or the other, never a mixture.
            Overwrite(draft, path);
        }
        else
        {
            MoveAside(path, aside);
            File.Move(draft, path);
        }

        return aside;
    }

    // False for a file that SQLite cannot read; another program's database is an error.
    private static bool TryKeepAside(string path, string aside)
    {
        try
        {
            if (SqliteLook.At(path).IsEmpty)
            {
                return false;
            }

            SqliteCopy.Write(path, aside, replace: false);
            return true;
        }
        catch (GardenException wrong) when (wrong.Kind is TroubleKind.Damaged || IsNoDatabase(path))
        {
            return false;
        }
    }

    private static void Overwrite(string draft, string path)
    {
        try
        {
            using var live = Raw(path);
            using var source = Raw(draft);
            var highest = SqliteLook.Words(live, "SELECT CAST(coalesce(max(\"Version\"), 0) AS TEXT) FROM documents")[
                0
            ];
            // An open page must notice that its text was replaced, so no draft has a version that any page has seen, nor one
            // that another program reaches before the next line is done.
            using (var command = source.CreateCommand())
            {
                command.CommandText =
                    "UPDATE documents SET \"Version\" = 1000 + max($highest, (SELECT max(\"Version\") FROM documents))";
                command.Parameters.AddWithValue("$highest", int.Parse(highest, CultureInfo.InvariantCulture));
                command.ExecuteNonQuery();
            }

            source.BackupDatabase(live);
        }
        catch (SqliteException wrong)
        {
            throw Troubles.Told(wrong, GardenPlace.File(path)) ?? Troubles.NotWritable(path, wrong);
        }
    }

    private static void MoveAside(string path, string aside)
    {
        using (var any = new SqliteConnection(Connection.SqliteWords(path)))
        {
            SqliteConnection.ClearPool(any);
        }

        foreach (var ending in new[] { "-wal", "-shm", "-journal", "" })
        {
            if (File.Exists(path + ending))
            {
                File.Move(path + ending, aside + ending);
            }
        }
    }

    private static bool IsNoDatabase(string path)
    {
        var start = new byte[16];
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false) < start.Length
            || !start.AsSpan().SequenceEqual("SQLite format 3\0"u8);
    }

    private static SqliteConnection Raw(string path)
    {
        var connection = new SqliteConnection(Connection.SqliteWords(path, SqliteOpenMode.ReadWrite, pooling: false));
        connection.Open();
        // Copying page by page asks SQLite itself, which by default does not wait for another's turn to end.
        _ = SqliteLook.Words(connection, "PRAGMA busy_timeout = 20000; SELECT 'set'");
        return connection;
    }
}
