
namespace Dripwright.Store.Ground;

/// <summary>What a document says now: exactly what was typed, faults and all.</summary>
/// <param name="Id">The document.</param>
/// <param name="Kind">What kind of document; see <see cref="DocumentKinds"/>.</param>
/// <param name="Name">What the grower calls it.</param>
/// <param name="Text">The text.</param>
/// <param name="Version">Goes up with every change, undo and redo. Hand it back when keeping the next text.</param>
/// <param name="CanUndo">There is an earlier text to go back to.</param>
/// <param name="CanRedo">There is an undone text to go forward to.</param>
/// <param name="What">What the last change was, in the words given when it was kept.</param>
/// <param name="ChangedAt">When it last changed, UTC.</param>
/// <param name="ChangedBy">Who changed it last, undo and redo too; empty where nobody said who they are.</param>
public sealed record Draft(
    int Id,
    string Kind,
    string Name,
    string Text,
    int Version,
    bool CanUndo,
    bool CanRedo,
    string What,
    DateTime ChangedAt,
    string ChangedBy
);

/// <summary>What came of changing a draft.</summary>
public abstract record DraftOutcome
{
    private DraftOutcome() { }

    /// <summary>It is kept. Also where there was nothing to change: then the version is the old one.</summary>
    /// <param name="Draft">The draft as it is now.</param>
    public sealed record Kept(Draft Draft) : DraftOutcome;

    /// <summary>Another page has changed it since: nothing was done. Show both and let the person choose.</summary>
    /// <param name="Current">What the other page made of it.</param>
    public sealed record Overtaken(Draft Current) : DraftOutcome;

    /// <summary>The document is not there any more, or lies in the bin: nothing was done.</summary>
    public sealed record Gone : DraftOutcome;

    /// <summary>The text cannot be kept: nothing was done.</summary>
    /// <param name="Why">One sentence for the grower.</param>
    public sealed record Refused(string Why) : DraftOutcome;
}
