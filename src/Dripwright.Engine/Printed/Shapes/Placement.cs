namespace Dripwright.Engine.Printed.Shapes;

/// <summary>A turn followed by a shift: where the axes of a part's own frame come to lie.</summary>
/// <param name="X">Where the part's x axis points.</param>
/// <param name="Y">Where its y axis points.</param>
/// <param name="Z">Where its z axis points.</param>
/// <param name="Origin">[m] Where its origin lies.</param>
public readonly record struct Placement(Vector3 X, Vector3 Y, Vector3 Z, Vector3 Origin)
{
    /// <summary>Stays where it is.</summary>
    public static Placement None => new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

    /// <summary>Shifted only.</summary>
    /// <param name="by">[m] The shift.</param>
    public static Placement Shifted(Vector3 by) => None with { Origin = by };

    /// <summary>The part's z axis along a direction, its x axis as near as may be to another.</summary>
    /// <param name="z">Where the z axis shall point.</param>
    /// <param name="x">Where the x axis shall point as nearly as it can; not along <paramref name="z"/>.</param>
    /// <param name="origin">[m] Where the origin shall lie.</param>
    /// <exception cref="InvalidOperationException">A direction has no length, or the two are parallel.</exception>
    public static Placement Along(Vector3 z, Vector3 x, Vector3 origin)
    {
        var up = z.Unit();
        var side = (x - (x.Dot(up) * up)).Unit();
        return new(side, up.Cross(side), up, origin);
    }

    /// <summary>Where a point of the part comes to lie.</summary>
    /// <param name="point">[m] In the part's own frame.</param>
    public Vector3 Of(Vector3 point) => Turned(point) + Origin;

    /// <summary>Where a direction of the part comes to point.</summary>
    /// <param name="way">In the part's own frame.</param>
    public Vector3 Turned(Vector3 way) => (way.X * X) + (way.Y * Y) + (way.Z * Z);

    /// <summary>This placement after another one.</summary>
    /// <param name="first">The one that comes first.</param>
    public Placement After(Placement first) => new(Turned(first.X), Turned(first.Y), Turned(first.Z), Of(first.Origin));

    /// <summary>The way back.</summary>
    public Placement Inverse()
    {
        var back = new Placement(new(X.X, Y.X, Z.X), new(X.Y, Y.Y, Z.Y), new(X.Z, Y.Z, Z.Z), default);
        return back with { Origin = back.Turned(-Origin) };
    }
}
