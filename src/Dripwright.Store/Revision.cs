using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Store.Ground;

namespace Dripwright.Store;

/// <summary>A text that was saved for good. It read without a fault when it was saved, and never changes.</summary>
/// <param name="DocumentId">The document.</param>
/// <param name="Number">From 1, without gaps.</param>
/// <param name="At">When, UTC.</param>
/// <param name="Who">Who saved it; may be empty.</param>
/// <param name="Note">Why, in the grower's words; may be empty.</param>
/// <param name="Text">The text exactly as it was.</param>
public sealed record Revision(int DocumentId, int Number, DateTime At, string Who, string Note, string Text);

/// <summary>A revision with what it changed.</summary>
/// <param name="Revision">The revision.</param>
/// <param name="Changes">What differs from the revision before; empty for the first.</param>
/// <param name="Unread">Why the changes cannot be told (a text that no longer reads); null where they can.</param>
public sealed record RevisionLine(Revision Revision, IReadOnlyList<RigChange> Changes, string? Unread);

/// <summary>What came of saving a revision.</summary>
public abstract record RevisionOutcome
{
    private RevisionOutcome() { }

    /// <summary>It is saved.</summary>
    /// <param name="Revision">The revision.</param>
    public sealed record Saved(Revision Revision) : RevisionOutcome;

    /// <summary>The newest revision says the same, letter for letter: no other was made.</summary>
    /// <param name="Newest">The newest revision.</param>
    public sealed record Unchanged(Revision Newest) : RevisionOutcome;

    /// <summary>The draft has faults; mend them first. The draft stays as it is.</summary>
    /// <param name="Faults">All faults.</param>
    public sealed record Faulty(IReadOnlyList<Fault> Faults) : RevisionOutcome;

    /// <summary>Another page has changed the draft since: nothing was saved.</summary>
    /// <param name="Current">What the other page made of it.</param>
    public sealed record Overtaken(Draft Current) : RevisionOutcome;

    /// <summary>The document is not there any more, or lies in the bin.</summary>
    public sealed record Gone : RevisionOutcome;

    /// <summary>The note or name cannot be kept: nothing was saved.</summary>
    /// <param name="Why">One sentence for the grower.</param>
    public sealed record Refused(string Why) : RevisionOutcome;
}
