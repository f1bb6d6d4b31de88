namespace Dripwright.Engine.Printed.Shapes;

/// <summary>Flat outlines drawn out along z from z = 0.</summary>
/// <param name="Loops">Outlines; holes run clockwise.</param>
/// <param name="Height">[m] Over 0.</param>
public sealed record Extrusion(IReadOnlyList<Loop> Loops, double Height) : Solid
{
    /// <summary>Of one outline.</summary>
    /// <param name="loop">The outline.</param>
    /// <param name="height">[m] Over 0.</param>
    public Extrusion(Loop loop, double height)
        : this([loop], height) { }

    /// <inheritdoc/>
    public override double? Volume => Loops.Sum(loop => loop.Area) * Height;

    /// <inheritdoc/>
    public override IEnumerable<Vector3> Outermost =>
        Loops
            .SelectMany(loop => loop.Corners)
            .SelectMany(c => new[] { new Vector3(c.X, c.Y, 0), new Vector3(c.X, c.Y, Height) });
}

/// <summary>Frustum of a pyramid or cone over a convex outline around the z axis, from z = 0.</summary>
/// <remarks>V = h/3 (A₁ + A₂ + √(A₁ A₂)); both ends are the same outline in two sizes, so it is exact.</remarks>
/// <param name="Base">Outline at z = 0, convex, counter-clockwise around the origin.</param>
/// <param name="TopScale">[-] Size of the top outline beside the base, over 0.</param>
/// <param name="Height">[m] Over 0.</param>
public sealed record Taper(Loop Base, double TopScale, double Height) : Solid
{
    /// <inheritdoc/>
    public override double? Volume => Base.Area * Height / 3 * (1 + TopScale + (TopScale * TopScale));

    /// <inheritdoc/>
    public override IEnumerable<Vector3> Outermost =>
        Base.Corners.SelectMany(c =>
            new[] { new Vector3(c.X, c.Y, 0), new Vector3(TopScale * c.X, TopScale * c.Y, Height) }
        );
}

/// <summary>An outline of radius and height turned around the z axis, in flat facets.</summary>
/// <param name="Outline">Corners with x = [m] radius of the circle that the facets touch from outside, y = [m] height.</param>
/// <param name="Sides">Number of facets around.</param>
public sealed record Lathe(Loop Outline, int Sides) : Solid
{
    /// <summary>[-] From the radius of the touched circle to that of the corners.</summary>
    public double CornerScale => 1 / Math.Cos(Math.PI / Sides);

    /// <inheritdoc/>
    /// <remarks>
    /// V = n tan(π/n) ∫ r² dz around the outline: each slice is a regular polygon around its circle. For a straight side
    /// the integral is Δz (r₁² + r₁ r₂ + r₂²)/3.
    /// </remarks>
    public override double? Volume
    {
        get
        {
            double sum = 0;
            for (var i = 0; i < Outline.Corners.Count; i++)
            {
                var a = Outline.Corners[i];
                var b = Outline.Corners[(i + 1) % Outline.Corners.Count];
                sum += (b.Y - a.Y) * ((a.X * a.X) + (a.X * b.X) + (b.X * b.X)) / 3;
            }

            return Sides * Math.Tan(Math.PI / Sides) * sum;
        }
    }

    /// <inheritdoc/>
    public override IEnumerable<Vector3> Outermost =>
        from c in Outline.Corners
        from corner in Loop.Around(Sides, c.X).Corners
        select new Vector3(corner.X, corner.Y, c.Y);
}

/// <summary>Smallest convex solid around others.</summary>
/// <param name="Parts">What it goes around.</param>
public sealed record Hull(IReadOnlyList<Solid> Parts) : Solid
{
    /// <inheritdoc/>
    public override double? Volume => null;

    /// <inheritdoc/>
    /// <remarks>That of the box around it.</remarks>
    public override double MostVolume
    {
        get
        {
            var size = Bounds.Of(this).Size;
            return size.X * size.Y * size.Z;
        }
    }

    /// <inheritdoc/>
    public override IEnumerable<Vector3> Outermost => Parts.SelectMany(part => part.Outermost);
}
