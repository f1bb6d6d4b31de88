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

/// <summary>One thing the plan has to say.</summary>
/// <param name="Rule">Key of the rule that speaks, lower case with dashes.</param>
/// <param name="Level">How grave.</param>
/// <param name="Place">Where, in the grower's words: "row 2, pot 7", "drain of row 1".</param>
/// <param name="Field">Path of the rig file's field that cures it best, such as <c>feed.line</c>.</param>
/// <param name="What">What is so, in one sentence with its value in the rig's units.</param>
/// <param name="Value">The value judged, with unit.</param>
/// <param name="Limit">The limit it is held against, with unit.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Source">Whose rule it is, or "common practice".</param>
public sealed record Finding(
    string Rule,
    FindingLevel Level,
    string Place,
    string Field,
    string What,
    string Value,
    string Limit,
    string Remedy,
    string Source
);
