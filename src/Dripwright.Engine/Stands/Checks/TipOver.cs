namespace Dripwright.Engine.Stands.Checks;

/// <summary>Whether a stand falls over as a whole.</summary>
/// <param name="Restoring">[N·m] Moment that keeps it on its feet.</param>
/// <param name="Overturning">[N·m] Moment that tips it.</param>
/// <param name="ToFront">True where it would fall to the front.</param>
public sealed record TipCheck(double Restoring, double Overturning, bool ToFront)
{
    /// <summary>[-] Restoring over overturning; null where nothing tips it.</summary>
    public double? Factor => Overturning > 0 ? Restoring / Overturning : null;
}

/// <summary>Statics of tipping.</summary>
/// <remarks>Method page: docs/methods/stand-checks.md</remarks>
public static class TipOver
{
    /// <summary>[-] Restoring over overturning moment below which a stand is to be tied to a wall. Common practice.</summary>
    public const double LeastFactor = 1.5;

    /// <summary>Tilt at which a body at rest falls over: atan(b/2 / h).</summary>
    /// <param name="base">[m] Width between its feet, more than 0.</param>
    /// <param name="centreHeight">[m] Height of its centre of mass, more than 0.</param>
    /// <returns>[rad] Angle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A measure is not above 0.</exception>
    public static double StaticAngle(double @base, double centreHeight) =>
        Math.Atan(Guard.Positive(@base) / 2 / Guard.Positive(centreHeight));

    /// <summary>Level force that tips a body at rest: W·(b/2)/h.</summary>
    /// <param name="weight">[N] Weight, 0 or more.</param>
    /// <param name="base">[m] Width between its feet, more than 0.</param>
    /// <param name="height">[m] Height at which the force acts, more than 0.</param>
    /// <returns>[N] Force.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A measure lies outside its range.</exception>
    public static double TippingForce(double weight, double @base, double height) =>
        Guard.NotNegative(weight) * Guard.Positive(@base) / 2 / Guard.Positive(height);

    /// <summary>The worse of falling to the front and to the back.</summary>
    /// <remarks>
    /// Moments about the line of the front or back feet, each force's level and upright part for itself: what keeps the
    /// stand on its feet on one side, what tips it on the other.
    /// </remarks>
    /// <param name="acting">[N] Every force and where it acts.</param>
    /// <param name="front">[m] Y of the front feet.</param>
    /// <param name="back">[m] Y of the back feet, beyond the front ones.</param>
    /// <param name="floor">[m] Height of the floor.</param>
    /// <exception cref="ArgumentOutOfRangeException">The back feet do not lie behind the front ones.</exception>
    public static TipCheck Worst(
        IReadOnlyList<(Vector3 Force, Vector3 At)> acting,
        double front,
        double back,
        double floor
    )
    {
        ArgumentNullException.ThrowIfNull(acting);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(back, front);
        var ahead = About(acting, front, floor, 1);
        var behind = About(acting, back, floor, -1);
        // Compared without dividing: where nothing tips it the factor is beyond all others.
        return ahead.Restoring * behind.Overturning <= behind.Restoring * ahead.Overturning ? ahead : behind;
    }

    private static TipCheck About(
        IReadOnlyList<(Vector3 Force, Vector3 At)> acting,
        double line,
        double floor,
        int inward
    )
    {
        double keeps = 0;
        double tips = 0;
        foreach (var (force, at) in acting)
        {
            Count(-force.Z * inward * (at.Y - line));
            Count(force.Y * inward * (at.Z - floor));
        }

        return new TipCheck(keeps, tips, inward > 0);

        void Count(double moment)
        {
            keeps += Math.Max(moment, 0);
            tips += Math.Max(-moment, 0);
        }
    }
}
