using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Writing;

/// <summary>The lines and dots of the pattern fills, the same in every writer.</summary>
internal static class PatternLines
{
    public const double DotRadius = 0.22;

    /// <summary>[mm] Distance of lines or dots.</summary>
    public static double Pitch(FillPattern pattern) =>
        pattern switch
        {
            FillPattern.CrossHatch => 2.4,
            FillPattern.Levels => 1.5,
            FillPattern.Dots => 1.6,
            _ => 1.8,
        };

    /// <summary>Lines that cover an area; they overhang and need clipping.</summary>
    public static IEnumerable<(Point From, Point To)> Over(Box area, FillPattern pattern)
    {
        double[] angles = pattern switch
        {
            FillPattern.Levels => [0],
            FillPattern.Hatch => [-45],
            FillPattern.BackHatch => [45],
            FillPattern.CrossHatch => [-45, 45],
            _ => [],
        };
        var pitch = Pitch(pattern);
        foreach (var angle in angles)
        {
            var turned = Box.Around(area.Corners.Select(corner => corner.Turn(-angle)));
            for (var row = Math.Floor(turned.Y / pitch); row * pitch <= turned.Bottom; row++)
            {
                var y = (row + 0.5) * pitch;
                yield return (new Point(turned.X, y).Turn(angle), new Point(turned.Right, y).Turn(angle));
            }
        }
    }

    /// <summary>Dots that cover an area.</summary>
    public static IEnumerable<Point> DotsOver(Box area)
    {
        var pitch = Pitch(FillPattern.Dots);
        for (var row = Math.Floor(area.Y / pitch); row * pitch <= area.Bottom; row++)
        {
            for (var column = Math.Floor(area.X / pitch); column * pitch <= area.Right; column++)
            {
                yield return new((column + 0.5) * pitch, (row + 0.5) * pitch);
            }
        }
    }
}
