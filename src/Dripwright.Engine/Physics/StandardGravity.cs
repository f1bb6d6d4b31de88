namespace Dripwright.Engine.Physics;

/// <summary>Standard acceleration of free fall.</summary>
public static class StandardGravity
{
    /// <summary>[m/s²] By definition (3rd CGPM, 1901).</summary>
    public const double Value = 9.80665;
}
