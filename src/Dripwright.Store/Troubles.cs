using System.Net.Sockets;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Dripwright.Store;

/// <summary>Says in the grower's words what a database threw.</summary>
internal static class Troubles
{
    /// <summary>The trouble behind an exception; null where it is none of the place's doing.</summary>
    public static GardenException? Told(Exception wrong, GardenPlace place)
    {
        for (var at = wrong; at is not null; at = at.InnerException)
        {
            switch (at)
            {
                case GardenException:
                    return null;
                case SqliteException sqlite when OfSqlite(sqlite, place) is { } trouble:
                    return trouble;
                case PostgresException refused when OfServer(refused, place) is { } trouble:
                    return trouble;
                case NpgsqlException { InnerException: SocketException or IOException or TimeoutException } lost:
                    return new(
                        TroubleKind.NoServer,
                        $"The server of {place} cannot be reached: see that it runs and that host and port are right.",
                        lost
                    );
                case UnauthorizedAccessException or IOException:
                    return NotWritable(place.ToString(), at);
                default:
                    break;
            }
        }

        return null;
    }

    /// <summary>A file or folder that cannot be written.</summary>
    public static GardenException NotWritable(string path, Exception? inner = null) =>
        new(
            TroubleKind.NotWritable,
            $"{path}: cannot be written: see that the folder is there, that you may write into it, and that the disk is not full.",
            inner
        );

    /// <summary>A file that is something else.</summary>
    public static GardenException NotAGarden(string path, Exception? inner = null) =>
        new(TroubleKind.NotAGarden, $"{path}: is not a garden: give another file, or a name that is not taken.", inner);

    /// <summary>A damaged file.</summary>
    public static GardenException Damaged(string path, Exception? inner = null) =>
        new(TroubleKind.Damaged, $"{path}: is damaged: bring back your last copy of it.", inner);

    // Result codes: https://sqlite.org/rescode.html
    private static GardenException? OfSqlite(SqliteException wrong, GardenPlace place) =>
        wrong.SqliteErrorCode switch
        {
            5 or 6 => new(
                TroubleKind.Busy,
                $"{place}: another program kept it busy for too long: try again, or close the other program.",
                wrong
            ),
            3 or 8 or 10 or 13 or 14 or 23 => NotWritable(place.ToString(), wrong),
            11 => Damaged(place.ToString(), wrong),
            26 => NotAGarden(place.ToString(), wrong),
            _ => null,
        };

    // Classes of SQLSTATE: https://www.postgresql.org/docs/current/errcodes-appendix.html
    private static GardenException? OfServer(PostgresException wrong, GardenPlace place) =>
        wrong.SqlState[..2] switch
        {
            "08" or "28" or "3D" or "57" => new(
                TroubleKind.NoServer,
                $"The server of {place} refuses: {wrong.MessageText}. See that user, password and database are right.",
                wrong
            ),
            "42" when wrong.SqlState == "42501" => new(
                TroubleKind.NotWritable,
                $"The user may not write to {place}: give them the right to, or name another user.",
                wrong
            ),
            "25" or "53" => new(
                TroubleKind.NotWritable,
                $"The server of {place} cannot write: {wrong.MessageText}.",
                wrong
            ),
            "42" when wrong.SqlState == "42P07" => new(
                TroubleKind.NotAGarden,
                $"{place} holds other tables: give the garden a database of its own.",
                wrong
            ),
            "40" or "55" => new(TroubleKind.Busy, $"{place} was busy with another change: try again.", wrong),
            _ => null,
        };
}
