namespace Dripwright.Engine.Water;

/// <summary>Where the head at an emitter lies against what its maker vouches for.</summary>
public enum EmitterRange
{
    /// <summary>No head over the outlet: nothing flows.</summary>
    NoFlow,

    /// <summary>A compensating emitter that has not opened: it drips, unevenly.</summary>
    BelowOpening,

    /// <summary>Within the range.</summary>
    Working,

    /// <summary>Above the highest head the maker states; the law is carried on and the answer doubtful.</summary>
    AboveHighest,
}
