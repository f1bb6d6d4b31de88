using Dripwright.Language;
using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Backups;

/// <summary>What a file is, seen before anything is done to it.</summary>
/// <param name="IsNew">It is not there, or has no bytes.</param>
/// <param name="Applied">Versions of the tables that were brought in, oldest first.</param>
internal sealed record SqliteLook(bool IsNew, IReadOnlyList<string> Applied)
{
    private const string History = "__EFMigrationsHistory";
    private const string Lock = "__EFMigrationsLock";

    /// <exception cref="GardenException">It is no garden, damaged, or cannot be read.</exception>
    public static SqliteLook At(string path, string name = Troubles.TheGarden)
    {
        if (Directory.Exists(path))
        {
            throw Troubles.NotAGarden(path, null, name);
        }

        var file = new FileInfo(path);
        if (!file.Exists || file.Length == 0)
        {
            return new SqliteLook(true, []);
        }

        try
        {
            using var look = new SqliteConnection(
                Connection.SqliteWords(path, SqliteOpenMode.ReadWrite, pooling: false)
            );
            look.Open();
            var tables = Column(look, "SELECT name FROM sqlite_master WHERE type = 'table'");
            if (tables.Count == 0)
            {
                throw Troubles.NoTables(path);
            }

            return tables.Contains(History) && tables.Contains("gardens")
                ? new SqliteLook(false, AppliedIn(look))
                : throw Troubles.NotAGarden(path, null, name);
        }
        catch (Exception wrong) when (wrong is SqliteException or InvalidOperationException)
        {
            // What it says of itself makes no sense: a name that is missing, a kind that is none.
            throw Troubles.Told(wrong, GardenPlace.File(path), name)
                ?? (
                    name == Troubles.TheBackup
                        ? Troubles.DamagedBackup(path, Words.Of("store.backup.unread"), wrong)
                        : Troubles.Damaged(path, wrong)
                );
        }
    }

    /// <summary>Versions of the tables that were brought in, oldest first.</summary>
    public static IReadOnlyList<string> AppliedIn(SqliteConnection connection) =>
        Column(connection, $"SELECT \"MigrationId\" FROM \"{History}\" ORDER BY 1");

    /// <summary>Takes away the mark of a change that was broken off. False where there was none.</summary>
    public static bool Unlock(string path)
    {
        if (At(path).IsNew)
        {
            return false;
        }

        using var connection = SqliteCopy.Open(path);
        if (Column(connection, $"SELECT name FROM sqlite_master WHERE name = '{Lock}'").Count == 0)
        {
            return false;
        }

        using var command = connection.CreateCommand();
        command.CommandText = $"DELETE FROM \"{Lock}\"";
        return command.ExecuteNonQuery() > 0;
    }

    /// <summary>The first column of each row, as text.</summary>
    public static List<string> Column(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Every caller is in this project and gives a text of its own.
        command.CommandText = sql;
#pragma warning restore CA2100
        using var rows = command.ExecuteReader();
        List<string> column = [];
        while (rows.Read())
        {
            column.Add(rows.GetString(0));
        }

        return column;
    }
}
