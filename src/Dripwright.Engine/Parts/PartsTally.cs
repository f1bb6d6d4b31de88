using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Parts;

/// <summary>Pieces being counted, by catalogue key, in the order in which they first turn up.</summary>
internal sealed class PartsTally
{
    private readonly Dictionary<string, Counted> _byKey = new(StringComparer.Ordinal);
    private readonly List<Counted> _inOrder = [];

    public IReadOnlyList<Counted> Counted => _inOrder;

    /// <summary>Adds pieces of a part.</summary>
    /// <param name="key">Catalogue key.</param>
    /// <param name="count">Pieces; zero or less adds nothing.</param>
    /// <param name="where">What they are for.</param>
    /// <param name="spareShare">[-] Spares kept, as a share.</param>
    /// <param name="spares">Spares kept, as a number.</param>
    /// <param name="note">What to mind.</param>
    /// <param name="own">Name and section of a thing that is the grower's own and in no catalogue.</param>
    public void Add(
        string key,
        int count,
        Phrase where,
        double spareShare = 0,
        int spares = 0,
        Phrase? note = null,
        OwnPart? own = null
    )
    {
        if (count <= 0)
        {
            return;
        }

        if (!_byKey.TryGetValue(key, out var counted))
        {
            counted = new Counted(key);
            _byKey.Add(key, counted);
            _inOrder.Add(counted);
        }

        counted.Needed += count;
        counted.Own ??= own;
        counted.SpareShare = Math.Max(counted.SpareShare, spareShare);
        counted.SpareCount = Math.Max(counted.SpareCount, spares);
        if (!counted.Where.Contains(where))
        {
            counted.Where.Add(where);
        }

        if (note is not null)
        {
            counted.Note = note;
        }
    }

    /// <summary>Pieces of a part so far.</summary>
    /// <param name="key">Catalogue key.</param>
    public int Of(string key) => _byKey.TryGetValue(key, out var counted) ? counted.Needed : 0;
}

/// <summary>A thing of the grower's own that is in no catalogue.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Section">Section of the shop in which its like stands.</param>
internal sealed record OwnPart(Phrase Name, string Section);

/// <summary>One part being counted.</summary>
internal sealed class Counted(string key)
{
    public string Key => key;

    public OwnPart? Own { get; set; }

    public int Needed { get; set; }

    public double SpareShare { get; set; }

    public int SpareCount { get; set; }

    public List<Phrase> Where { get; } = [];

    public Phrase Note { get; set; } = Phrase.None;

    /// <summary>Spares by share, rounded up, or by number, whichever is more.</summary>
    public int Spares => Math.Max(SpareCount, RoundedUp(SpareShare * Needed));

    // A tenth of ten is one, whatever the binary fraction says.
    private static int RoundedUp(double count) => (int)Math.Ceiling(count - 1e-9);
}
