using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Findings;

/// <summary>Collects findings.</summary>
internal sealed class Judgement
{
    private readonly List<Finding> _findings = [];

    /// <summary>False where nobody asks what would cure: a rule need not try anything.</summary>
    public bool Proposes { get; init; } = true;

    /// <summary>What was found, the gravest first; among equals in the order found.</summary>
    /// <remarks>What is to be said alike of several places is said once, with all the places.</remarks>
    public IReadOnlyList<Finding> Findings => [.. AlikeFindings.Joined(_findings).OrderBy(f => f.Level)];

    /// <summary>Adds a finding under a rule of the book.</summary>
    /// <param name="rule">Key of the rule.</param>
    /// <param name="places">Where, the worst place first.</param>
    /// <param name="fields">Paths of the fields that bear on it, the one that cures it best first.</param>
    /// <param name="what">What is so.</param>
    /// <param name="value">What was judged.</param>
    /// <param name="limit">What it is held against; none where there is nothing to hold it against.</param>
    /// <param name="remedy">What to do.</param>
    /// <param name="cures">Changes that cure it, the best first.</param>
    public void Add(
        string rule,
        IReadOnlyList<Place> places,
        IReadOnlyList<string> fields,
        Phrase what,
        Phrase value,
        Phrase limit,
        Phrase remedy,
        params IReadOnlyList<Cure> cures
    ) => _findings.Add(Judged.By(rule, places, fields, what, value, limit, remedy, cures));

    /// <summary>Adds what was found elsewhere under rules of the book.</summary>
    public void Add(IEnumerable<Finding> findings) => _findings.AddRange(findings);
}
