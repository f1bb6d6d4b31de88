using System.Text.Json.Nodes;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Screen;
using Dripwright.Store;

namespace Dripwright.Workbench.Editing;

/// <summary>One rig on one page: the text being edited, its plan, and the keeping of it.</summary>
/// <remarks>
/// All members are called from the page's own thread; what takes time goes on in the background and comes back to it.
/// What is typed is in the text at once, in the garden a moment later. While a fault stands the last good plan stays.
/// </remarks>
public sealed class RigDesk : IFormDesk, IAsyncDisposable
{
    /// <summary>A stand that takes longer is told later than all else; one of ten pots takes less, and nothing flickers.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromMilliseconds(250);

    private readonly Garden _garden;
    private readonly PlanQueue _queue;
    private readonly TimeSpan _keepAfter;
    private readonly SemaphoreSlim _keeping = new(1, 1);
    private CancellationTokenSource? _planning;
    private CancellationTokenSource? _waiting;
    private string _what = "";
    private string _planned = "";

    private RigDesk(Garden garden, PlanQueue queue, TimeSpan keepAfter, Draft draft, PartsCatalogue catalogue)
    {
        _garden = garden;
        _queue = queue;
        _keepAfter = keepAfter;
        Kept = draft;
        Text = draft.Text;
        Catalogue = catalogue;
    }

    /// <summary>Told when something to show has changed.</summary>
    public event EventHandler? Changed;

    /// <summary>The draft as the garden has it, the last we know.</summary>
    public Draft Kept { get; private set; }

    /// <summary>The text as it is on this page.</summary>
    public string Text { get; private set; }

    /// <summary>The parts that can be named.</summary>
    public PartsCatalogue Catalogue { get; private set; }

    /// <summary>Parts that lie in the garden, for every rig.</summary>
    public IReadOnlyList<OnHand> Shelf { get; private set; } = [];

    /// <summary>Number of the newest saved revision; 0 where there is none.</summary>
    public int Revision { get; private set; }

    /// <summary>The text as nodes; null where it is no JSON object.</summary>
    public JsonObject? Root { get; private set; }

    /// <summary>What came of reading the text; null until the first reading.</summary>
    public RigReading? Reading { get; private set; }

    /// <summary>The last good plan; null until there is one. Without the strength of its stands while that is being worked out.</summary>
    public Plan? Plan { get; private set; }

    /// <summary>The plan to draw: a moment ahead of <see cref="Plan"/>, and not judged to the end.</summary>
    public Plan? Sketch { get; private set; }

    /// <summary>True while the strength of the stands is still being worked out, and with it what the plan has to say of them.</summary>
    public bool IsStandOpen { get; private set; }

    /// <summary>Why a rig without fault cannot be planned; null where it can.</summary>
    public string? Lacking { get; private set; }

    /// <summary>What the last edit changed in the drawing.</summary>
    public IReadOnlyList<ScreenChange> Changes { get; private set; } = [];

    /// <summary>True while a plan is being made.</summary>
    public bool IsPlanning { get; private set; }

    /// <summary>What another page made of the rig while this one was typing; null where there is no such conflict.</summary>
    public Draft? Other { get; private set; }

    /// <summary>The rig has been thrown away on another page.</summary>
    public bool IsGone { get; private set; }

    /// <summary>Why the last text could not be kept; null where it could. It stays on the page, and is tried again.</summary>
    public string? Refused { get; private set; }

    /// <summary>Told when a page's own work in the background failed. Gives the number under which the log tells of it.</summary>
    internal Func<Exception, string> Failed { get; init; } = _ => "–";

    /// <summary>Units to show; those of the rig where null.</summary>
    public UnitSystem? Units { get; private set; }

    /// <summary>True when the plan shown is not that of the text: a fault stands in it.</summary>
    public bool IsStale => Reading is { Faults.Count: > 0 } || Lacking is not null;

    /// <summary>True while something typed is not yet in the garden.</summary>
    public bool IsUnkept => Text != Kept.Text;

    /// <summary>Opens a rig; null where there is none of that number.</summary>
    internal static async Task<RigDesk?> Open(
        Garden garden,
        PlanQueue queue,
        int id,
        UnitSystem? units,
        TimeSpan keepAfter,
        Func<Exception, string>? failed = null
    )
    {
        if (await garden.DraftAsync(id) is not { Kind: DocumentKinds.Rig } draft)
        {
            return null;
        }

        var catalogue = await garden.CatalogueAsync();
        var desk = new RigDesk(garden, queue, keepAfter, draft, catalogue.Catalogue)
        {
            Units = units,
            Failed = failed ?? (_ => "–"),
        };
        desk.Root = RigFileText.Root(desk.Text);
        await desk.Fetch();
        return desk;
    }

    /// <summary>Faults at a path or, for a list or section, at itself.</summary>
    /// <param name="path">The path.</param>
    public IEnumerable<Fault> FaultsAt(string path) => Reading?.Faults.Where(fault => fault.Path == path) ?? [];

