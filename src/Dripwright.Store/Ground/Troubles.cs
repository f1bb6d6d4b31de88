using System.Net.Sockets;
using Dripwright.Language;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Dripwright.Store.Ground;

/// <summary>Says in the grower's words what a database threw.</summary>
internal static class Troubles
{
    /// <summary>The garden, where its path is not to be shown.</summary>
    public const string TheGarden = "store.the-garden";

    /// <summary>A backup, where its path is not to be shown.</summary>
    public const string TheBackup = "store.the-backup";

    private const string TheServer = "store.the-server";

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
        return new(
            TroubleKind.ConnectionLost,
            Words.Of("store.lost", place),
            inner,
            Words.Of("store.lost", Words.Of(TheServer))
        );
    }

    /// <summary>A file or folder that cannot be written.</summary>
    public static GardenException NotWritable(string path, Exception? inner = null, string name = TheGarden) =>
        Of(TroubleKind.NotWritable, path, "store.not-writable", inner, name);

    /// <summary>A file that is something else.</summary>
    public static GardenException NotAGarden(string path, Exception? inner = null, string name = TheGarden) =>
        Of(TroubleKind.NotAGarden, path, "store.not-a-garden", inner, name);

    /// <summary>A database file that holds nothing of ours.</summary>
    public static GardenException NoTables(string path) =>
        Of(TroubleKind.NotAGarden, path, "store.no-tables", null, TheGarden);

    /// <summary>A damaged garden.</summary>
    public static GardenException Damaged(string path, Exception? inner = null) =>
        Of(TroubleKind.Damaged, path, "store.damaged", inner, TheGarden);

    /// <summary>A damaged backup, or one that was changed by another hand.</summary>
    public static GardenException DamagedBackup(string path, string what, Exception? inner = null) =>
        Of(TroubleKind.Damaged, path, "store.damaged-backup", inner, TheBackup, what);

    /// <summary>A trouble with a place.</summary>
    /// <param name="kind">What kind of trouble.</param>
    /// <param name="path">The place; it stands first in the text.</param>
    /// <param name="what">Key of the text.</param>
    /// <param name="inner">What it came from.</param>
    /// <param name="name">Key of what a page calls the place.</param>
    /// <param name="more">What else stands in the text.</param>
    public static GardenException Of(
        TroubleKind kind,
        string path,
        string what,
        Exception? inner,
        string name,
        params object[] more
    ) => new(kind, Words.Of(what, [path, .. more]), inner, Words.Of(what, [Words.Of(name), .. more]));

    private static GardenException NoServer(GardenPlace place, Exception inner)
    {
        return new(
            TroubleKind.NoServer,
            Words.Of("store.no-server", place),
            inner,
            Words.Of("store.no-server", Words.Of(TheServer))
        );
    }

    // Result codes: https://sqlite.org/rescode.html
    private static GardenException? OfSqlite(SqliteException wrong, GardenPlace place, string name) =>
        wrong.SqliteErrorCode switch
        {
            5 or 6 => Of(TroubleKind.Busy, place.ToString(), "store.busy", wrong, name),
            3 or 8 or 10 or 13 or 14 or 23 => NotWritable(place.ToString(), wrong, name),
            11 when name == TheBackup => DamagedBackup(place.ToString(), Words.Of("store.backup.unread"), wrong),
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
            "28" or "3D" or "57" => Server(TroubleKind.NoServer, place, wrong, "store.server.refuses"),
            "42" when wrong.SqlState == "42501" => new(
                TroubleKind.NotWritable,
                Words.Of("store.may-not-write", place),
                wrong,
                Words.Of("store.may-not-write", Words.Of(TheServer))
            ),
            "25" or "53" => Server(TroubleKind.NotWritable, place, wrong, "store.server.cannot-write"),
            "42" when wrong.SqlState is "42P07" or "42701" => new(
                TroubleKind.NotAGarden,
                Words.Of("store.other-tables", place),
                wrong,
                Words.Of("store.other-tables", Words.Of(TheServer))
            ),
            "40" or "55" => Of(TroubleKind.Busy, place.ToString(), "store.busy.change", wrong, TheGarden),
            _ => null,
        };

    // The server's own words may name its files: they are for its keeper, not for every page.
    private static GardenException Server(TroubleKind kind, GardenPlace place, PostgresException wrong, string what) =>
        new(
            kind,
            Words.Of(what, Words.Of("store.server.said", place, wrong.MessageText)),
            wrong,
            Words.Of(what, Words.Of(TheServer))
        );
}
