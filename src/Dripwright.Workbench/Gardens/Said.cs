using Dripwright.Language;
using Dripwright.Store;

namespace Dripwright.Workbench.Gardens;

/// <summary>What came of saving, in the words of the page.</summary>
internal static class Said
{
    /// <summary>Class of the notice, and its text.</summary>
    public static (string Class, string Text) Of(RevisionOutcome outcome) =>
        outcome switch
        {
            RevisionOutcome.Saved saved => ("good", Words.Of("garden.inforce", saved.Revision.Number)),
            RevisionOutcome.Unchanged same => ("care", Words.Of("revisions.same", same.Newest.Number)),
            RevisionOutcome.Faulty faulty => ("stop", Words.Count("garden.faulty", faulty.Faults.Count)),
            RevisionOutcome.Overtaken => ("stop", Words.Of("garden.overtaken")),
            RevisionOutcome.Refused refused => ("stop", refused.Why),
            _ => ("stop", Words.Of("garden.gone")),
        };
}
