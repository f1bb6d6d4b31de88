using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Findings;

/// <summary>What a judged value is held against, as most rules say it.</summary>
internal static class Limit
{
    /// <summary>"at least 12 in".</summary>
    public static Phrase AtLeast(Measured value) => Phrase.Of("limit.at-least", value);

    /// <summary>"at most 80 %".</summary>
    public static Phrase AtMost(Measured value) => Phrase.Of("limit.at-most", value);

    /// <summary>"over 14 in".</summary>
    public static Phrase Over(Measured value) => Phrase.Of("limit.over", value);

    /// <summary>"none".</summary>
    public static Phrase None { get; } = Phrase.Of("limit.none");
}
