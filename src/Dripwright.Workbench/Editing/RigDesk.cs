using System.Text.Json.Nodes;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Curing;
using Dripwright.Engine.Files;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language.Report;
using Dripwright.Sheets.Screen;
using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Work;

namespace Dripwright.Workbench.Editing;

/// <summary>One rig on one page: its text as it is kept, and what is planned from it.</summary>
/// <remarks>All members are called from the page's own thread; what takes time goes on in the background and comes back to it.</remarks>
public sealed class RigDesk : IFormDesk, IAsyncDisposable
{
    private readonly Garden _garden;
    private readonly DraftKeeping _keeping;
    private readonly RigPlanning _planning;
    private readonly PageWork _work;

    private RigDesk(Garden garden, DraftKeeping keeping, RigPlanning planning, PartsCatalogue catalogue, PageWork work)
    {
        (_garden, _keeping, _planning, Catalogue, _work) = (garden, keeping, planning, catalogue, work);
        Root = RigFileText.Root(keeping.Text);
        keeping.Changed += Tell;
        planning.Changed += Tell;
    }

    /// <summary>Told when something to show has changed.</summary>
    public event EventHandler? Changed;

    /// <summary>The draft as the garden has it, the last we know.</summary>
    public Draft Kept => _keeping.Kept;

    /// <summary>The text as it is on this page.</summary>
    public string Text => _keeping.Text;

    /// <summary>The text as nodes; null where it is no JSON object.</summary>
    public JsonObject? Root { get; private set; }

    /// <summary>The parts that can be named.</summary>
    public PartsCatalogue Catalogue { get; private set; }

    /// <summary>Parts that lie in the garden, for every rig.</summary>
    public IReadOnlyList<OnHand> OnHand { get; private set; } = [];

    /// <summary>Number of the newest saved revision; 0 where there is none.</summary>
    public int Revision { get; private set; }

    /// <summary>Units to show; those of the rig where null.</summary>
    public UnitSystem? Units { get; private set; }

    /// <inheritdoc cref="DraftKeeping.Other"/>
    public Draft? Other => _keeping.Other;

    /// <inheritdoc cref="DraftKeeping.IsGone"/>
    public bool IsGone => _keeping.IsGone;

    /// <inheritdoc cref="DraftKeeping.Refused"/>
    public string? Refused => _keeping.Refused;

    /// <inheritdoc cref="DraftKeeping.IsUnkept"/>
    public bool IsUnkept => _keeping.IsUnkept;

    /// <inheritdoc cref="RigPlanning.Reading"/>
    public RigReading? Reading => _planning.Reading;

    /// <inheritdoc cref="RigPlanning.Plan"/>
    public Plan? Plan => _planning.Plan;

    /// <inheritdoc cref="RigPlanning.Sketch"/>
    public Plan? Sketch => _planning.Sketch;

    /// <inheritdoc cref="RigPlanning.IsStandOpen"/>
    public bool IsStandOpen => _planning.IsStandOpen;

    /// <inheritdoc cref="RigPlanning.Changes"/>
    public IReadOnlyList<ScreenChange> Changes => _planning.Changes;

    /// <inheritdoc cref="RigPlanning.IsPlanning"/>
    public bool IsPlanning => _planning.IsPlanning;

    /// <summary>True when the plan shown is not that of the text: a fault stands in it.</summary>
    public bool IsStale => Reading is { Faults.Count: > 0 };

