using Dripwright.Store.Ground;

namespace Dripwright.Store;

/// <summary>A document in a list, without its text.</summary>
/// <param name="Id">The document; it stays the same for good and may stand in an address.</param>
/// <param name="Kind">What kind of document; see <see cref="DocumentKinds"/>.</param>
/// <param name="Name">What the grower calls it.</param>
/// <param name="Version">Version of its draft.</param>
/// <param name="ChangedAt">When its draft last changed, UTC.</param>
/// <param name="Revisions">How many revisions are saved.</param>
/// <param name="RemovedAt">When it went into the bin, UTC; null for one that is in use.</param>
/// <param name="ChangedBy">Who changed it last, by name or by putting it into the bin too; empty where nobody said who they are.</param>
public sealed record DocumentEntry(
    int Id,
    string Kind,
    string Name,
    int Version,
    DateTime ChangedAt,
    int Revisions,
    DateTime? RemovedAt,
    string ChangedBy
);
