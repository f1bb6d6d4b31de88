using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Backups;

/// <summary>Consistent copies of SQLite files, also of one that is being written to.</summary>
internal static class SqliteCopy
{
    /// <summary>Writes a backup beside its place, with the checksum of its content, and moves it there once it is whole.</summary>
    /// <exception cref="GardenException">It stands there already, or cannot be written.</exception>
    public static void Write(string from, string to, bool replace, DateTime now)
    {
        to = Path.GetFullPath(to);
        if (Path.GetFullPath(from) == to || (!replace && (File.Exists(to) || Directory.Exists(to))))
        {
            throw Troubles.Of(TroubleKind.NotWritable, to, "store.there", null, Troubles.TheBackup);
        }

        try
        {
            Passing.Sweep(to);
            using var passing = Passing.Beside(to);
            var draft = passing.At("backup");
            Vacuum(from, draft, to);
            Checksum.Seal(draft, now);
            OnDisk(draft);
            File.Move(draft, to, overwrite: replace);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Troubles.NotWritable(to, wrong, Troubles.TheBackup);
        }
    }

    /// <summary>Waits until the bytes are on the disk.</summary>
    public static void OnDisk(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        stream.Flush(flushToDisk: true);
    }

    /// <summary>Writes the content of a file into a fresh one, as of one moment.</summary>
    /// <param name="from">The file, which may be in use.</param>
    /// <param name="to">The fresh one.</param>
    /// <param name="meant">What a message calls the fresh one.</param>
    public static void Vacuum(string from, string to, string meant)
    {
        try
        {
            using var source = Open(from);
            using var command = source.CreateCommand();
            command.CommandText = "VACUUM INTO $to";
            command.Parameters.AddWithValue("$to", to);
            command.ExecuteNonQuery();
        }
        catch (SqliteException wrong)
        {
            // What cannot be opened or is full is the copy; what is damaged is the original.
            throw wrong.SqliteErrorCode is 11 or 26
                ? Troubles.Told(wrong, GardenPlace.File(from))!
                : Troubles.Told(wrong, GardenPlace.File(meant), Troubles.TheBackup)
                    ?? Troubles.NotWritable(meant, wrong, Troubles.TheBackup);
        }
    }

    /// <summary>Puts the content of a file into a garden's through SQLite, so that pages that have it open see the one or the other.</summary>
    public static void Overwrite(string from, string path)
    {
        try
        {
            using var source = Open(from);
            using var live = Open(path);
            source.BackupDatabase(live);
        }
        catch (SqliteException wrong)
        {
            throw Troubles.Told(wrong, GardenPlace.File(path)) ?? Troubles.NotWritable(path, wrong);
        }
    }

    /// <summary>Opens a file that is there, past the pool and the tables' classes.</summary>
    public static SqliteConnection Open(string path, SqliteOpenMode mode = SqliteOpenMode.ReadWrite)
    {
        var connection = new SqliteConnection(Connection.SqliteWords(path, mode, pooling: false));
        try
        {
            connection.Open();
            // Copying page by page asks SQLite itself, which by default does not wait for another's turn to end.
            _ = SqliteLook.Column(connection, "PRAGMA busy_timeout = 20000; SELECT 'set'");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
