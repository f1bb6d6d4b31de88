namespace Dripwright.Sheets.Drawing;

/// <summary>How the cells of a column stand.</summary>
public enum Align
{
    /// <summary>Text, from the left; wraps.</summary>
    Left,

    /// <summary>To the right.</summary>
    Right,

    /// <summary>In the middle.</summary>
    Middle,

    /// <summary>Numbers on their decimal point, the unit smaller behind it ("12.5 mm", "1 ½ in"); never wraps.</summary>
    Decimal,

    /// <summary>A box for a pencil; the cell's text is not shown.</summary>
    Tick,
}

/// <summary>A column of a table.</summary>
/// <param name="Header">Its heading; wraps.</param>
/// <param name="Align">How its cells stand.</param>
public sealed record Column(string Header, Align Align = Align.Left);
