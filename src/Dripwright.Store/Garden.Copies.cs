namespace Dripwright.Store;

public sealed partial class Garden
{
    /// <summary>Writes a copy of the whole garden, with steps and bin, while it is in use. One file, complete in itself.</summary>
    /// <param name="path">Where to; nothing may stand there yet.</param>
    /// <param name="replace">Replace what stands there.</param>
    /// <param name="stop">Asks to stop, before it begins.</param>
    /// <exception cref="GardenException">It cannot be written, or the garden is on a server.</exception>
    public Task CopyToAsync(string path, bool replace = false, CancellationToken stop = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var from = FileOf(Place);
        return Task.Run(() => SqliteCopy.Write(from, path, replace), stop);
    }

    /// <summary>Puts a copy in the place of this garden, while pages have it open; see the other overload.</summary>
    /// <param name="copy">The copy.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>Where the replaced garden is kept.</returns>
    public async Task<string?> BringBackAsync(string copy, CancellationToken stop = default)
    {
        var aside = await _at.Alone(() => BringBackAsync(Place, copy, _time, stop), stop).ConfigureAwait(false);
        _catalogue = null;
        Tell(new GardenChange(GardenEvent.All, 0, 0));
        return aside;
    }

    /// <summary>Puts a copy in the place of a garden, whether that can still be opened or not.</summary>
    /// <remarks>
    /// The copy is checked first: whole, readable, of tables that this program knows; an older one is brought up to date. The
    /// copy itself stays as it is, and the garden that it replaces is kept beside it.
    /// </remarks>
    /// <param name="place">The garden; it need not be there.</param>
    /// <param name="copy">The copy.</param>
    /// <param name="time">The clock; the system's where null.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>Where the replaced garden is kept; null where there was none.</returns>
    /// <exception cref="GardenException">The copy is not good, or the place cannot be written. Nothing was changed.</exception>
    public static Task<string?> BringBackAsync(
        GardenPlace place,
        string copy,
        TimeProvider? time = null,
        CancellationToken stop = default
    )
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentException.ThrowIfNullOrWhiteSpace(copy);
        var path = FileOf(place);
        return Task.Run(() => BringingBack.Run(copy, path, time ?? TimeProvider.System, stop), stop);
    }

    /// <summary>Takes away the mark that a broken-off change of the tables left. Only when no other Dripwright is at work on it.</summary>
    /// <param name="place">The garden.</param>
    /// <returns>False where there was no such mark.</returns>
    /// <exception cref="GardenException">It is no garden.</exception>
    public static bool Unlock(GardenPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        // On a server the mark ends with the connection that made it.
        return place.Path is { } path && SqliteLook.Unlock(path);
    }

    private static string FileOf(GardenPlace place) =>
        place.Path
        ?? throw new GardenException(
            TroubleKind.Refused,
            $"{place} is copied and brought back with the server's own tools (pg_dump, pg_restore); or hand out a garden file."
        );
}
