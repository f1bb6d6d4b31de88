namespace Dripwright.Files;

/// <summary>How a pack's folder is written; tests use other rules to reach what this machine would never show.</summary>
internal sealed record PackRules
{
    public LockRules Lock { get; init; } = new();

    /// <summary>Whether two folders are exchanged in one step where the system can; else by two renames.</summary>
    public bool Exchanges { get; init; } = true;

    /// <summary>Called when everything is ready and nothing was changed yet.</summary>
    public Action? BeforeChange { get; init; }

    /// <summary>Called when the new pack is in its place and the old one not yet removed.</summary>
    public Action? AfterChange { get; init; }
}
