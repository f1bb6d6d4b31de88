using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Standard scales for rigs, down to those for very long rows.</summary>
internal static class Scales
{
    // ISO 5455 (from memory).
    private static readonly Scale[] s_smallMetric =
    [
        .. new[] { 500, 1000, 2000, 5000, 10000, 20000, 50000, 100000 }.Select(n => new Scale(
            n,
            "1:" + Wording.Count(n)
        )),
    ];

    // A US architect's, then an engineer's scale ruler: common practice.
    private static readonly Scale[] s_smallUs =
    [
        new(384, "¹⁄₃₂ in = 1 ft (1:384)"),
        .. new[] { 50, 100, 200, 500, 1000, 5000, 10000 }.Select(feet => new Scale(
            feet * 12,
            $"1 in = {Wording.Count(feet)} ft"
        )),
    ];

    /// <summary>All scales a view may take, largest first.</summary>
    public static IReadOnlyList<Scale> Of(UnitSystem units) =>
        units == UnitSystem.Us ? [.. Scale.UnitedStates, .. s_smallUs] : [.. Scale.Metric, .. s_smallMetric];

    /// <summary>The drawing's own words for the system of units.</summary>
    public static Drawing.Units UnitsOf(UnitSystem units) =>
        units == UnitSystem.Us ? Drawing.Units.UnitedStates : Drawing.Units.Metric;

    /// <summary>How views lie to one another in the reader's part of the world.</summary>
    public static Projection ProjectionOf(UnitSystem units) =>
        units == UnitSystem.Us ? Projection.ThirdAngle : Projection.FirstAngle;

    /// <summary>The view at the largest scale at which it fits.</summary>
    public static View Fit(Extent extent, Box box, UnitSystem units) => View.Fit(extent, box, Of(units));
}
