using Dripwright.Engine.Findings;

namespace Dripwright.Language;

/// <summary>A finding in words, in one language and one system of units.</summary>
/// <param name="Rule">Key of the rule that speaks.</param>
/// <param name="Level">How grave.</param>
/// <param name="Place">Where.</param>
/// <param name="Field">Path of the rig file's field that cures it best; empty where there is none.</param>
/// <param name="What">What is so.</param>
/// <param name="Value">What was judged, with unit.</param>
/// <param name="Limit">What it is held against, with unit.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Source">Whose rule it is, or "common practice".</param>
public sealed record ToldFinding(
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
