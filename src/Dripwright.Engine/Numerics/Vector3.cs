namespace Dripwright.Engine.Numerics;

/// <summary>A place, way, direction, force, moment or turn in three dimensions.</summary>
/// <remarks>
/// In the room: X along the rows from their left end, Y across them from the front of the room to the back, Z up from the floor under
/// the reservoir. In the frame of a printed part: X to the right on the printer's bed, Y to its back, Z up from it.
/// </remarks>
/// <param name="X">[any] Along the rows; to the right on the bed.</param>
/// <param name="Y">[any] Across the rows; to the back of the bed.</param>
/// <param name="Z">[any] Up.</param>
public readonly record struct Vector3(double X, double Y, double Z)
{
    /// <summary>[-] Straight up.</summary>
    public static Vector3 Up => new(0, 0, 1);

    /// <summary>[any] Its length, in its own unit.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y) + (Z * Z));

    /// <summary>[m] Straight distance to another place.</summary>
    /// <param name="other">The other place.</param>
    public double DistanceTo(Vector3 other) => (this - other).Length;

    /// <summary>[any] Scalar product, in the product of both units.</summary>
    /// <param name="other">Other factor.</param>
    public double Dot(Vector3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product, right-handed.</summary>
    /// <param name="other">Right factor.</param>
    public Vector3 Cross(Vector3 other) =>
        new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>The same way, one long.</summary>
    /// <exception cref="InvalidOperationException">The vector has no length.</exception>
    public Vector3 Unit() =>
        Length > 1e-12 ? (1 / Length) * this : throw new InvalidOperationException("A direction needs a length.");

    /// <summary>From one place to another.</summary>
    /// <param name="from">Start.</param>
    /// <param name="to">End.</param>
    public static Vector3 Between(Vector3 from, Vector3 to) => to - from;

    /// <summary>Sum.</summary>
    /// <param name="a">One.</param>
    /// <param name="b">Other.</param>
    public static Vector3 operator +(Vector3 a, Vector3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    /// <param name="a">One.</param>
    /// <param name="b">Other.</param>
    public static Vector3 operator -(Vector3 a, Vector3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>Opposite.</summary>
    /// <param name="a">One.</param>
    public static Vector3 operator -(Vector3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Multiple.</summary>
    /// <param name="factor">[-] Factor.</param>
    /// <param name="a">Vector.</param>
    public static Vector3 operator *(double factor, Vector3 a) => new(factor * a.X, factor * a.Y, factor * a.Z);
}
