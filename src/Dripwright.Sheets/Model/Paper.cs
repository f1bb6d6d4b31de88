using System.Globalization;

namespace Dripwright.Sheets.Model;

/// <summary>A size of paper, as it lies before the reader.</summary>
/// <param name="Name">Name as printed in the title block, such as "A4".</param>
/// <param name="Width">[mm] Width, above 0.</param>
/// <param name="Height">[mm] Height, above 0.</param>
public sealed record Paper(string Name, double Width, double Height)
{
    /// <summary>A4 upright (ISO 216).</summary>
    public static Paper A4 { get; } = new("A4", 210, 297);

    /// <summary>A3 upright (ISO 216).</summary>
    public static Paper A3 { get; } = new("A3", 297, 420);

    /// <summary>US Letter upright, 8½ × 11 in.</summary>
    public static Paper Letter { get; } = new("Letter", 215.9, 279.4);

    /// <summary>US Tabloid upright, 11 × 17 in.</summary>
    public static Paper Tabloid { get; } = new("Tabloid", 279.4, 431.8);

    /// <summary>The same paper with the long edge along the bottom.</summary>
    public Paper Landscape => Width >= Height ? this : this with { Width = Height, Height = Width };

    /// <summary>The same paper with the short edge along the bottom.</summary>
    public Paper Portrait => Width <= Height ? this : this with { Width = Height, Height = Width };

    // The generated text would name the turned papers, which name theirs, without end.
    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} {Width} × {Height} mm");

    /// <summary>The whole paper.</summary>
    public Box Area => new(0, 0, Width, Height);

    /// <summary>
    /// The frame: 20 mm from the left edge, where the sheet is punched, and 10 mm from the others (ISO 5457, from
    /// memory). Home printers reach it.
    /// </summary>
    public Box Frame => Area.Inset(20, 10, 10, 10);
}
