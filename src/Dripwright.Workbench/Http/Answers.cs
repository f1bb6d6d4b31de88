using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Store.Keeping;

namespace Dripwright.Workbench.Http;

/// <summary>What checking a rig file gives.</summary>
/// <param name="Sound">The file has no fault.</param>
/// <param name="WouldFail">The rig would fail or hurt: there is a finding of level stop.</param>
/// <param name="Faults">All faults with path, line and column.</param>
/// <param name="Findings">What the plan has to say; empty where there are faults.</param>
/// <param name="Assumed">What the file does not say.</param>
/// <param name="Upgraded">What was done to a file of an older format.</param>
internal sealed record CheckAnswer(
    bool Sound,
    bool WouldFail,
    IReadOnlyList<ToldFault> Faults,
    IReadOnlyList<ToldFinding> Findings,
    IReadOnlyList<Assumed> Assumed,
    IReadOnlyList<string> Upgraded
);

/// <summary>The summary of a plan.</summary>
internal sealed record SummaryAnswer(
    string Title,
    string Sentence,
    IReadOnlyList<KeyFigureGroup> Groups,
    IReadOnlyList<ToldFinding> Findings,
    IReadOnlyList<Assumed> Assumed
);

/// <summary>One sheet of a build pack.</summary>
/// <param name="Number">From 1; fetch it by this number.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Description">The same for a reader who does not see it.</param>
internal sealed record SheetLine(int Number, string Title, string? Description);

/// <summary>One plot of how the water runs.</summary>
/// <param name="Key">Short name; fetch it by this name.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Numbers">Key numbers with their units.</param>
internal sealed record PlotLine(string Key, string Title, IReadOnlyList<PlotNumber> Numbers);

/// <summary>A key number of a plot.</summary>
internal sealed record PlotNumber(string What, string Value);

/// <summary>A rig of the garden, without its text.</summary>
internal sealed record RigAnswer(
    int Id,
    string Name,
    int Version,
    DateTime ChangedAt,
    int Revisions,
    DateTime? RemovedAt,
    string ChangedBy
)
{
    public static RigAnswer Of(DocumentEntry entry) =>
        new(entry.Id, entry.Name, entry.Version, entry.ChangedAt, entry.Revisions, entry.RemovedAt, entry.ChangedBy);
}

/// <summary>A draft after a change, without its text.</summary>
internal sealed record DraftAnswer(
    int Id,
    string Name,
    int Version,
    bool CanUndo,
    bool CanRedo,
    string What,
    DateTime ChangedAt,
    string ChangedBy
)
{
    public static DraftAnswer Of(Draft draft) =>
        new(
            draft.Id,
            draft.Name,
            draft.Version,
            draft.CanUndo,
            draft.CanRedo,
            draft.What,
            draft.ChangedAt,
            draft.ChangedBy
        );
}

/// <summary>A text that the draft once was.</summary>
/// <param name="Number">The step; the numbers grow with time.</param>
/// <param name="At">When, UTC.</param>
/// <param name="What">What was changed.</param>
/// <param name="Who">Who made it; empty where nobody says who they are.</param>
/// <param name="IsNow">The draft stands at it.</param>
internal sealed record StepAnswer(int Number, DateTime At, string What, string Who, bool IsNow);

/// <summary>A saved revision, without its text.</summary>
internal sealed record RevisionAnswer(
    int Number,
    DateTime At,
    string Who,
    string Note,
    IReadOnlyList<RigChange> Changes,
    string? Unread
);

/// <summary>A new name.</summary>
internal sealed record NewName(string Name);

/// <summary>Why a revision is saved.</summary>
/// <param name="Note">Why; may be left out.</param>
/// <param name="Who">Who saves it; where people sign in, their name counts and this does not.</param>
internal sealed record NewRevision(string? Note, string? Who);

/// <summary>The garden as a whole.</summary>
/// <param name="Name">What the grower calls it.</param>
/// <param name="Units">us or metric.</param>
/// <param name="Rigs">How many rigs are in use.</param>
/// <param name="Older">That its file is older than the one that was last used at its place; null where all is well.</param>
internal sealed record GardenAnswer(string Name, string Units, int Rigs, OlderFile? Older);

/// <summary>How much of the disk the garden takes, in bytes.</summary>
/// <param name="Garden">The garden itself.</param>
/// <param name="Beside">Older gardens that are kept beside it.</param>
/// <param name="Backups">Its backups, without those in a second place.</param>
/// <param name="Log">The log.</param>
/// <param name="Free">What is free; null for a garden on a server.</param>
internal sealed record DiskAnswer(long Garden, long Beside, long Backups, long Log, long? Free);

/// <summary>How it stands with the backups.</summary>
/// <param name="LastGood">When the last good one was made, UTC; null where there is none.</param>
/// <param name="IsOld">There is none, or it is older than three days.</param>
/// <param name="Fault">What was wrong with the last one; null where it is good.</param>
/// <param name="SecondFault">What was wrong with the last one in the second place; null where all is well.</param>
/// <param name="Backups">All of them, the newest first.</param>
internal sealed record BackupsAnswer(
    DateTime? LastGood,
    bool IsOld,
    string? Fault,
    string? SecondFault,
    IReadOnlyList<BackupEntry> Backups
)
{
    public static BackupsAnswer Of(BackupStatus status) =>
        new(status.LastGood, status.IsOld, status.Fault, status.SecondFault, status.All);
}

/// <summary>What was deleted for good.</summary>
/// <param name="Deleted">How many.</param>
internal sealed record EmptiedAnswer(int Deleted);

/// <summary>Other settings; what is left out stays as it is.</summary>
/// <param name="Name">What the grower calls the garden.</param>
/// <param name="Units">us or metric.</param>
internal sealed record NewSettings(string? Name, string? Units);

/// <summary>What was imported.</summary>
internal sealed record ImportedAnswer(int Rigs, int Others, IReadOnlyList<string> Remarks);
