namespace Dripwright.Engine.Printed.Shapes;

/// <summary>One side of a convex outline by where it faces.</summary>
/// <param name="Angle">[rad] Direction in which the side faces, counter-clockwise from x.</param>
/// <param name="Distance">[m] Of the side's line from the origin, in that direction.</param>
public readonly record struct OutlineSide(double Angle, double Distance);

/// <summary>Outlines of bores and grooves, drawn so that they print without support: up is +y.</summary>
public static class Outlines
{
    /// <summary>Facets of a full circle; a multiple of 8, so that one faces each half right angle.</summary>
    public const int Facets = 96;

    /// <summary>The convex outline between sides given in the order of their angles.</summary>
    /// <param name="sides">Three or more sides, each less than half a turn after the one before.</param>
    public static Loop Between(IReadOnlyList<OutlineSide> sides)
    {
        var corners = new Corner[sides.Count];
        for (var i = 0; i < sides.Count; i++)
        {
            var a = sides[i];
            var b = sides[(i + 1) % sides.Count];
            var turn = Math.Sin(b.Angle - a.Angle);
            corners[i] = new(
                ((a.Distance * Math.Sin(b.Angle)) - (b.Distance * Math.Sin(a.Angle))) / turn,
                ((b.Distance * Math.Cos(a.Angle)) - (a.Distance * Math.Cos(b.Angle))) / turn
            );
        }

        return new(corners);
    }

    /// <summary>A square with cut corners around the origin.</summary>
    /// <param name="half">[m] Half its side.</param>
    /// <param name="cut">[m] What is cut off along each side; half times 0.586 gives a regular octagon.</param>
    public static Loop CutSquare(double half, double cut)
    {
        var slant = ((2 * half) - cut) / Math.Sqrt(2);
        return Between([
            .. Enumerable.Range(0, 8).Select(i => new OutlineSide(i * Math.PI / 4, i % 2 == 0 ? half : slant)),
        ]);
    }

    /// <summary>A round bore that lies on its side: over 45° its roof goes straight on and ends in a short flat bridge.</summary>
    /// <param name="radius">[m] Of the bore.</param>
    /// <param name="lift">[m] How far the bridge lies over the circle, for its sag.</param>
    public static Loop LyingBore(double radius, double lift)
    {
        const int eighth = Facets / 8;
        List<OutlineSide> sides = [];
        for (var i = 0; i < Facets; i++)
        {
            if (i <= eighth || i >= 3 * eighth)
            {
                sides.Add(new(2 * Math.PI * i / Facets, radius));
            }
            else if (i == 2 * eighth && lift < (Math.Sqrt(2) - 1) * radius)
            {
                sides.Add(new(Math.PI / 2, radius + lift));
            }
        }

        return Between(sides);
    }

    /// <summary>[m] Width of the bridge in the roof of a lying round bore.</summary>
    /// <param name="radius">[m] Of the bore.</param>
    /// <param name="lift">[m] How far the bridge lies over the circle.</param>
    public static double Bridge(double radius, double lift) =>
        Math.Max(0, 2 * ((Math.Sqrt(2) * radius) - radius - lift));

    /// <summary>The part of a groove for a round or square bar that lies in a block, the block's face being x = 0 and the
    /// block on the side of +x.</summary>
    /// <param name="round">True for a round bar.</param>
    /// <param name="half">[m] Radius of the bar, or half its side.</param>
    /// <param name="depth">[m] How deep it lies in the block, less than <paramref name="half"/>.</param>
    /// <param name="past">[m] How far the outline goes out of the face, so that a cut is clean.</param>
    /// <param name="lying">True for a groove that is printed lying: its roof, at +y, never leans over more than 45°.</param>
    public static Loop Groove(bool round, double half, double depth, double past, bool lying)
    {
        // Angles of the sides around a point on the face; the bar's axis lies before the face by the rise.
        var rise = round ? half - depth : 0;
        List<OutlineSide> sides = [new(Math.PI, past)];
        if (!round)
        {
            sides.Add(new(1.5 * Math.PI, half));
            sides.Add(new(2 * Math.PI, depth));
            sides.Add(lying ? new(2.25 * Math.PI, (half + depth) / Math.Sqrt(2)) : new(2.5 * Math.PI, half));
            return Between(sides);
        }

        // Facets that touch the bar only before the face are left out.
        const int quarter = Facets / 4;
        var edge = Math.Acos(rise / half);
        var last = (int)Math.Floor(edge * Facets / (2 * Math.PI));
        for (var i = -last; i <= (lying ? quarter / 2 : last); i++)
        {
            var angle = 2 * Math.PI * i / Facets;
            if (Math.Abs(i) < quarter)
            {
                sides.Add(new((2 * Math.PI) + angle, half - (rise * Math.Cos(angle))));
            }
        }

        return Between(sides);
    }
}
