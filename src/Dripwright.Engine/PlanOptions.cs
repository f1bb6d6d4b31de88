using Dripwright.Engine.Phrases;
using Dripwright.Engine.Water;

namespace Dripwright.Engine;

/// <summary>What to compute beyond the plan proper.</summary>
public sealed record PlanOptions
{
    /// <summary>Draws of manufacture and clogging; 0 leaves them out.</summary>
    public int Draws { get; init; } = 10_000;

    /// <summary>Seed of the draws: the same seed gives the same plan.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>True to compute whether the stands hold.</summary>
    public bool Strength { get; init; } = true;

    /// <summary>True to try what would cure a stand that does not hold: each trial costs as much as the stand itself.</summary>
    public bool Cures { get; init; }

    /// <summary>Asks to stop; heard between stages, and within those that take long.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>
    /// Partial clogging in the draws: so many emitters as the rig says keep between 40 % and 90 % of their passage. One in twenty is
    /// common practice for a season with a clean strainer; no source gives a figure for so small a rig.
    /// </summary>
    internal static Clogging CloggingOf(Rigs.Feed feed) => new(feed.Clogged, 0.4, 0.9);
}

/// <summary>How far a plan has come.</summary>
/// <param name="Stage">What is being done.</param>
/// <param name="Share">[-] From 0 to 1.</param>
public sealed record PlanProgress(Phrase Stage, double Share);
