using System.Net.Sockets;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Dripwright.Store;

/// <summary>Says in the grower's words what a database threw.</summary>
internal static class Troubles
{
    /// <summary>The garden, where its path is not to be shown.</summary>
    public const string TheGarden = "The garden";

    /// <summary>A backup, where its path is not to be shown.</summary>
    public const string TheBackup = "The backup";

    /// <summary>The trouble behind an exception; null where it is none of the place's doing.</summary>
    /// <param name="wrong">The exception.</param>
    /// <param name="place">What it came from.</param>
    /// <param name="name">What a page calls the place.</param>
    public static GardenException? Told(Exception wrong, GardenPlace place, string name = TheGarden)
    {
        for (var at = wrong; at is not null; at = at.InnerException)
        {
            switch (at)
            {
                case GardenException:
                    return null;
                case SqliteException sqlite when OfSqlite(sqlite, place, name) is { } trouble:
                    return trouble;
                case PostgresException refused when OfServer(refused, place) is { } trouble:
                    return trouble;
                case NpgsqlException { InnerException: SocketException } lost:
                    return NoServer(place, lost);
                case NpgsqlException
                {
                    InnerException: IOException or TimeoutException or ObjectDisposedException
                } lost:
                    return Lost(place, lost);
                case UnauthorizedAccessException or IOException:
                    return NotWritable(place.ToString(), at, name);
                default:
                    break;
            }
        }

        return null;
    }

    /// <summary>A connection that broke while it was in use. What was being kept may or may not be kept.</summary>
    public static GardenException Lost(GardenPlace place, Exception? inner)
    {
        const string todo =
            "was lost: see that the server runs, wait a moment and try again. Look first whether your last change is there.";
        return new(
            TroubleKind.ConnectionLost,
            $"The connection to {place} {todo}",
            inner,
            $"The connection to the garden's database server {todo}"
        );
    }

    /// <summary>A file or folder that cannot be written.</summary>
    public static GardenException NotWritable(string path, Exception? inner = null, string name = TheGarden) =>
        Of(
            TroubleKind.NotWritable,
            path,
            "cannot be written: see that the folder is there, that you may write into it, and that the disk is not full.",
            inner,
            name
        );

    /// <summary>A file that is something else.</summary>
    public static GardenException NotAGarden(string path, Exception? inner = null, string name = TheGarden) =>
        Of(
            TroubleKind.NotAGarden,
            path,
            "is not a garden, so it is left as it is: give another file, or a name that is not taken; or restore a backup in its place.",
            inner,
            name
        );

    /// <summary>A database file that holds nothing of ours.</summary>
    public static GardenException NoTables(string path) =>
        Of(
            TroubleKind.NotAGarden,
            path,
            "is a database file without a garden's tables, so it is left as it is. If it was copied without the file of the same"
                + " name with \"-wal\" behind it, put that one beside it again. Otherwise restore a backup in its place, or move it"
                + " away to begin a new garden.",
            null,
            TheGarden
        );

    /// <summary>A damaged garden.</summary>
    public static GardenException Damaged(string path, Exception? inner = null) =>
        Of(TroubleKind.Damaged, path, "is damaged: restore your last backup.", inner, TheGarden);

    /// <summary>A damaged backup, or one that was changed by another hand.</summary>
    public static GardenException DamagedBackup(string path, string what, Exception? inner = null) =>
        Of(
            TroubleKind.Damaged,
            path,
            $"is damaged or was changed ({what}), so nothing was restored. Take another backup.",
            inner,
            TheBackup
        );

    /// <summary>A trouble with a place.</summary>
    public static GardenException Of(TroubleKind kind, string path, string what, Exception? inner, string name) =>
        new(kind, $"{path}: {what}", inner, $"{name}: {what}");

    private static GardenException NoServer(GardenPlace place, Exception inner)
    {
        const string todo = "cannot be reached: see that it runs and that host and port are right, then try again.";
        return new(
            TroubleKind.NoServer,
            $"The server of {place} {todo}",
            inner,
            $"The garden's database server {todo}"
        );
    }

    // Result codes: https://sqlite.org/rescode.html
    private static GardenException? OfSqlite(SqliteException wrong, GardenPlace place, string name) =>
        wrong.SqliteErrorCode switch
        {
            5 or 6 => Of(
                TroubleKind.Busy,
                place.ToString(),
                "another program kept it busy for too long: try again, or close the other program.",
                wrong,
                name
            ),
            3 or 8 or 10 or 13 or 14 or 23 => NotWritable(place.ToString(), wrong, name),
            11 when name == TheBackup => DamagedBackup(place.ToString(), "it cannot be read", wrong),
            11 => Damaged(place.ToString(), wrong),
            26 => NotAGarden(place.ToString(), wrong, name),
            _ => null,
        };

    // Classes of SQLSTATE: https://www.postgresql.org/docs/current/errcodes-appendix.html
    private static GardenException? OfServer(PostgresException wrong, GardenPlace place) =>
        wrong.SqlState[..2] switch
        {
            // 57P0x: the server is stopped, or an administrator ended the connection.
            "08" => Lost(place, wrong),
            "57" when wrong.SqlState.StartsWith("57P", StringComparison.Ordinal) => Lost(place, wrong),
            "28" or "3D" or "57" => Server(
                TroubleKind.NoServer,
                place,
                wrong,
                "refuses",
                "See that user, password and database are right."
            ),
            "42" when wrong.SqlState == "42501" => new(
                TroubleKind.NotWritable,
                $"The user may not write to {place}: give them the right to, or name another user.",
                wrong,
                "The user may not write to the garden's database: give them the right to, or name another user."
            ),
            "25" or "53" => Server(
                TroubleKind.NotWritable,
                place,
                wrong,
                "cannot write",
                "See that its disk is not full and that it takes changes."
            ),
            "42" when wrong.SqlState is "42P07" or "42701" => new(
                TroubleKind.NotAGarden,
                $"{place} holds other tables: give the garden a database of its own.",
                wrong,
                "The database holds other tables: give the garden a database of its own."
            ),
            "40" or "55" => Of(
                TroubleKind.Busy,
                place.ToString(),
                "was busy with another change: try again.",
                wrong,
                TheGarden
            ),
            _ => null,
        };

    // The server's own words may name its files: they are for its keeper, not for every page.
    private static GardenException Server(
        TroubleKind kind,
        GardenPlace place,
        PostgresException wrong,
        string does,
        string todo
    ) =>
        new(
            kind,
            $"The server of {place} {does}: {wrong.MessageText}. {todo}",
            wrong,
            $"The garden's database server {does}. {todo}"
        );
}
