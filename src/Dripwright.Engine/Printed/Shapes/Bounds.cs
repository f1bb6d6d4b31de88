namespace Dripwright.Engine.Printed.Shapes;

/// <summary>The box around a solid, square to the printer's axes.</summary>
/// <param name="Low">[m] Least coordinates.</param>
/// <param name="High">[m] Greatest coordinates.</param>
public readonly record struct Bounds(Vector3 Low, Vector3 High)
{
    /// <summary>[m] Width, depth and height.</summary>
    public Vector3 Size => High - Low;

    /// <summary>Box of a solid.</summary>
    /// <param name="solid">The solid.</param>
    public static Bounds Of(Solid solid)
    {
        var low = new Vector3(double.MaxValue, double.MaxValue, double.MaxValue);
        var high = -low;
        foreach (var p in solid.Outermost)
        {
            low = new(Math.Min(low.X, p.X), Math.Min(low.Y, p.Y), Math.Min(low.Z, p.Z));
            high = new(Math.Max(high.X, p.X), Math.Max(high.Y, p.Y), Math.Max(high.Z, p.Z));
        }

        return new(low, high);
    }
}
