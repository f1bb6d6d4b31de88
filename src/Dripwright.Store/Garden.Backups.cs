using Dripwright.Language;
using Dripwright.Store.Backups;
using Dripwright.Store.Ground;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store;

/// <summary>A garden's file is older than the one that was last used at its place.</summary>
/// <param name="Found">Number of the last edit in the file.</param>
/// <param name="Known">Number of the last edit that was seen at the place.</param>
/// <param name="KnownAt">When that was noted, UTC.</param>
public sealed record OlderFile(long Found, long Known, DateTime KnownAt)
{
    internal static OlderFile? At(string path)
    {
        if (LastEdit.Read(path) is not { } known)
        {
            return null;
        }

        try
        {
            using var file = SqliteCopy.Open(path);
            var found = LastEdit.In(file);
            return found < known.Edit ? new OlderFile(found, known.Edit, known.At) : null;
        }
        catch (SqliteException)
        {
            // What is wrong with the file is told when it is read for its own sake.
            return null;
        }
    }
}

public sealed partial class Garden
{
    /// <summary>Writes a backup of the whole garden, with steps and bin, while it is in use. One file, complete in itself.</summary>
    /// <remarks>It carries a checksum of all that is in it, and is restored only where that still holds.</remarks>
    /// <param name="path">Where to; nothing may stand there yet.</param>
    /// <param name="replace">Replace what stands there.</param>
    /// <param name="stop">Asks to stop, before it begins.</param>
    /// <exception cref="GardenException">It cannot be written, the garden is on a server, or the hand may not take it away.</exception>
    public Task BackupAsync(string path, bool replace = false, CancellationToken stop = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        _hand.Need(GardenAct.TakeAway);
        var from = FileOf(Place);
        return Task.Run(() => SqliteCopy.Write(from, path, replace, Now), stop);
    }

    /// <summary>Puts a backup in the place of this garden, while pages have it open; see the other overload.</summary>
    /// <param name="copy">The backup.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>Where the replaced garden is kept.</returns>
    public async Task<string?> RestoreAsync(string copy, CancellationToken stop = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(copy);
        _hand.Need(GardenAct.Restore);
        var path = FileOf(Place);
        // Checked before the writer's turn is taken, so that others need not wait for it.
        using var checkedCopy = await Task.Run(() => Restoring.Prepare(copy, path, stop), stop).ConfigureAwait(false);
        var aside = await _at.Alone(() => Task.Run(() => checkedCopy.Replace(Now), stop), stop).ConfigureAwait(false);
        (_root._catalogue, _root._older) = (null, null);
        _settling?.Changed();
        Tell(new GardenChange(GardenEvent.All, 0, 0));
        return aside;
    }

    /// <summary>Puts a backup in the place of a garden, whether that can still be opened or not.</summary>
    /// <remarks>
    /// The backup is checked first: its pages, its checksum, and every row of every table by the rules of a live edit; an older one
    /// is brought up to date. The backup itself stays as it is, and the garden that it replaces is kept beside it.
    /// </remarks>
    /// <param name="place">The garden; it need not be there.</param>
    /// <param name="copy">The backup.</param>
    /// <param name="time">The clock; the system's where null.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>Where the replaced garden is kept; null where there was none.</returns>
    /// <exception cref="GardenException">The backup is not good, or the place cannot be written. Nothing was changed.</exception>
    public static Task<string?> RestoreAsync(
        GardenPlace place,
        string copy,
        TimeProvider? time = null,
        CancellationToken stop = default
    )
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentException.ThrowIfNullOrWhiteSpace(copy);
        var path = FileOf(place);
        return Task.Run(
            async () =>
            {
                using var checkedCopy = await Restoring.Prepare(copy, path, stop).ConfigureAwait(false);
                return checkedCopy.Replace(Opening.Now(time ?? TimeProvider.System));
            },
            stop
        );
    }

    private static string FileOf(GardenPlace place) =>
        place.Path
        ?? throw new GardenException(
            TroubleKind.Refused,
            Words.Of("store.on-server", place),
            null,
            Words.Of("store.on-server.page")
        );
}
