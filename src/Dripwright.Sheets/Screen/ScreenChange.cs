namespace Dripwright.Sheets.Screen;

/// <summary>What happened to a part.</summary>
public enum ChangeKind
{
    /// <summary>It is new.</summary>
    Added,

    /// <summary>It is gone; the drawing after the edit does not hold it.</summary>
    Removed,

    /// <summary>It is as before, at another place.</summary>
    Moved,

    /// <summary>It is built or planted otherwise; it may have moved too.</summary>
    Changed,
}

/// <summary>A part that an edit changed.</summary>
/// <param name="Part">Its name, as in <c>data-part</c>.</param>
/// <param name="Kind">What happened to it.</param>
public sealed record ScreenChange(string Part, ChangeKind Kind);