    /// <summary>Opens a rig; null where there is none of that number.</summary>
    /// <param name="garden">The garden that keeps it.</param>
    /// <param name="work">Where it is planned.</param>
    /// <param name="id">Its number.</param>
    /// <param name="units">Units to show; those of the rig where null.</param>
    /// <param name="keepAfter">How long after the last letter it is kept.</param>
    /// <param name="failed">Told when the page's own work in the background failed. Gives the number under which the log tells of it.</param>
    internal static async Task<RigDesk?> Open(
        Garden garden,
        PageWork work,
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

        var keeping = new DraftKeeping(garden, draft, keepAfter, failed ?? (_ => "–"));
        var catalogue = (await garden.CatalogueAsync()).Catalogue;
        var desk = new RigDesk(garden, keeping, new RigPlanning(work), catalogue, work) { Units = units };
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
    public Task Write(string text, string what) => Follow(_keeping.Write(text, what));

    /// <summary>The proven cures of one finding; nothing of them is worked out before somebody asks.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="finding">Its finding.</param>
    /// <param name="progress">Told how far it has come.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">The stop was asked for, or the page is gone.</exception>
    internal Task<IReadOnlyList<Cure>> Cures(
        Plan plan,
        Finding finding,
        IProgress<PlanProgress> progress,
        CancellationToken stop
    ) => _work.Search(over => ProvenCures.Of(plan, finding, new CureOptions { Stop = over }, progress), stop);

    /// <summary>What a cure does: the rig with it planned anew. Nothing is changed; null where it makes no rig.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="finding">Its finding.</param>
    /// <param name="cure">The cure.</param>
    internal Task<ToldChange?> Try(Plan plan, Finding finding, Cure cure) =>
        _work.Run(
            token =>
                CureTrial.Of(plan, finding, cure, new PlanOptions { Draws = 0, Stop = token }).After is { } after
                    ? CureWords.Of(plan, after, cure)
                    : null,
            CancellationToken.None
        );

    /// <summary>Makes the changes of a cure in the text, as one step.</summary>
    /// <param name="cure">The cure.</param>
    /// <param name="what">What it is, for the list of steps.</param>
    internal Task Take(Cure cure, string what) =>
        Write(CureText.Applied(Text, cure), Language.Words.Of("cures.took", what));

    /// <summary>Looks for changes after which nothing is left to stop or mend.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="progress">Told how far it has come.</param>
    /// <param name="stop">Asks to stop; what was found so far is the answer.</param>
    internal Task<Repair> Repair(Plan plan, IProgress<PlanProgress> progress, CancellationToken stop) =>
        _work.Search(
            over =>
            {
                using var either = CancellationTokenSource.CreateLinkedTokenSource(over, stop);
                return MakeItWork.Of(plan, new RepairOptions { Stop = either.Token }, progress);
            },
            CancellationToken.None
        );

    /// <summary>Shows other units. Nothing in the rig changes.</summary>
    /// <param name="units">Units to show.</param>
    public Task Show(UnitSystem units)
    {
        Units = units;
        return Replan();
    }

    Task IFormDesk.Keep() => Keep();

    /// <summary>Keeps what was typed now. False where that failed: then it stays on the page, which says why.</summary>
    public Task<bool> Keep() => _keeping.Keep();

    /// <summary>Goes back one step.</summary>
    public Task Undo() => Follow(_keeping.Step(_garden.UndoAsync));

    /// <summary>Goes forward again.</summary>
    public Task Redo() => Follow(_keeping.Step(_garden.RedoAsync));

    /// <summary>Makes the draft what it was at a step of its history; Undo takes that back.</summary>
    /// <param name="number">The step.</param>
    public Task GoToStep(int number) =>
        Follow(_keeping.Step((id, version, stop) => _garden.GoToStepAsync(id, number, version, stop)));

    /// <summary>In a conflict: what stands on this page. The other page's stays one step back.</summary>
    public Task TakeMine() => _keeping.TakeMine();

    /// <summary>In a conflict: what the other page made. What stands here stays one step back.</summary>
    public Task TakeOther() => Follow(_keeping.TakeOther());

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
        if (isOurs && !(change.Event is GardenEvent.Draft && change.Version <= Kept.Version))
        {
            await Follow(_keeping.Heard());
        }
    }

    /// <summary>Reads and plans the text anew.</summary>
    public Task Replan()
    {
        Root = RigFileText.Root(Text);
        return _planning.Replan(Text, Kept.Name, Catalogue, OnHand, Units);
    }

    /// <inheritdoc cref="RigPlanning.Whole"/>
    public Task<(Plan Plan, string Text)?> Whole(CancellationToken stop) => _planning.Whole(stop);

    /// <summary>Keeps what is not kept yet.</summary>
    public async ValueTask DisposeAsync()
    {
        await _planning.DisposeAsync();
        await _keeping.DisposeAsync();
    }

    // Where the text became another one, the plan follows.
    private async Task Follow(Task<bool> change)
    {
        if (await change)
        {
            await Replan();
        }
    }

    // What the garden holds besides the rig's own text. True where the plan may be another with it.
    private async Task<bool> Fetch()
    {
        var catalogue = (await _garden.CatalogueAsync()).Catalogue;
        var onHand = await _garden.OnHandAsync();
        var entry = (await _garden.RigsAsync()).FirstOrDefault(rig => rig.Id == Kept.Id);
        Revision = entry?.Revisions ?? Revision;
        var isOther = !ReferenceEquals(catalogue, Catalogue) || !onHand.SequenceEqual(OnHand);
        (Catalogue, OnHand) = (catalogue, onHand);
        return isOther;
    }

    private void Tell(object? sender, EventArgs e) => Changed?.Invoke(this, e);
}
