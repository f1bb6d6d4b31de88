using Dripwright.Store.Backups;
using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>All that one grower keeps: rigs with their drafts and revisions, the own catalogue, parts on hand, settings.</summary>
/// <remarks>
/// Safe to use from many pages at once: each call opens the database for itself. One object for each process, so that
/// <see cref="Watch"/> reaches every page. What the database cannot do is a <see cref="GardenException"/> whose message is
/// for the grower. Decision page: docs/decisions/0005-store.md
/// </remarks>
public sealed partial class Garden : IAsyncDisposable
{
    private readonly Connection _at;
    private readonly TimeProvider _time;
    private readonly Settling? _settling;

    // What all hands share is kept here: the watchers, the catalogue in force, whether the file is an older one.
    private readonly Garden _root;
    private readonly GardenHand _hand;
    private volatile OlderFile? _older;

    private Garden(Connection at, TimeProvider time, OlderFile? older)
    {
        (_root, _hand) = (this, GardenHand.Any);
        _at = at;
        _time = time;
        _older = older;
        if (at.Place.Path is not null)
        {
            _settling = new Settling(at, time);
            at.Committed = _settling.Changed;
        }
    }

    private Garden(Garden root, GardenHand hand)
    {
        (_root, _hand) = (root, hand);
        (_at, _time, _settling) = (root._at, root._time, root._settling);
    }

    /// <summary>Where it is kept.</summary>
    public GardenPlace Place => _at.Place;

    /// <summary>That the file is older than the one that was last used at this place; null where all is well.</summary>
    public OlderFile? Older => _root._older;

    private DateTime Now => Opening.Now(_time);

    private Moment ThisMoment => new(Now, _hand.Who);

    /// <summary>Opens a garden; makes it where there is none; brings the tables of an older one up to date.</summary>
    /// <param name="place">Where it is kept.</param>
    /// <param name="time">The clock; the system's where null.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="GardenException">It cannot be opened; the message says why and what to do.</exception>
    public static async Task<Garden> OpenAsync(
        GardenPlace place,
        TimeProvider? time = null,
        CancellationToken stop = default
    )
    {
        ArgumentNullException.ThrowIfNull(place);
        return await OpenAsync(new Connection(place), time ?? TimeProvider.System, stop).ConfigureAwait(false);
    }

    /// <summary>The same garden in somebody's hand: it does what that may, and what it changes carries the name.</summary>
    /// <remarks>It need not be closed; it ends with the garden that it comes from.</remarks>
    /// <param name="hand">Whose hand.</param>
    public Garden As(GardenHand hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return new Garden(_root, hand);
    }

    internal static async Task<Garden> OpenAsync(Connection at, TimeProvider time, CancellationToken stop)
    {
        await Opening.Ready(at, time, stop).ConfigureAwait(false);
        return new Garden(at, time, at.Place.Path is { } path ? OlderFile.At(path) : null);
    }

    /// <summary>The settings.</summary>
    /// <param name="stop">Asks to stop.</param>
    public Task<GardenSettings> SettingsAsync(CancellationToken stop = default) =>
        _at.Read(async tables =>
            SettingsText.Read((await tables.Gardens.AsNoTracking().SingleAsync(stop).ConfigureAwait(false)).Settings)
        );

    /// <summary>Keeps the settings. The last one to keep them is right: there is no draft of settings.</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="GardenException">The name is empty or too long.</exception>
    public async Task KeepSettingsAsync(GardenSettings settings, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(settings);
        _hand.Need(GardenAct.Edit);
        Refuse(Limits.NameFault(settings.Name));
        var text = SettingsText.Write(settings);
        Refuse(Limits.TextFault(text));
        await _at.Change(
                tables => tables.Gardens.ExecuteUpdateAsync(set => set.SetProperty(row => row.Settings, text), stop),
                stop
            )
            .ConfigureAwait(false);
        Tell(new GardenChange(GardenEvent.Settings, 0, 0));
    }

    /// <summary>Closes the file, so that it can be copied or moved.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_root != this)
        {
            return;
        }

        if (_settling is { } settling)
        {
            await settling.DisposeAsync().ConfigureAwait(false);
        }

        _at.Close();
    }

    private static void Refuse(string? why)
    {
        if (why is not null)
        {
            throw new GardenException(TroubleKind.Refused, why);
        }
    }
}
