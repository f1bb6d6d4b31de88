using Dripwright.Engine.Units;

namespace Dripwright.Sheets.Screen;

/// <summary>How a rig is drawn for a page.</summary>
public sealed record ScreenOptions
{
    /// <summary>For a narrow page: no dimensions, and texts large enough at the width of a hand.</summary>
    public static ScreenOptions Narrow { get; } =
        new()
        {
            Width = 105,
            Height = 110,
            Dimensions = false,
        };

    /// <summary>Units of all figures; those of the rig where null. Nothing but the figures changes.</summary>
    public UnitSystem? Units { get; init; }

    /// <summary>What the colour of the pots says.</summary>
    public ScreenColour Colour { get; init; }

    /// <summary>Row that the front view shows, from 1.</summary>
    public int Row { get; init; } = 1;

    /// <summary>[mm] Width to draw for, 60 or more. Texts are about 3 mm high, so a page of 1280 px reads well at 280.</summary>
    public double Width { get; init; } = 280;

    /// <summary>[mm] Greatest height of the picture without its legend, 60 or more.</summary>
    public double Height { get; init; } = 190;

    /// <summary>Whether dimensions are drawn.</summary>
    public bool Dimensions { get; init; } = true;

    /// <summary>Whether what lines and colours mean is told under the picture.</summary>
    public bool Legend { get; init; } = true;

    /// <summary>Put before every id; the name of the view and a dash where null, so that all three can stand on one page.</summary>
    public string? IdPrefix { get; init; }

    /// <summary>A file that looks right on its own instead of a piece of a page.</summary>
    public bool Standalone { get; init; }
}
