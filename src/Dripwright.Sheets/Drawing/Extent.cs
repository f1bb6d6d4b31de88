namespace Dripwright.Sheets.Drawing;

/// <summary>The part of the world that a view shows: metres, X to the right, Y up.</summary>
/// <param name="Left">[m] Smallest X.</param>
/// <param name="Low">[m] Smallest Y.</param>
/// <param name="Right">[m] Largest X.</param>
/// <param name="High">[m] Largest Y.</param>
public sealed record Extent(double Left, double Low, double Right, double High)
{
    /// <summary>[m] From left to right.</summary>
    public double Width => Right - Left;

    /// <summary>[m] From low to high.</summary>
    public double Height => High - Low;
}
