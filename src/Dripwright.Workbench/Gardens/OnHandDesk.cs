using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Gardens;

/// <summary>Parts on hand of the whole garden on one page.</summary>
/// <remarks>The garden keeps the list alone; here it stands in a rig file that has nothing else, so that the same inputs serve.</remarks>
internal sealed class OnHandDesk : FormDesk
{
    private const string Before = "{ \"onHand\":\n";
    private const string After = "\n}";

    private RigReading? _reading;

    private OnHandDesk(Garden garden, Draft kept, PartsCatalogue catalogue)
        : base(garden, kept, catalogue) => Put(Before + kept.Text + After);

    /// <summary>Another page changed the list since; the next keeping puts this page's over it.</summary>
    public bool IsOvertaken { get; private set; }

    protected override string Name => Words.Of("garden.onhand");

    protected override string Document =>
        Text.StartsWith(Before, StringComparison.Ordinal) && Text.EndsWith(After, StringComparison.Ordinal)
            ? Text[Before.Length..^After.Length]
            : (At("onHand")?.ToJsonString() ?? "[]");

    protected override IReadOnlyList<Fault> Faults => _reading!.Faults;

    protected override IReadOnlyList<Assumed> Assumptions => _reading!.Assumed;

    /// <summary>Opens the garden's list.</summary>
    public static async Task<OnHandDesk> Open(Garden garden) =>
        new(garden, await garden.OnHandDraftAsync(), (await garden.CatalogueAsync()).Catalogue);

    /// <summary>Puts the list in force.</summary>
    public async Task<RevisionOutcome> Save(string who)
    {
        await Keep();
        return IsOvertaken
            ? new RevisionOutcome.Overtaken(Kept)
            : await Garden.SaveRevisionAsync(Kept.Id, Kept.Version, who, "");
    }

    protected override void Read() => _reading = RigReader.Read(Text, Name, Catalogue);

    protected override Task Came(DraftOutcome outcome)
    {
        IsOvertaken = outcome is DraftOutcome.Overtaken;
        Kept = outcome switch
        {
            DraftOutcome.Kept kept => kept.Draft,
            DraftOutcome.Overtaken overtaken => overtaken.Current,
            _ => Kept,
        };
        return Task.CompletedTask;
    }
}
