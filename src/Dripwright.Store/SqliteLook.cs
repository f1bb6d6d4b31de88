using Dripwright.Store.Tables;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store;

/// <summary>What a file is, seen before anything is done to it.</summary>
/// <param name="IsEmpty">It is not there, or holds no table.</param>
/// <param name="Applied">Versions of the tables that were brought in, oldest first.</param>
/// <param name="LockedSince">When a change of the tables began that has not ended; null where there is none.</param>
internal sealed record SqliteLook(bool IsEmpty, IReadOnlyList<string> Applied, string? LockedSince)
{
    private const string History = "__EFMigrationsHistory";
    private const string Lock = "__EFMigrationsLock";

    /// <exception cref="GardenException">It is no garden, damaged, or cannot be read.</exception>
    public static SqliteLook At(string path)
    {
        if (Directory.Exists(path))
        {
            throw Troubles.NotAGarden(path);
        }

        var file = new FileInfo(path);
        if (!file.Exists || file.Length == 0)
        {
            return new SqliteLook(true, [], null);
        }

        try
        {
            using var look = new SqliteConnection(
                Connection.SqliteWords(path, SqliteOpenMode.ReadWrite, pooling: false)
            );
            look.Open();
            var tables = Words(look, "SELECT name FROM sqlite_master WHERE type = 'table'");
            if (tables.Count == 0)
            {
                return new SqliteLook(true, [], null);
            }

            if (!tables.Contains(History) || !tables.Contains("gardens"))
            {
                // The tables may be there, and the history just being written by another program.
                return tables.All(name => name.StartsWith("__EF", StringComparison.Ordinal))
                    ? new SqliteLook(true, [], LockOf(look, tables))
                    : throw Troubles.NotAGarden(path);
            }

            return new SqliteLook(
                false,
                Words(look, $"SELECT \"MigrationId\" FROM \"{History}\" ORDER BY 1"),
                LockOf(look, tables)
            );
        }
        catch (SqliteException wrong)
        {
            if (Troubles.Told(wrong, GardenPlace.File(path)) is { } trouble)
            {
                throw trouble;
            }

            throw;
        }
    }

    /// <summary>Takes away the mark of a change that was broken off. False where there was none.</summary>
    public static bool Unlock(string path)
    {
        if (At(path).LockedSince is null)
        {
            return false;
        }

        using var connection = new SqliteConnection(
            Connection.SqliteWords(path, SqliteOpenMode.ReadWrite, pooling: false)
        );
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"DELETE FROM \"{Lock}\"";
        return command.ExecuteNonQuery() > 0;
    }

    /// <summary>The first column of each row, as text.</summary>
    public static List<string> Words(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Every caller is in this folder and gives a text of its own.
        command.CommandText = sql;
#pragma warning restore CA2100
        using var rows = command.ExecuteReader();
        List<string> words = [];
        while (rows.Read())
        {
            words.Add(rows.GetString(0));
        }

        return words;
    }

    private static string? LockOf(SqliteConnection look, List<string> tables) =>
        tables.Contains(Lock) ? Words(look, $"SELECT \"Timestamp\" FROM \"{Lock}\"").FirstOrDefault() : null;
}
