using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>Turns values into places of the plot's area.</summary>
internal sealed record PlotFrame(Box Area, (double Low, double High) X, (double Low, double High) Y)
{
    public Point this[double x, double y] =>
        new(
            Area.X + ((x - X.Low) / (X.High - X.Low) * Area.Width),
            Area.Bottom - ((y - Y.Low) / (Y.High - Y.Low) * Area.Height)
        );

    public bool Holds((double X, double Y) value) =>
        double.IsFinite(value.X)
        && double.IsFinite(value.Y)
        && Area.Holds(new(this[value.X, value.Y].X, this[value.X, value.Y].Y, 0, 0), 1e-6);
}
