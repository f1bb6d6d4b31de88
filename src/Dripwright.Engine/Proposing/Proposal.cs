using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Proposing;

/// <summary>A rig proposed for a brief. It passes every rule: nothing in its plan is to stop or to mend.</summary>
/// <param name="Rig">The rig; <see cref="RigWriter"/> makes its file.</param>
/// <param name="Plan">Its plan, without the draws.</param>
/// <param name="Cost">What is to be bought, in <paramref name="Currency"/>, as far as it has a price.</param>
/// <param name="Currency">USD where all prices are typical ones; empty where any is the user's own.</param>
/// <param name="LinesUnpriced">Lines to buy that have no price and are not in the cost.</param>
/// <param name="Uniformity">[-] Design emission uniformity, manufacture counted.</param>
/// <param name="Mark">[-] Highest of <see cref="UniformityMarks"/> for which it is the cheapest.</param>
/// <param name="Proven">True where no rig that was left unexamined can be cheaper at its marks.</param>
/// <param name="Title">What it is, in one line.</param>
/// <param name="Why">What it does better and what it gives up beside the one before it.</param>
public sealed record Proposal(
    Rig Rig,
    Plan Plan,
    decimal Cost,
    string Currency,
    int LinesUnpriced,
    double Uniformity,
    double Mark,
    bool Proven,
    Phrase Title,
    Phrase Why
);

/// <summary>Why nothing, or not what was asked, can be proposed, and what would help.</summary>
/// <param name="What">What stands in the way, with its value and limit.</param>
/// <param name="Remedy">Which limit relaxed by how much would help.</param>
public sealed record Obstacle(Phrase What, Phrase Remedy);

/// <summary>What was searched and what was not.</summary>
/// <param name="Planned">Rigs planned in full.</param>
/// <param name="Placed">Arrangements of pots, pipes and tank that were placed in the room.</param>
/// <param name="Unexamined">Rigs left unexamined that might have been better somewhere; 0 when the search is complete.</param>
/// <param name="LeastCostUnexamined">None of these can cost less; null when the search is complete.</param>
/// <param name="Stopped">True when a stop was asked for.</param>
public sealed record SearchReport(int Planned, int Placed, long Unexamined, decimal? LeastCostUnexamined, bool Stopped)
{
    /// <summary>True when nothing was left that might have been better.</summary>
    public bool Complete => Unexamined == 0;
}

/// <summary>The answer to a brief.</summary>
/// <param name="Proposals">Cheapest first, each more even than the one before; empty where nothing passes.</param>
/// <param name="Obstacles">What stood in the way; empty where something is proposed.</param>
/// <param name="Remarks">What was assumed where the brief does not say or cannot be followed.</param>
/// <param name="Search">What was searched.</param>
public sealed record ProposalList(
    IReadOnlyList<Proposal> Proposals,
    IReadOnlyList<Obstacle> Obstacles,
    IReadOnlyList<Phrase> Remarks,
    SearchReport Search
)
{
    /// <summary>The units the brief asks for.</summary>
    public UnitSystem Units { get; init; }
}

/// <summary>How much may be searched.</summary>
public sealed record ProposeOptions
{
    /// <summary>Most rigs planned in full.</summary>
    public int MostPlans { get; init; } = 2000;

    /// <summary>Most arrangements placed in the room.</summary>
    public int MostPlacings { get; init; } = 3000;
}

/// <summary>How far a search has come.</summary>
/// <param name="Planned">Rigs planned in full.</param>
/// <param name="Placed">Arrangements placed.</param>
/// <param name="Found">Rigs kept so far.</param>
/// <param name="Share">[-] Of what may be searched at most; a search often ends earlier.</param>
public sealed record ProposeProgress(int Planned, int Placed, int Found, double Share);
