namespace Dripwright.Engine.Layout;

/// <summary>A place in the room.</summary>
/// <param name="X">[m] Along the rows, from the rows' left end to the right.</param>
/// <param name="Y">[m] Across the rows, from the front of the room to the back.</param>
/// <param name="Z">[m] Up, from the floor under the reservoir.</param>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>[m] Straight distance to another place.</summary>
    /// <param name="other">The other place.</param>
    public double DistanceTo(Point3 other)
    {
        double dx = X - other.X;
        double dy = Y - other.Y;
        double dz = Z - other.Z;
        return Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
    }
}
