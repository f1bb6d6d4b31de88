using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Plots;

/// <summary>One plot of how the water runs, as the sheets and the screen show it.</summary>
internal sealed record RigPlot
{
    /// <summary>Short name for files and places on a page: "pump", "line-F1".</summary>
    public required string Key { get; init; }

    /// <summary>Heading.</summary>
    public required string Title { get; init; }

    /// <summary>What it shows, where the plot is so wide and high [mm]; "" where the heading says it all.</summary>
    public Func<double, double, string> Words { get; init; } = (_, _) => "";

    /// <summary>The plots, from the top down; they share the height. None where there are only numbers.</summary>
    public required IReadOnlyList<Plot> Plots { get; init; }

    /// <summary>Key numbers with their units.</summary>
    public required IReadOnlyList<(string What, string Value)> Numbers { get; init; }

    /// <summary>The numbers behind the plots.</summary>
    public PlotTable Data { get; init; } = new([], []);
}