    /// <summary>What is assumed at a path; null where the file says it.</summary>
    /// <param name="path">The path.</param>
    public Assumed? AssumedAt(string path) => Reading?.Assumed.FirstOrDefault(assumed => assumed.Path == path);

    /// <summary>What stands at a path in the text.</summary>
    /// <param name="path">The path.</param>
    public JsonNode? At(string path) => FieldPath.Find(Root, path);

    /// <summary>Puts a value at a path, or takes it away.</summary>
    /// <param name="path">The path.</param>
    /// <param name="value">The value; null to leave it to the plan.</param>
    /// <param name="what">What that is, for the list of steps.</param>
    public Task Edit(string path, JsonNode? value, string what) =>
        Write(value is null ? RigFileText.Remove(Text, path) : RigFileText.Set(Text, path, value), what);

    /// <summary>Puts another text in the place of the whole.</summary>
    /// <param name="text">The text.</param>
    /// <param name="what">What that is, for the list of steps.</param>
    public async Task Write(string text, string what)
    {
        if (text == Text)
        {
            return;
        }

        if (IsUnkept && what != _what)
        {
            // Another field: what was typed in the last one is a step of its own.
            await Keep();
        }

        Text = text;
        _what = what;
        KeepSoon();
        await Replan();
    }

    /// <summary>Shows other units. Nothing in the rig changes.</summary>
    /// <param name="units">Units to show.</param>
    public Task Show(UnitSystem units)
    {
        Units = units;
        return Replan();
    }

    Task IFormDesk.Keep() => Keep();

    /// <summary>Keeps what was typed now. False where that failed: then it stays on the page, which says why.</summary>
    public async Task<bool> Keep()
    {
        _waiting?.Cancel();
        await _keeping.WaitAsync();
        var isWell = true;
        try
        {
            if (!IsUnkept || IsGone || Other is not null)
            {
                return true;
            }

            Took(await _garden.KeepDraftAsync(Kept.Id, Text, Kept.Version, _what));
        }
#pragma warning disable CA1031 // Whatever it is: what was typed must not go down with the page.
        catch (Exception why)
#pragma warning restore CA1031
        {
            isWell = false;
            Refused = why is GardenException trouble ? trouble.ForPage : Words.Of("kept.failed", Failed(why));
        }
        finally
        {
            _keeping.Release();
        }

        Tell();
        return isWell;
    }

    /// <summary>Goes back one step.</summary>
    public Task Undo() => Step(_garden.UndoAsync);

    /// <summary>Goes forward again.</summary>
    public Task Redo() => Step(_garden.RedoAsync);

    /// <summary>In a conflict: what stands on this page. The other page's stays one step back.</summary>
    public async Task TakeMine()
    {
        if (Other is { } other)
        {
            Kept = other;
            Other = null;
            await Keep();
        }
    }

    /// <summary>In a conflict: what the other page made. What stands here stays one step back.</summary>
    public async Task TakeOther()
    {
        if (Other is not { } other)
        {
            return;
        }

        Kept = other;
        Other = null;
        if (!await Keep())
        {
            return;
        }

        Text = other.Text;
        _what = Words.Of("conflict.step");
        await Keep();
        await Replan();
    }

    /// <summary>Saves a revision.</summary>
    /// <param name="who">Who.</param>
    /// <param name="note">Why.</param>
    public async Task<RevisionOutcome> SaveRevision(string who, string note)
    {
        return await Keep()
            ? await _garden.SaveRevisionAsync(Kept.Id, Kept.Version, who, note)
            : new RevisionOutcome.Refused(Refused!);
    }

    /// <summary>Gives the rig another name in the list.</summary>
    /// <param name="name">The name.</param>
    public Task<bool> Rename(string name) => _garden.RenameAsync(Kept.Id, name);

    /// <summary>Another page kept something. Call it from this page's thread.</summary>
    /// <param name="change">What happened.</param>
    public async Task Heard(GardenChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        if (change.Event is GardenEvent.Revision or GardenEvent.All && await Fetch())
        {
            await Replan();
        }

        var isOurs = change.DocumentId == Kept.Id || change.Event is GardenEvent.All;
        if (!isOurs || (change.Event is GardenEvent.Draft && change.Version <= Kept.Version))
        {
            return;
        }

        // A keeping of our own may just be on its way back.
        await _keeping.WaitAsync();
        Draft? now;
        try
        {
            now = await _garden.DraftAsync(Kept.Id);
        }
        finally
        {
            _keeping.Release();
        }

        if (now is null)
        {
            IsGone = true;
        }
        else if (now.Version != Kept.Version)
        {
            if (IsUnkept && now.Text != Text)
            {
                Other = now;
            }
            else
            {
                Kept = now;
                await Take(now.Text);
            }
        }
        else
        {
            Kept = now;
        }

        Tell();
    }

