using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Store;
using Dripwright.Store.Ground;

namespace Dripwright.Workbench.Editing;

/// <summary>A short document of the garden on one page: what is typed, how it reads, and the keeping of it.</summary>
/// <remarks>All members are called from the page's own thread.</remarks>
internal abstract class FormDesk : IFormDesk, IDisposable
{
    private readonly SemaphoreSlim _keeping = new(1, 1);
    private JsonObject? _root;

    /// <summary>A desk for a draft.</summary>
    /// <param name="garden">The garden that keeps it.</param>
    /// <param name="kept">The draft.</param>
    /// <param name="catalogue">The parts that can be named.</param>
    protected FormDesk(Garden garden, Draft kept, PartsCatalogue catalogue)
    {
        Garden = garden;
        Kept = kept;
        Catalogue = catalogue;
    }

    /// <summary>Told when something to show has changed.</summary>
    public event EventHandler? Changed;

    public PartsCatalogue Catalogue { get; }

    /// <summary>The text as it is on this page.</summary>
    public string Text { get; private set; } = "";

    /// <summary>The garden that keeps it.</summary>
    protected Garden Garden { get; }

    /// <summary>The draft as the garden has it, the last we know.</summary>
    protected Draft Kept { get; set; }

    /// <summary>What it is called, for faults and for the list of steps.</summary>
    protected abstract string Name { get; }

    /// <summary>That of the text which the garden keeps.</summary>
    protected virtual string Document => Text;

    /// <summary>Faults of the text.</summary>
    protected abstract IReadOnlyList<Fault> Faults { get; }

    /// <summary>What the text leaves out.</summary>
    protected abstract IReadOnlyList<Assumed> Assumptions { get; }

    public JsonNode? At(string path) => FieldPath.Find(_root, path);

    public IEnumerable<Fault> FaultsAt(string path) => Faults.Where(fault => fault.Path == path);

    public Assumed? AssumedAt(string path) => Assumptions.FirstOrDefault(assumed => assumed.Path == path);

    public Task Edit(string path, JsonNode? value, string what)
    {
        Put(value is null ? RigFileText.Remove(Text, path) : RigFileText.Set(Text, path, value));
        Tell();
        return Task.CompletedTask;
    }

    public async Task Keep()
    {
        // A field tells of its change and of being left at once: the second keeping waits for the version of the first.
        await _keeping.WaitAsync();
        try
        {
            if (Document != Kept.Text)
            {
                await Came(await Garden.KeepDraftAsync(Kept.Id, Document, Kept.Version, Name));
            }
        }
        finally
        {
            _keeping.Release();
        }
    }

    public void Dispose() => _keeping.Dispose();

    /// <summary>Takes a text for the one typed.</summary>
    protected void Put(string text)
    {
        Text = text;
        _root = RigFileText.Root(text);
        Read();
    }

    /// <summary>Reads the text anew.</summary>
    protected abstract void Read();

    /// <summary>What came of keeping it.</summary>
    protected abstract Task Came(DraftOutcome outcome);

    /// <summary>Tells that something to show has changed.</summary>
    protected void Tell() => Changed?.Invoke(this, EventArgs.Empty);
}
