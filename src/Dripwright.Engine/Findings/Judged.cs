using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Findings;

/// <summary>Makes single findings under the rules of the book, where no <see cref="Judgement"/> collects them.</summary>
internal static class Judged
{
    /// <summary>A finding at one place.</summary>
    /// <inheritdoc cref="By(string, IReadOnlyList{Place}, IReadOnlyList{string}, Phrase, Phrase, Phrase, Phrase, IReadOnlyList{Cure})"/>
    public static Finding By(
        string rule,
        Place place,
        IReadOnlyList<string> fields,
        Phrase what,
        Phrase value,
        Phrase limit,
        Phrase remedy,
        params IReadOnlyList<Cure> cures
    ) => By(rule, [place], fields, what, value, limit, remedy, cures);

    /// <summary>A finding.</summary>
    /// <param name="rule">Key of the rule.</param>
    /// <param name="places">Where, the worst place first.</param>
    /// <param name="fields">Paths of the fields that bear on it, the one that cures it best first.</param>
    /// <param name="what">What is so.</param>
    /// <param name="value">What was judged.</param>
    /// <param name="limit">What it is held against; none where there is nothing to hold it against.</param>
    /// <param name="remedy">What to do.</param>
    /// <param name="cures">Changes that can be tried, the best first.</param>
    /// <exception cref="KeyNotFoundException">There is no such rule.</exception>
    public static Finding By(
        string rule,
        IReadOnlyList<Place> places,
        IReadOnlyList<string> fields,
        Phrase what,
        Phrase value,
        Phrase limit,
        Phrase remedy,
        params IReadOnlyList<Cure> cures
    )
    {
        var from = RuleBook.Rules[rule];
        return new Finding
        {
            Rule = rule,
            Level = from.Level,
            Source = from.Source,
            Places = places,
            Fields = fields,
            What = what,
            Value = value,
            Limit = limit,
            Remedy = remedy,
            Cures = cures,
        };
    }
}
