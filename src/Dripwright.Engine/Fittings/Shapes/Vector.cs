namespace Dripwright.Engine.Fittings.Shapes;

/// <summary>A place or a way in the frame of a solid.</summary>
/// <param name="X">[m] To the right on the printer's bed.</param>
/// <param name="Y">[m] To the back of the bed.</param>
/// <param name="Z">[m] Up from the bed.</param>
public readonly record struct Vector(double X, double Y, double Z)
{
    /// <summary>Straight up.</summary>
    public static Vector Up => new(0, 0, 1);

    /// <summary>[m] Length.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>[m²] Scalar product; [m] with a direction, [-] of two.</summary>
    /// <param name="other">The other vector.</param>
    public double Dot(Vector other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product, right-handed.</summary>
    /// <param name="other">The other vector.</param>
    public Vector Cross(Vector other) =>
        new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>The same way, one long.</summary>
    /// <exception cref="InvalidOperationException">The vector has no length.</exception>
    public Vector Unit() =>
        Length > 1e-12 ? (1 / Length) * this : throw new InvalidOperationException("A direction needs a length.");

    /// <summary>Sum.</summary>
    public static Vector operator +(Vector a, Vector b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    public static Vector operator -(Vector a, Vector b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite way.</summary>
    public static Vector operator -(Vector a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Multiple.</summary>
    public static Vector operator *(double factor, Vector a) => new(factor * a.X, factor * a.Y, factor * a.Z);
}
