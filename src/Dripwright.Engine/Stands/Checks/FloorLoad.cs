using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>A load spread on a floor beside what houses are commonly built for.</summary>
/// <param name="What">What stands there.</param>
/// <param name="Mass">[kg] Its mass.</param>
/// <param name="Area">[m²] Floor under it.</param>
/// <param name="Limit">[Pa] Live load that a living room's floor is commonly built for.</param>
/// <param name="Source">Where the limit is from.</param>
public sealed record FloorLoad(string What, double Mass, double Area, double Limit, string Source)
{
    /// <summary>[Pa] 40 lb/ft², rooms other than sleeping rooms (International Residential Code, table R301.5).</summary>
    public const double LivingRoom = 40 * 4.4482216152605 / (0.3048 * 0.3048);

    /// <summary>[Pa] 30 lb/ft², sleeping rooms (same table).</summary>
    public const double SleepingRoom = 30 * 4.4482216152605 / (0.3048 * 0.3048);

    /// <summary>[Pa] 20 lb/ft², attics with storage (same table).</summary>
    public const double Attic = 20 * 4.4482216152605 / (0.3048 * 0.3048);

    /// <summary>[Pa] Weight over area.</summary>
    public double Pressure => Mass * StandardGravity.Value / Area;

    /// <summary>[-] Pressure over limit. Over 1 does not say that the floor breaks: the joists spread the load, and a person
    /// who knows the house must say.</summary>
    public double Utilisation => Pressure / Limit;

    /// <summary>A load on a living room's floor.</summary>
    /// <param name="what">What stands there.</param>
    /// <param name="mass">[kg] Its mass, 0 or more.</param>
    /// <param name="area">[m²] Floor under it, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static FloorLoad InLivingRoom(string what, double mass, double area) =>
        new(
            what,
            Guard.NotNegative(mass),
            Guard.Positive(area),
            LivingRoom,
            "40 lb/ft² live load, International Residential Code, table R301.5; the local code and a builder who knows the floor decide"
        );
}
