using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Store;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Gardens;

/// <summary>Parts on hand of the whole garden on one page: what is typed, how it reads, and the keeping of it.</summary>
/// <remarks>The garden keeps the list alone; here it stands in a rig file that has nothing else, so that the same inputs serve.</remarks>
internal sealed class ShelfDesk : IFormDesk, IDisposable
{
    private const string Before = "{ \"onHand\":\n";
    private const string After = "\n}";

    private readonly SemaphoreSlim _keeping = new(1, 1);
    private readonly Garden _garden;
    private Draft _kept;
    private string _text;

    private ShelfDesk(Garden garden, Draft kept, PartsCatalogue catalogue)
    {
        _garden = garden;
        _kept = kept;
        Catalogue = catalogue;
        _text = Before + kept.Text + After;
        Read();
    }

    public PartsCatalogue Catalogue { get; }

    /// <summary>What came of reading it.</summary>
    public RigReading Reading { get; private set; } = null!;

    /// <summary>Another page changed the list since; the next keeping puts this page's over it.</summary>
    public bool IsOvertaken { get; private set; }

    private JsonObject? Root { get; set; }

    private string List =>
        _text.StartsWith(Before, StringComparison.Ordinal) && _text.EndsWith(After, StringComparison.Ordinal)
            ? _text[Before.Length..^After.Length]
            : (Root?["onHand"]?.ToJsonString() ?? "[]");

    /// <summary>Opens the garden's list.</summary>
    public static async Task<ShelfDesk> Open(Garden garden) =>
        new(garden, await garden.OnHandDraftAsync(), (await garden.CatalogueAsync()).Catalogue);

    public JsonNode? At(string path) => FieldPath.Find(Root, path);

    public IEnumerable<Fault> FaultsAt(string path) => Reading.Faults.Where(fault => fault.Path == path);

    public Assumed? AssumedAt(string path) => Reading.Assumed.FirstOrDefault(assumed => assumed.Path == path);

    public Task Edit(string path, JsonNode? value, string what)
    {
        _text = value is null ? RigFileText.Remove(_text, path) : RigFileText.Set(_text, path, value);
        Read();
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
        if (List == _kept.Text)
        {
            return;
        }

        var outcome = await _garden.KeepDraftAsync(_kept.Id, List, _kept.Version, Words.Of("garden.onhand"));
        IsOvertaken = outcome is DraftOutcome.Overtaken;
        _kept = outcome switch
        {
            DraftOutcome.Kept kept => kept.Draft,
            DraftOutcome.Overtaken overtaken => overtaken.Current,
            _ => _kept,
        };
    }

    /// <summary>Puts the list in force.</summary>
    public async Task<RevisionOutcome> Save(string who)
    {
        await Keep();
        return IsOvertaken
            ? new RevisionOutcome.Overtaken(_kept)
            : await _garden.SaveRevisionAsync(_kept.Id, _kept.Version, who, "");
    }

    private void Read()
    {
        Root = RigFileText.Root(_text);
        Reading = RigReader.Read(_text, Words.Of("garden.onhand"), Catalogue);
    }
}
