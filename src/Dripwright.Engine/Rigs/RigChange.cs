namespace Dripwright.Engine.Rigs;

/// <summary>One thing that differs between two rigs.</summary>
/// <param name="Path">Path of the field in the later rig, such as <c>rows[0].spacing</c>.</param>
/// <param name="Where">Where that is, in the grower's words: "row 1, spacing".</param>
/// <param name="Before">What it was, as a person would write it; null where there was nothing.</param>
/// <param name="After">What it is now; null where there is nothing any more.</param>
public sealed record RigChange(string Path, string Where, string? Before, string? After)
{
    /// <summary>The change in one line: <c>row 1, spacing: 12 in → 14 in</c>.</summary>
    public override string ToString() =>
        (Before, After) switch
        {
            (null, { } after) => $"{Where}: {after} (new)",
            ({ } before, null) => $"{Where}: {before} (taken away)",
            _ => $"{Where}: {Before} → {After}",
        };
}
