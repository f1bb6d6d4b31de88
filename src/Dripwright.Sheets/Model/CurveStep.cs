namespace Dripwright.Sheets.Model;

/// <summary>One piece of a <see cref="Curve"/>.</summary>
public abstract record CurveStep
{
    /// <summary>Start a new line here.</summary>
    /// <param name="To">Where.</param>
    public sealed record Move(Point To) : CurveStep;

    /// <summary>A straight piece.</summary>
    /// <param name="To">Where to.</param>
    public sealed record Straight(Point To) : CurveStep;

    /// <summary>A cubic Bézier piece.</summary>
    /// <param name="Control1">First control point.</param>
    /// <param name="Control2">Second control point.</param>
    /// <param name="To">Where to.</param>
    public sealed record Cubic(Point Control1, Point Control2, Point To) : CurveStep;

    /// <summary>Back to the last move.</summary>
    public sealed record Close : CurveStep;
}
