using System.Globalization;
using Dripwright.Store.Ground;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Backups;

/// <summary>What the content of a garden's file comes to: every row of every table, as SQLite keeps it, and the version of the tables.</summary>
internal static class Checksum
{
    /// <summary>The version of the tables since which a backup carries its checksum.</summary>
    public const string Since = "20261130211058_Checksums";

    private const string Table = "checksums";

    /// <summary>Writes the checksum into a file that is nobody else's. One whose tables are too old for it stays without.</summary>
    public static void Seal(string path, DateTime now)
    {
        try
        {
            using var connection = SqliteCopy.Open(path);
            if (!Has(connection))
            {
                return;
            }

            using var command = connection.CreateCommand();
            command.CommandText =
                $"DELETE FROM \"{Table}\"; INSERT INTO \"{Table}\" (\"Id\", \"Sha256\", \"MadeAt\") VALUES (1, $sum, $at)";
            command.Parameters.AddWithValue("$sum", Of(connection));
            command.Parameters.AddWithValue(
                "$at",
                now.ToString("yyyy-MM-dd HH:mm:ss.fff", CultureInfo.InvariantCulture)
            );
            command.ExecuteNonQuery();
        }
        catch (SqliteException wrong)
        {
            throw Troubles.Told(wrong, GardenPlace.File(path)) ?? Troubles.Damaged(path, wrong);
        }
    }

    /// <summary>The checksum that a file carries; null where it carries none.</summary>
    public static string? Carried(SqliteConnection connection) =>
        Has(connection)
            ? SqliteLook.Column(connection, $"SELECT \"Sha256\" FROM \"{Table}\" WHERE \"Id\" = 1").FirstOrDefault()
            : null;

    /// <summary>The checksum of what is in a file.</summary>
    public static string Of(SqliteConnection connection)
    {
        using var sum = new ContentSum();
        foreach (var version in SqliteLook.AppliedIn(connection))
        {
            sum.Add(version);
        }

        sum.Add(LastId(connection));
        foreach (var table in RawTable.All)
        {
            var columns = table.Columns(connection);
            sum.Add(table.Name);
            foreach (var column in columns)
            {
                sum.Add(column);
            }

            foreach (var cell in table.Rows(connection, columns).SelectMany(row => row))
            {
                sum.Add(cell.Kind[0], cell.Bytes);
            }
        }

        return sum.End();
    }

    /// <summary>The greatest number that a document ever had, so that none is given twice.</summary>
    public static long LastId(SqliteConnection connection) =>
        SqliteLook
            .Column(
                connection,
                "SELECT CAST(coalesce(max(\"seq\"), 0) AS TEXT) FROM sqlite_sequence WHERE name = 'documents'"
            )
            .Select(text =>
                long.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var id) ? id : -1
            )
            .First();

    private static bool Has(SqliteConnection connection) => RawTable.ColumnsOf(connection, Table).Count > 0;
}
