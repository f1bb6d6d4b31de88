namespace Dripwright.Engine.Printed;

/// <summary>How a part goes on a printer's bed.</summary>
public enum BedPlace
{
    /// <summary>Square to the bed.</summary>
    Straight,

    /// <summary>Only when turned on the bed by some angle.</summary>
    Slanted,

    /// <summary>Not at all.</summary>
    TooLarge,
}

/// <summary>Whether a part fits the printer.</summary>
/// <param name="Place">How it lies.</param>
/// <param name="TooTall">True where it is taller than the printer prints.</param>
public readonly record struct BedFit(BedPlace Place, bool TooTall)
{
    /// <summary>[m] Room left free all around: the outermost strip of a bed prints badly. Common practice.</summary>
    public const double Margin = 0.005;

    /// <summary>True where the part can be printed.</summary>
    public bool Fits => Place != BedPlace.TooLarge && !TooTall;

    /// <summary>Fit of a part.</summary>
    /// <remarks>
    /// A rectangle p × q, p ≥ q, fits in a × b, a ≥ b, when p ≤ a and q ≤ b, or when p > a, q ≤ b and
    /// b ≥ [2 p q a + (p² - q²) √(p² + q² - a²)] / (p² + q²). Source: W. B. Carver, Amer. Math. Monthly 64, 1957, as told
    /// by J. E. Wetzel, Rectangles in rectangles, Math. Magazine 73, 2000 (from memory, checked by turning in small steps).
    /// </remarks>
    /// <param name="size">[m] Width, depth and height of the part.</param>
    /// <param name="printer">The printer.</param>
    public static BedFit Of(Vector3 size, Printer printer)
    {
        var width = printer.BedWidth - (2 * Margin);
        var depth = printer.BedDepth - (2 * Margin);
        (var a, var b) = (Math.Max(width, depth), Math.Min(width, depth));
        (var p, var q) = (Math.Max(size.X, size.Y), Math.Min(size.X, size.Y));
        var tall = size.Z > printer.Height;
        if (p <= a && q <= b)
        {
            return new(BedPlace.Straight, tall);
        }

        var diagonal = (p * p) + (q * q);
        var slanted =
            p > a
            && q <= b
            && b >= ((2 * p * q * a) + (((p * p) - (q * q)) * Math.Sqrt(diagonal - (a * a)))) / diagonal;
        return new(slanted ? BedPlace.Slanted : BedPlace.TooLarge, tall);
    }
}
