using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>
/// One view of a thing on a sheet: turns metres (X to the right, Y up) into mm on paper at a standard scale.
/// </summary>
/// <param name="Scale">Scale.</param>
/// <param name="Origin">Where the world's origin falls on the paper.</param>
public sealed record View(Scale Scale, Point Origin)
{
    /// <summary>The largest standard scale at which the extent fits into the box, in its middle.</summary>
    /// <param name="extent">What to show.</param>
    /// <param name="box">Room on paper, without dimensions.</param>
    /// <param name="scales">Scales to choose from, largest first, such as <see cref="Scale.Metric"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">It fits at none of the scales.</exception>
    public static View Fit(Extent extent, Box box, IReadOnlyList<Scale> scales)
    {
        ArgumentNullException.ThrowIfNull(extent);
        ArgumentNullException.ThrowIfNull(scales);
        var scale =
            scales.FirstOrDefault(s =>
                s.OnPaper(extent.Width) <= box.Width + 1e-9 && s.OnPaper(extent.Height) <= box.Height + 1e-9
            ) ?? throw new ArgumentOutOfRangeException(nameof(extent), extent, "Does not fit at any of the scales.");
        return At(extent, box, scale);
    }

    /// <summary>The extent at a given scale, in the middle of the box, whether it fits or not.</summary>
    /// <param name="extent">What to show.</param>
    /// <param name="box">Room on paper.</param>
    /// <param name="scale">Scale.</param>
    public static View At(Extent extent, Box box, Scale scale)
    {
        ArgumentNullException.ThrowIfNull(extent);
        ArgumentNullException.ThrowIfNull(scale);
        var middle = box.Centre;
        return new(
            scale,
            new(
                middle.X - scale.OnPaper((extent.Left + extent.Right) / 2),
                middle.Y + scale.OnPaper((extent.Low + extent.High) / 2)
            )
        );
    }

    /// <summary>Where a place of the world falls on the paper.</summary>
    /// <param name="x">[m] To the right.</param>
    /// <param name="y">[m] Up.</param>
    public Point this[double x, double y] => new(Origin.X + Scale.OnPaper(x), Origin.Y - Scale.OnPaper(y));

    /// <summary>[mm] A length on paper.</summary>
    /// <param name="metres">[m] The length.</param>
    public double Length(double metres) => Scale.OnPaper(metres);

    /// <summary>An upright rectangle of the world on the paper.</summary>
    /// <param name="x">[m] Left.</param>
    /// <param name="y">[m] Low.</param>
    /// <param name="width">[m] Width.</param>
    /// <param name="height">[m] Height.</param>
    public Box Box(double x, double y, double width, double height) =>
        new(this[x, y].X, this[x, y + height].Y, Length(width), Length(height));
}
