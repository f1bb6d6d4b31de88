using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Findings;

/// <summary>How grave a finding is.</summary>
public enum FindingLevel
{
    /// <summary>It will fail or hurt.</summary>
    Stop,

    /// <summary>It works badly.</summary>
    Mend,

    /// <summary>Good to know.</summary>
    Note,
}

/// <summary>One thing the plan has to say, as a value: no word in it is spelt out, and no unit is chosen.</summary>
public sealed record Finding
{
    /// <summary>Key of the rule that speaks, lower case with dashes.</summary>
    public required string Rule { get; init; }

    /// <summary>How grave.</summary>
    public required FindingLevel Level { get; init; }

    /// <summary>Whose rule it is, or "common practice".</summary>
    public required string Source { get; init; }

    /// <summary>Where: one place, or several of which the same is to be said.</summary>
    public required IReadOnlyList<Place> Places { get; init; }

    /// <summary>Paths of the rig file's fields that bear on it, the one that cures it best first, such as <c>feed.line</c>.</summary>
    public IReadOnlyList<string> Fields { get; init; } = [];

    /// <summary>What is so, in one sentence.</summary>
    public required Phrase What { get; init; }

    /// <summary>What was judged: a measured value, or a state such as "full".</summary>
    public Phrase Value { get; init; } = Phrase.None;

    /// <summary>What it is held against; none where the rig itself shows it.</summary>
    public Phrase Limit { get; init; } = Phrase.None;

    /// <summary>What to do.</summary>
    public Phrase Remedy { get; init; } = Phrase.None;

    /// <summary>Changes that can be tried, the best first; empty where there is only something to look at.</summary>
    public IReadOnlyList<Cure> Cures { get; init; } = [];

    /// <summary>The field that cures it best; empty where there is none.</summary>
    public string Field => Fields.Count > 0 ? Fields[0] : "";

    /// <summary>
    /// True where another finding is of the same rule at one of the same places: values and the pots that are named may have
    /// changed.
    /// </summary>
    /// <param name="other">A finding of another plan of the same rig.</param>
    public bool IsSaidBy(Finding other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Rule == other.Rule
            && Places.Any(place => other.Places.Any(p => (p.Row, p.Part) == (place.Row, place.Part)));
    }

    /// <summary>Two findings are equal when they say the same of the same places.</summary>
    public bool Equals(Finding? other) =>
        other is not null
        && (Rule, Level, Source) == (other.Rule, other.Level, other.Source)
        && (What, Value, Limit, Remedy).Equals((other.What, other.Value, other.Limit, other.Remedy))
        && Places.SequenceEqual(other.Places)
        && Fields.SequenceEqual(other.Fields)
        && Cures.SequenceEqual(other.Cures);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Rule, What, Value, Places.Count);
}
