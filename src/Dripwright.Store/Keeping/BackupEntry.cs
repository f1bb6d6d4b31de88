namespace Dripwright.Store.Keeping;

/// <summary>A backup that was made by the calendar, or when asked for.</summary>
/// <param name="Name">Name of its file.</param>
/// <param name="MadeAt">When, UTC.</param>
/// <param name="Bytes">[bytes] Its size.</param>
/// <param name="Fault">Why it could not be made, or not be restored on trial; null for a good one.</param>
/// <param name="SecondFault">The same for the one in the second place; null where that is good, or none is named.</param>
/// <param name="IsAtSecond">Whether there is one in the second place.</param>
public sealed record BackupEntry(
    string Name,
    DateTime MadeAt,
    long Bytes,
    string? Fault,
    string? SecondFault,
    bool IsAtSecond
)
{
    /// <summary>It was restored on trial, and all of it was there.</summary>
    public bool IsGood => Fault is null;
}

/// <summary>How it stands with the backups of a garden.</summary>
/// <param name="LastGood">When the last good one was made, UTC; null where there is none.</param>
/// <param name="Age">How old it is; null where there is none.</param>
/// <param name="IsOld">There is none, or it is older than <see cref="BackupFolder.Old"/>.</param>
/// <param name="Fault">What was wrong with the last one; null where it is good, or there is none.</param>
/// <param name="SecondFault">What was wrong with the last one in the second place; null where all is well or no place is named.</param>
/// <param name="HasSecond">Whether a second place is named.</param>
/// <param name="All">All that there are, the newest first.</param>
public sealed record BackupStatus(
    DateTime? LastGood,
    TimeSpan? Age,
    bool IsOld,
    string? Fault,
    string? SecondFault,
    bool HasSecond,
    IReadOnlyList<BackupEntry> All
);
