using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Findings;

/// <summary>Collects findings.</summary>
internal sealed class Judgement(UnitSystem units)
{
    private readonly List<Finding> _findings = [];

    /// <summary>Values and limits in the rig's units.</summary>
    public QuantityWords Words { get; } = new(units);

    /// <summary>What was found, the gravest first; among equals in the order found.</summary>
    /// <remarks>What is to be said alike of several places is said once, with all the places.</remarks>
    public IReadOnlyList<Finding> Findings =>
        [
            .. _findings
                .GroupBy(f => (f.Rule, f.What, f.Value, f.Limit, f.Remedy))
                .Select(same => same.First() with { Places = [.. same.SelectMany(f => f.Places).Distinct()] })
                .OrderBy(f => f.Level),
        ];

    /// <summary>Adds a finding under a rule of the book.</summary>
    /// <param name="rule">Key of the rule.</param>
    /// <param name="place">Where.</param>
    /// <param name="field">Path of the field that cures it best; empty where there is none.</param>
    /// <param name="what">What is so.</param>
    /// <param name="value">What was judged.</param>
    /// <param name="limit">What it is held against.</param>
    /// <param name="remedy">What to do.</param>
    /// <param name="cures">Changes that can be tried, the best first.</param>
    public void Add(
        string rule,
        Place place,
        string field,
        Phrase what,
        Phrase value,
        Phrase limit,
        Phrase remedy,
        params IReadOnlyList<Cure> cures
    )
    {
        Rule from = RuleBook.Rules[rule];
        _findings.Add(
            new Finding
            {
                Rule = rule,
                Level = from.Level,
                Source = from.Source,
                Places = [place],
                Fields = field.Length > 0 ? [field] : [],
                What = what,
                Value = value,
                Limit = limit,
                Remedy = remedy,
                Cures = cures,
            }
        );
    }

    /// <summary>Adds a finding whose words are spelt out already.</summary>
    public void Add(string rule, string place, string field, string what, string value, string limit, string remedy) =>
        Add(
            rule,
            new Place(Phrase.Plain(place)),
            field,
            Phrase.Plain(what),
            Phrase.Plain(value),
            Phrase.Plain(limit),
            Phrase.Plain(remedy)
        );

    /// <summary>Adds what was found elsewhere under rules of the book.</summary>
    public void Add(IEnumerable<Finding> findings) => _findings.AddRange(findings);
}
