using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Proposing;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Proposing;

/// <summary>The brief on one page. A garden keeps its newest brief; it is there after a restart.</summary>
internal sealed class BriefDesk : FormDesk
{
    /// <summary>The kind of document under which a garden keeps it.</summary>
    public const string Kind = GardenHand.Brief;

    private BriefDesk(Garden garden, Draft kept, PartsCatalogue catalogue)
        : base(garden, kept, catalogue) => Put(kept.Text);

    /// <summary>What came of reading it.</summary>
    public BriefReading Reading { get; private set; } = null!;

    /// <summary>Another page has changed the brief; this page goes on with one of its own.</summary>
    public bool IsApart { get; private set; }

    protected override string Name => Words.Of("propose.brief");

    protected override IReadOnlyList<Fault> Faults => Reading.Faults;

    protected override IReadOnlyList<Assumed> Assumptions => Reading.Assumed;

    /// <summary>The garden's newest brief, or the first one.</summary>
    public static async Task<BriefDesk> Open(Garden garden)
    {
        var known = await garden.DocumentsAsync(Kind);
        var newest = known.OrderByDescending(entry => entry.Id).FirstOrDefault();
        var draft = newest is null ? null : await garden.DraftAsync(newest.Id);
        draft ??= await garden.AddDocumentAsync(Kind, Words.Of("propose.brief"), "{}");
        return new BriefDesk(garden, draft, (await garden.CatalogueAsync()).Catalogue);
    }

    protected override void Read() => Reading = BriefReader.Read(Text, Name, Catalogue);

    protected override async Task Came(DraftOutcome outcome)
    {
        if (outcome is DraftOutcome.Kept kept)
        {
            Kept = kept.Draft;
        }
        else if (outcome is DraftOutcome.Overtaken or DraftOutcome.Gone)
        {
            // Neither page overwrites the other: what was typed here becomes a brief beside the other.
            Kept = await Garden.AddDocumentAsync(Kind, Name, Text);
            IsApart = true;
            Tell();
        }
    }
}