    /// <summary>Reads and plans the text anew.</summary>
    public async Task Replan()
    {
        var stop = await Restart();
        var text = Text;
        Root = RigFileText.Root(text);
        IsPlanning = true;
        try
        {
            var quick = await _queue.Draw(text, Kept.Name, Catalogue, Shelf, Units, stop.Token);
            stop.Token.ThrowIfCancellationRequested();
            Took(quick);
            Tell();
            if (quick.Plan is { } plan)
            {
                await Complete(plan, text, stop.Token);
            }
        }
        catch (OperationCanceledException)
        {
            // A later edit has its own plan.
        }

        if (ReferenceEquals(stop, _planning))
        {
            IsPlanning = false;
            IsStandOpen = false;
            Tell();
        }
    }

    private static int Pots(Plan plan) => Math.Max(1, plan.Layout.Rows.Sum(row => row.Pots.Count));

    private static int Draws(Plan plan) => SpreadDraws.For(Pots(plan));

    // What the first answer leaves out: the stands at once, the draws when the typing rests.
    private async Task Complete(Plan plan, string text, CancellationToken stop)
    {
        var standing = _queue.Complete(plan, 0, stop);
        if (await Task.WhenAny(standing, Task.Delay(s_patience, stop)) != standing)
        {
            stop.ThrowIfCancellationRequested();
            (Plan, _planned, IsStandOpen) = (plan, text, true);
            Tell();
        }

        var whole = await standing;
        stop.ThrowIfCancellationRequested();
        (Plan, _planned, IsStandOpen) = (whole, text, false);
        Tell();

        await Task.Delay(TimeSpan.FromMilliseconds(Math.Clamp(Pots(whole) * 20, 400, 4000)), stop);
        whole = await _queue.Complete(whole, Draws(whole), stop);
        stop.ThrowIfCancellationRequested();
        (Plan, Changes) = (whole, []);
    }

    /// <summary>The plan with all that belongs to it, also where the page has not come so far yet, and the text it is of; null where there is none.</summary>
    /// <param name="stop">Asks to stop.</param>
    public async Task<(Plan Plan, string Text)?> Whole(CancellationToken stop)
    {
        var (plan, text) = (Plan, _planned);
        return plan is null ? null : (await _queue.Complete(plan, Draws(plan), stop), text);
    }

    /// <summary>Keeps what is not kept yet.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_planning is not null)
        {
            await _planning.CancelAsync();
        }

        await Keep();
        _waiting?.Dispose();
        _planning?.Dispose();
        _keeping.Dispose();
    }

    /// <summary>Makes the draft what it was at a step of its history; Undo takes that back.</summary>
    /// <param name="number">The step.</param>
    public Task GoToStep(int number) => Step((id, version, stop) => _garden.GoToStepAsync(id, number, version, stop));

    // What the garden holds besides the rig's own text. True where the plan may be another with it.
    private async Task<bool> Fetch()
    {
        var catalogue = (await _garden.CatalogueAsync()).Catalogue;
        var shelf = await _garden.OnHandAsync();
        var entry = (await _garden.RigsAsync()).FirstOrDefault(rig => rig.Id == Kept.Id);
        Revision = entry?.Revisions ?? Revision;
        var isOther = !ReferenceEquals(catalogue, Catalogue) || !shelf.SequenceEqual(Shelf);
        (Catalogue, Shelf) = (catalogue, shelf);
        return isOther;
    }

    private async Task Step(Func<int, int, CancellationToken, Task<DraftOutcome>> step)
    {
        if (!await Keep() || Other is not null)
        {
            return;
        }

        Took(await step(Kept.Id, Kept.Version, default));
        await Take(Kept.Text);
    }

    private async Task Take(string text)
    {
        if (text != Text)
        {
            Text = text;
            await Replan();
        }
        else
        {
            Tell();
        }
    }

    private void Took(DraftOutcome outcome)
    {
        Refused = (outcome as DraftOutcome.Refused)?.Why;
        IsGone = outcome is DraftOutcome.Gone;
        Kept = outcome is DraftOutcome.Kept kept ? kept.Draft : Kept;
        Other = (outcome as DraftOutcome.Overtaken)?.Current;
    }

    private void Took(Draught drawn)
    {
        Reading = drawn.Reading;
        Lacking = drawn.Lacking;
        if (drawn.Plan is { } plan)
        {
            Changes = Sketch is { } before ? ScreenView.Changes(before, plan) : [];
            Sketch = plan;
        }
    }

    private async Task<CancellationTokenSource> Restart()
    {
        if (_planning is { } before)
        {
            await before.CancelAsync();
        }

        return _planning = new CancellationTokenSource();
    }

    private async void KeepSoon()
    {
        _waiting?.Cancel();
        var waiting = _waiting = new CancellationTokenSource();
        try
        {
            await Task.Delay(_keepAfter, waiting.Token);
            await Keep();
        }
        catch (OperationCanceledException)
        {
            // Typing goes on, or it is kept already.
        }
        catch (ObjectDisposedException)
        {
            // The page was closed meanwhile; closing keeps.
        }
    }

    private void Tell() => Changed?.Invoke(this, EventArgs.Empty);
}
