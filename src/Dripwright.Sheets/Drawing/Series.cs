using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>How a series is drawn.</summary>
public enum SeriesKind
{
    /// <summary>Points joined by straight lines.</summary>
    Line,

    /// <summary>Each value holds until the next point.</summary>
    Step,

    /// <summary>Markers only.</summary>
    Points,

    /// <summary>A bar from zero to each value.</summary>
    Bars,
}

/// <summary>The marker at each point.</summary>
public enum Marker
{
    /// <summary>None.</summary>
    None,

    /// <summary>Filled circle.</summary>
    Dot,

    /// <summary>Open square.</summary>
    Square,

    /// <summary>Open triangle.</summary>
    Triangle,

    /// <summary>Cross.</summary>
    Cross,
}

/// <summary>Values to plot, in the units of the axes.</summary>
/// <param name="Name">What they are; written at the last point.</param>
/// <param name="Points">The values; a value that is no number breaks the line.</param>
/// <param name="Kind">How they are drawn.</param>
public sealed record Series(string Name, IReadOnlyList<(double X, double Y)> Points, SeriesKind Kind = SeriesKind.Line)
{
    /// <summary>Pen; unless told, by order of the series, so that they differ in black and white.</summary>
    public Pen? Pen { get; init; }

    /// <summary>Marker; unless told, by order of the series for points and none for lines.</summary>
    public Marker? Marker { get; init; }

    /// <summary>Fill of bars.</summary>
    public Fill Fill { get; init; } = Fill.Section;

    /// <summary>[-] Width of a bar in the unit of the X axis; 0 for 0.7 of the least distance.</summary>
    public double BarWidth { get; init; }
}

/// <summary>An axis of a plot.</summary>
/// <param name="Label">What it measures with its unit, such as "Flow, L/h".</param>
public sealed record Axis(string Label)
{
    /// <summary>[-] Smallest value; found from the data unless told.</summary>
    public double? Low { get; init; }

    /// <summary>[-] Largest value; found from the data unless told.</summary>
    public double? High { get; init; }

    /// <summary>Names at given values instead of round numbers.</summary>
    public IReadOnlyList<(double Value, string Name)>? Names { get; init; }
}

/// <summary>A filled surface of a plot, such as the allowed range.</summary>
/// <param name="Name">What it means; written at its first corner. "" for nothing.</param>
/// <param name="Outline">Its corners, in the units of the axes; cut off at the edges of the plot.</param>
/// <param name="Fill">Its fill.</param>
public sealed record Region(string Name, IReadOnlyList<(double X, double Y)> Outline, Fill Fill);

/// <summary>A remark on a place of a plot.</summary>
/// <param name="X">[-] Place, in the unit of the X axis.</param>
/// <param name="Y">[-] Place, in the unit of the Y axis.</param>
/// <param name="Words">What it says; line feeds make more lines.</param>
/// <param name="Dx">[mm] Where the text starts, to the right of the place.</param>
/// <param name="Dy">[mm] Where the text stands, below the place (negative: above).</param>
public sealed record PlotNote(double X, double Y, string Words, double Dx = 8, double Dy = -8);
