using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Strength.Frame;

/// <summary>A force, moment, shift, turn or direction in the axes of the room.</summary>
/// <param name="X">[any] Along the rows.</param>
/// <param name="Y">[any] Across the rows, to the back.</param>
/// <param name="Z">[any] Up.</param>
public readonly record struct Vector3(double X, double Y, double Z)
{
    /// <summary>[any] Its length, in the unit of its parts.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y) + (Z * Z));

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

    /// <summary>From one place to another.</summary>
    /// <param name="from">Start.</param>
    /// <param name="to">End.</param>
    public static Vector3 Between(Point3 from, Point3 to) => new(to.X - from.X, to.Y - from.Y, to.Z - from.Z);

    /// <summary>[any] Scalar product, in the units of both multiplied.</summary>
    /// <param name="other">Other factor.</param>
    public double Dot(Vector3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product.</summary>
    /// <param name="other">Right factor.</param>
    public Vector3 Cross(Vector3 other) =>
        new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));
}
