using System.Globalization;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store.Backups;

/// <summary>Judges a backup in every table and row, and writes what is good of it into a fresh file.</summary>
/// <remarks>Only rows pass, into tables that this program made: no page, trigger or view of a file from elsewhere comes into a garden.</remarks>
internal static class BackupCheck
{
    private static readonly string[] s_known =
    [
        "__EFMigrationsHistory",
        "__EFMigrationsLock",
        "checksums",
        .. RawTable.All.Select(table => table.Name),
    ];

    /// <summary>Checks a backup; it stays as it is.</summary>
    /// <param name="copy">The backup.</param>
    /// <param name="sound">Where the fresh file is written, with tables of today.</param>
    /// <param name="room">What a message calls the place where that is.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="GardenException">It is not good; the message says what was found.</exception>
    public static async Task Run(string copy, string sound, string room, CancellationToken stop)
    {
        try
        {
            using var from = SqliteCopy.Open(copy, SqliteOpenMode.ReadOnly);
            var applied = SqliteLook.AppliedIn(from);
            Judge(from, copy, applied);
            try
            {
                await NewGarden.Make(sound, applied[^1], stop).ConfigureAwait(false);
                using (var to = SqliteCopy.Open(sound))
                {
                    CopyRows(from, to);
                }

                await NewGarden.Migrate(sound, null, stop).ConfigureAwait(false);
            }
            catch (SqliteException full)
                when (Troubles.Told(full, GardenPlace.File(room)) is { Kind: TroubleKind.NotWritable })
            {
                // Judged good by now: what cannot be written is the fresh file.
                throw Troubles.NotWritable(room, full);
            }
        }
        catch (Exception wrong)
            when (wrong
                    is SqliteException
                        or InvalidOperationException
                        or InvalidCastException
                        or FormatException
                        or OverflowException
                        or ArgumentException
                        or DbUpdateException
            )
        {
            throw wrong is SqliteException { SqliteErrorCode: 5 or 6 }
                ? Troubles.Told(wrong, GardenPlace.File(copy), Troubles.TheBackup)!
                : Troubles.DamagedBackup(copy, Words.Of("store.backup.unread"), wrong);
        }
    }

    private static void Judge(SqliteConnection from, string copy, IReadOnlyList<string> applied)
    {
        if (
            SqliteLook.Column(from, "PRAGMA integrity_check").Any(word => word != "ok")
            || SqliteLook.Column(from, "PRAGMA foreign_key_check").Count > 0
        )
        {
            throw Troubles.DamagedBackup(copy, Words.Of("store.backup.pages"));
        }

        RefuseOtherVersions(copy, applied);
        RefuseStrangers(from, copy);
        if (applied.Contains(Checksum.Since))
        {
            if (Checksum.Carried(from) is not { } carried)
            {
                throw Troubles.Of(TroubleKind.NotAGarden, copy, "store.backup.no-sum", null, Troubles.TheBackup);
            }

            if (carried != Checksum.Of(from))
            {
                throw Troubles.DamagedBackup(copy, Words.Of("store.backup.sum"));
            }
        }

        if (RowRules.Fault(from) is { } fault)
        {
            throw Troubles.DamagedBackup(copy, fault);
        }
    }

    private static void RefuseOtherVersions(string copy, IReadOnlyList<string> applied)
    {
        using var tables = new SqliteTables(
            new DbContextOptionsBuilder<SqliteTables>().UseSqlite("Data Source=:memory:").Options
        );
        Opening.RefuseNewer(tables, applied, copy, Troubles.TheBackup);
        if (applied.Count == 0 || !tables.Database.GetMigrations().Take(applied.Count).SequenceEqual(applied))
        {
            throw Troubles.DamagedBackup(copy, Words.Of("store.backup.versions"));
        }
    }

    // A trigger or view would act in the grower's name, and a foreign table says that another hand was in it.
    private static void RefuseStrangers(SqliteConnection from, string copy)
    {
        var strangers = SqliteLook.Column(
            from,
            "SELECT type || ' ' || name FROM sqlite_master WHERE type IN ('trigger', 'view')"
                + " OR (type = 'table' AND name NOT LIKE 'sqlite@_%' ESCAPE '@' AND name NOT IN ("
                + string.Join(", ", s_known.Select(name => $"'{name}'"))
                + "))"
        );
        if (strangers.Count > 0)
        {
            throw Troubles.Of(
                TroubleKind.NotAGarden,
                copy,
                "store.backup.strange",
                null,
                Troubles.TheBackup,
                strangers[0]
            );
        }
    }

    private static void CopyRows(SqliteConnection from, SqliteConnection to)
    {
        using var change = to.BeginTransaction();
        foreach (var table in RawTable.All)
        {
            CopyTable(from, to, change, table);
        }

        using var sequence = to.CreateCommand();
        sequence.Transaction = change;
        sequence.CommandText = "UPDATE sqlite_sequence SET seq = max(seq, min($last, $most)) WHERE name = 'documents'";
        sequence.Parameters.AddWithValue("$last", Checksum.LastId(from));
        sequence.Parameters.AddWithValue("$most", Limits.Number);
        sequence.ExecuteNonQuery();
        change.Commit();
    }

    private static void CopyTable(SqliteConnection from, SqliteConnection to, SqliteTransaction change, RawTable table)
    {
        var columns = table.Columns(to);
        var names = string.Join(", ", columns.Select(column => $"\"{column}\""));
        using var read = from.CreateCommand();
        using var write = to.CreateCommand();
        write.Transaction = change;
        var places = columns.Select((_, at) => string.Create(CultureInfo.InvariantCulture, $"$p{at}")).ToList();
#pragma warning disable CA2100 // The names are those of the tables that this program made.
        read.CommandText = $"SELECT {names} FROM \"{table.Name}\"";
        write.CommandText = $"INSERT INTO \"{table.Name}\" ({names}) VALUES ({string.Join(", ", places)})";
#pragma warning restore CA2100
        var cells = places.ConvertAll(place => write.Parameters.AddWithValue(place, DBNull.Value));
        using var rows = read.ExecuteReader();
        while (rows.Read())
        {
            for (var at = 0; at < cells.Count; at++)
            {
                cells[at].Value = rows.GetValue(at);
            }

            write.ExecuteNonQuery();
        }
    }
}
