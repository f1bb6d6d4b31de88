using System.Globalization;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Backups;

/// <summary>A backup that was checked and waits beside a garden to be put in its place.</summary>
internal sealed class Restoring : IDisposable
{
    private const string Sound = "sound";

    private readonly string _path;
    private readonly Passing _passing;

    private Restoring(string path, Passing passing)
    {
        _path = path;
        _passing = passing;
    }

    public void Dispose() => _passing.Dispose();

    /// <summary>Checks a backup. Nobody waits for it; nothing is changed.</summary>
    /// <exception cref="GardenException">The backup is not good, or there is no room beside the garden.</exception>
    public static async Task<Restoring> Prepare(string copy, string path, CancellationToken stop)
    {
        copy = Path.GetFullPath(copy);
        RefuseNone(copy, path);
        Passing? passing = null;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            passing = Passing.Beside(path);
            await BackupCheck.Run(copy, passing.At(Sound), path, stop).ConfigureAwait(false);
            return new Restoring(path, passing);
        }
        catch (Exception wrong)
        {
            passing?.Dispose();
            if (wrong is IOException or UnauthorizedAccessException)
            {
                throw Troubles.NotWritable(path, wrong);
            }

            throw;
        }
    }

    /// <summary>Checks a backup as for restoring it, and restores it nowhere.</summary>
    /// <exception cref="GardenException">It could not be restored.</exception>
    /// <param name="copy">The backup.</param>
    /// <param name="beside">A file beside which there is room for it.</param>
    /// <param name="stop">Asks to stop.</param>
    public static async Task Try(string copy, string beside, CancellationToken stop)
    {
        RefuseNone(copy, "");
        try
        {
            using var passing = Passing.Beside(beside);
            await BackupCheck.Run(copy, passing.At(Sound), beside, stop).ConfigureAwait(false);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Troubles.NotWritable(beside, wrong);
        }
    }

    /// <summary>Puts it in the place of the garden.</summary>
    /// <returns>Where the replaced garden is kept; null where there was none.</returns>
    public string? Replace(DateTime now)
    {
        try
        {
            var draft = _passing.At(Sound);
            if (!File.Exists(_path))
            {
                Renumber(draft, default);
                MoveIn(draft);
                return null;
            }

            var aside = Aside(now);
            if (TryKeepAside(aside, now))
            {
                Renumber(draft, InUse());
                // Through SQLite, so that pages that have it open see the one or the other, never a mixture.
                SqliteCopy.Overwrite(draft, _path);
            }
            else
            {
                MoveAside(aside);
                Renumber(draft, default);
                MoveIn(draft);
            }

            return aside;
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Troubles.NotWritable(_path, wrong);
        }
    }

    private static void RefuseNone(string copy, string path)
    {
        if (!File.Exists(copy))
        {
            throw Troubles.Of(TroubleKind.NotThere, copy, "store.backup.none", null, Troubles.TheBackup);
        }

        if (copy == path)
        {
            throw Troubles.Of(TroubleKind.Refused, copy, "store.backup.itself", null, Troubles.TheBackup);
        }

        try
        {
            if (SqliteLook.At(copy, Troubles.TheBackup).IsNew)
            {
                throw Troubles.NotAGarden(copy, null, Troubles.TheBackup);
            }
        }
        catch (GardenException wrong) when (wrong.InnerException is SqliteException { SqliteErrorCode: 10 })
        {
            // Its end is missing, or the disk that it lies on fails.
            throw Troubles.DamagedBackup(copy, Words.Of("store.backup.cut"), wrong);
        }
    }

    // By the time; a clock that was put back must not have one replaced garden take the place of another.
    private string Aside(DateTime now)
    {
        var stamp = now.ToString("yyyyMMdd-HHmmssfff", CultureInfo.InvariantCulture);
        var aside = $"{_path}.replaced-{stamp}";
        for (var n = 2; File.Exists(aside); n++)
        {
            aside = string.Create(CultureInfo.InvariantCulture, $"{_path}.replaced-{stamp}-{n}");
        }

        return aside;
    }

    private void MoveIn(string draft)
    {
        SqliteCopy.OnDisk(draft);
        File.Move(draft, _path);
    }

    // False for a file that SQLite cannot read, or that holds nothing; another program's database is an error.
    private bool TryKeepAside(string aside, DateTime now)
    {
        try
        {
            if (SqliteLook.At(_path).IsNew)
            {
                return false;
            }

            SqliteCopy.Write(_path, aside, replace: false, now);
            return true;
        }
        catch (GardenException wrong) when (wrong.Kind is TroubleKind.Damaged || HoldsNothing())
        {
            return false;
        }
    }

    private Numbers InUse()
    {
        using var live = SqliteCopy.Open(_path);
        return new Numbers(HighestVersion(live), LastEdit.In(live), Checksum.LastId(live));
    }

    private static long HighestVersion(SqliteConnection connection) =>
        long.TryParse(
            SqliteLook.Column(connection, "SELECT CAST(coalesce(max(\"Version\"), 0) AS TEXT) FROM documents")[0],
            NumberStyles.AllowLeadingSign,
            CultureInfo.InvariantCulture,
            out var number
        )
            ? number
            : 0;

    // An open page must notice that its text was replaced, so no draft has a version that any page has seen, nor one that another
    // program reaches before the next line is done. Where the garden's own numbers are beyond all counting no page has seen them.
    private void Renumber(string draft, Numbers inUse)
    {
        const long apart = 1000;
        using var connection = SqliteCopy.Open(draft);
        using var command = connection.CreateCommand();
        command.CommandText = """
            UPDATE documents SET "Version" = $version WHERE $version > 0;
            UPDATE gardens SET "Edits" = 1 + max("Edits", $edit);
            UPDATE sqlite_sequence SET seq = max(seq, $last) WHERE name = 'documents';
            DELETE FROM checksums;
            """;
        var own = Math.Min(HighestVersion(connection), Limits.Number / 2);
        var highest = inUse.Version + apart < Limits.Number ? Math.Max(inUse.Version, own) : apart;
        command.Parameters.AddWithValue("$version", inUse.Version == 0 ? 0 : highest + apart);
        var edit = Math.Max(inUse.Edit, LastEdit.Read(_path)?.Edit ?? 0);
        command.Parameters.AddWithValue("$edit", Math.Clamp(edit, 0, LastEdit.Most));
        command.Parameters.AddWithValue("$last", Math.Min(inUse.LastId, Limits.Number));
        command.ExecuteNonQuery();
    }

    private void MoveAside(string aside)
    {
        Tables.Connection.LetGo(_path);
        foreach (var ending in new[] { "-wal", "-shm", "-journal", "" })
        {
            if (File.Exists(_path + ending))
            {
                File.Move(_path + ending, aside + ending);
            }
        }
    }

    // No database at all, or one without any table: its content lies elsewhere, and is kept aside all the same.
    private bool HoldsNothing()
    {
        var start = new byte[16];
        using (var stream = new FileStream(_path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite))
        {
            if (
                stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false) < start.Length
                || !start.AsSpan().SequenceEqual("SQLite format 3\0"u8)
            )
            {
                return true;
            }
        }

        using var connection = SqliteCopy.Open(_path);
        return SqliteLook.Column(connection, "SELECT name FROM sqlite_master").Count == 0;
    }

    /// <summary>Numbers that pages and files of the garden have seen.</summary>
    /// <param name="Version">Highest version of a draft; 0 where no page has seen any.</param>
    /// <param name="Edit">Number of the last edit.</param>
    /// <param name="LastId">Greatest number that a document ever had.</param>
    private readonly record struct Numbers(long Version, long Edit, long LastId);
}
