using System.Globalization;
using Dripwright.Store.Tables;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store;

/// <summary>Consistent copies of SQLite files, also of one that is being written to.</summary>
internal static class SqliteCopy
{
    /// <summary>Writes a copy beside its place and moves it there once it is whole.</summary>
    /// <exception cref="GardenException">It stands there already, or cannot be written.</exception>
    public static void Write(string from, string to, bool replace)
    {
        to = Path.GetFullPath(to);
        if (Path.GetFullPath(from) == to || (!replace && (File.Exists(to) || Directory.Exists(to))))
        {
            throw new GardenException(TroubleKind.NotWritable, $"{to}: is there already: give another name.");
        }

        var draft = Beside(to, "draft");
        try
        {
            VacuumInto(from, draft);
            OnDisk(draft);
            File.Move(draft, to, overwrite: replace);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Troubles.NotWritable(to, wrong);
        }
        finally
        {
            Delete(draft);
        }
    }

    /// <summary>A name in the same folder, so that a move is one step of the file system.</summary>
    public static string Beside(string path, string what) =>
        Path.Combine(
            Path.GetDirectoryName(path)!,
            $".{Path.GetFileName(path)}.{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}-{Guid.NewGuid():N}.{what}"
        );

    /// <summary>Waits until the bytes are on the disk.</summary>
    public static void OnDisk(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        stream.Flush(flushToDisk: true);
    }

    /// <summary>Takes away a file of passing use, with what SQLite keeps beside it.</summary>
    public static void Delete(string path)
    {
        foreach (var ending in new[] { "", "-wal", "-shm", "-journal" })
        {
            if (File.Exists(path + ending))
            {
                File.Delete(path + ending);
            }
        }
    }

    private static void VacuumInto(string from, string to)
    {
        try
        {
            using var source = new SqliteConnection(
                Connection.SqliteWords(from, SqliteOpenMode.ReadWrite, pooling: false)
            );
            source.Open();
            using var command = source.CreateCommand();
            command.CommandText = "VACUUM INTO $to";
            command.Parameters.AddWithValue("$to", to);
            command.ExecuteNonQuery();
        }
        catch (SqliteException wrong)
        {
            // What cannot be opened or is full is the copy; what is damaged is the original.
            var at = wrong.SqliteErrorCode is 11 or 26 ? from : to;
            throw Troubles.Told(wrong, GardenPlace.File(at)) ?? Troubles.NotWritable(at, wrong);
        }
    }
}
