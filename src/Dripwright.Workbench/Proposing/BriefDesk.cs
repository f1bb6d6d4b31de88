using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Store;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Proposing;

/// <summary>The brief on one page: what is typed, how it reads, and the keeping of it.</summary>
/// <remarks>All members are called from the page's own thread. A garden keeps its newest brief; it is there after a restart.</remarks>
internal sealed class BriefDesk : IFormDesk, IDisposable
{
    /// <summary>The kind of document under which a garden keeps it.</summary>
    public const string Kind = "brief";

    private readonly SemaphoreSlim _keeping = new(1, 1);
    private readonly Garden _garden;
    private Draft _kept;

    private BriefDesk(Garden garden, Draft kept, PartsCatalogue catalogue)
    {
        _garden = garden;
        _kept = kept;
        Catalogue = catalogue;
        Text = kept.Text;
        Read();
    }

    /// <summary>Told when something to show has changed.</summary>
    public event EventHandler? Changed;

    public PartsCatalogue Catalogue { get; }

    /// <summary>The text as it is on this page.</summary>
    public string Text { get; private set; }

    /// <summary>What came of reading it.</summary>
    public BriefReading Reading { get; private set; } = null!;

    /// <summary>Another page has changed the brief; this page goes on with one of its own.</summary>
    public bool IsApart { get; private set; }

    private JsonObject? Root { get; set; }

    /// <summary>The garden's newest brief, or the first one.</summary>
    public static async Task<BriefDesk> Open(Garden garden)
    {
        var known = await garden.DocumentsAsync(Kind);
        var newest = known.OrderByDescending(entry => entry.Id).FirstOrDefault();
        var draft = newest is null ? null : await garden.DraftAsync(newest.Id);
        draft ??= await garden.AddDocumentAsync(Kind, Words.Of("propose.brief"), "{}");
        return new BriefDesk(garden, draft, (await garden.CatalogueAsync()).Catalogue);
    }

    public JsonNode? At(string path) => FieldPath.Find(Root, path);

    public IEnumerable<Fault> FaultsAt(string path) => Reading.Faults.Where(fault => fault.Path == path);

    public Assumed? AssumedAt(string path) => Reading.Assumed.FirstOrDefault(assumed => assumed.Path == path);

    public Task Edit(string path, JsonNode? value, string what)
    {
        Text = value is null ? RigFileText.Remove(Text, path) : RigFileText.Set(Text, path, value);
        Read();
        Changed?.Invoke(this, EventArgs.Empty);
        return Task.CompletedTask;
    }

    public async Task Keep()
    {
        // A field tells of its change and of being left at once: the second keeping waits for the version of the first.
        await _keeping.WaitAsync();
        try
        {
            await KeepOne();
        }
        finally
        {
            _keeping.Release();
        }
    }

    public void Dispose() => _keeping.Dispose();

    private async Task KeepOne()
    {
        if (Text == _kept.Text)
        {
            return;
        }

        var outcome = await _garden.KeepDraftAsync(_kept.Id, Text, _kept.Version, Words.Of("propose.brief"));
        if (outcome is DraftOutcome.Kept kept)
        {
            _kept = kept.Draft;
        }
        else if (outcome is DraftOutcome.Overtaken or DraftOutcome.Gone)
        {
            // Neither page overwrites the other: what was typed here becomes a brief beside the other.
            _kept = await _garden.AddDocumentAsync(Kind, Words.Of("propose.brief"), Text);
            IsApart = true;
            Changed?.Invoke(this, EventArgs.Empty);
        }
    }

    private void Read()
    {
        Root = RigFileText.Root(Text);
        Reading = BriefReader.Read(Text, Words.Of("propose.brief"), Catalogue);
    }
}
