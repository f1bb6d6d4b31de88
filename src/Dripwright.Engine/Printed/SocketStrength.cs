using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Printed;

/// <summary>What a printed socket carries for years, by plain formulas on the low side.</summary>
/// <param name="FlatMoment">[N·m] Bending of a socket that was printed lying down.</param>
/// <param name="UprightMoment">[N·m] Bending of a socket that was printed upright: it pulls the layers apart.</param>
/// <param name="BearingMoment">[N·m] Moment at which the tube presses too hard on the bore's ends.</param>
/// <param name="PullOut">[N] Pull that friction of a squeezing bore holds; 0 for a bore with clearance.</param>
/// <param name="HoopStress">[Pa] Lasting stress around a squeezing bore; 0 for a bore with clearance.</param>
/// <param name="Allowed">[Pa] Lasting stress allowed within the layers at the load's temperature.</param>
public sealed record SocketStrength(
    double FlatMoment,
    double UprightMoment,
    double BearingMoment,
    double PullOut,
    double HoopStress,
    double Allowed
)
{
    /// <summary>[-] Share of the short-time strength that plastics keep under lasting load. From memory, common in design
    /// guides of plastics makers: about half.</summary>
    public const double LastingShare = 0.5;

    /// <summary>[-] Safety on top. Common practice for parts that nobody tests.</summary>
    public const double Safety = 2;

    /// <summary>[-] Strength across the layers is never taken above this share of that along them.</summary>
    public const double MostAcross = 0.5;

    /// <summary>[-] Friction of steel on plastic. From memory.</summary>
    public const double Friction = 0.2;

    private const double Poisson = 0.38;
    private const double RoomTemperature = 296.15;

    /// <summary>[-] Share of its strength that a plastic keeps in the warmth.</summary>
    /// <remarks>
    /// Falls in a straight line from 1 at 23 °C to 0 at the temperature at which it sags under load; our own rule, on the
    /// low side, since nobody publishes lasting strength of prints over temperature.
    /// </remarks>
    /// <param name="plastic">The plastic.</param>
    /// <param name="temperature">[K] Of the part.</param>
    public static double HeatShare(Plastic plastic, double temperature) =>
        temperature <= RoomTemperature ? 1
        : temperature >= plastic.CreepTemperature ? 0
        : (plastic.CreepTemperature - temperature) / (plastic.CreepTemperature - RoomTemperature);

    /// <summary>[Pa] Pressure between a stiff tube and a bore that is drawn too small, by Lamé's thick ring.</summary>
    /// <remarks>
    /// p = (δ / 2rᵢ) E / (c + ν), c = (rₒ² + rᵢ²)/(rₒ² - rᵢ²); the stress around the bore is p c. The ring is elastic and
    /// the tube does not give. Source: Lamé, as in any textbook on strength of materials (from memory).
    /// </remarks>
    /// <param name="interference">[m] Tube less bore, on the diameter, 0 or more.</param>
    /// <param name="inside">[m] Radius of the bore, over 0.</param>
    /// <param name="outside">[m] Radius outside, over <paramref name="inside"/>.</param>
    /// <param name="modulus">[Pa] Of the ring.</param>
    /// <param name="poisson">[-] Poisson's ratio of the ring.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static (double Pressure, double Hoop) Squeeze(
        double interference,
        double inside,
        double outside,
        double modulus,
        double poisson
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegative(interference);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(inside);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(outside, inside);
        var c = ((outside * outside) + (inside * inside)) / ((outside * outside) - (inside * inside));
        var pressure = interference / (2 * inside) * modulus / (c + poisson);
        return (pressure, pressure * c);
    }

    /// <summary>[Pa] Greatest pressure of a tube in a socket under a moment, q = 6 M / (D t²): straight-line bearing.</summary>
    /// <param name="moment">[N·m] Moment.</param>
    /// <param name="outside">[m] Tube's diameter or side, over 0.</param>
    /// <param name="depth">[m] Depth of the socket, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is not over 0.</exception>
    public static double Bearing(double moment, double outside, double depth)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(outside);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(depth);
        return 6 * moment / (outside * depth * depth);
    }

    internal static SocketStrength Of(PrintParameters parameters, double half, double wall, double depth)
    {
        var plastic = parameters.Plastic;
        var share = HeatShare(plastic, parameters.Load.Temperature) * LastingShare / Safety;
        var along = plastic.AlongLayers * share;
        var across = Math.Min(plastic.AcrossLayers, MostAcross * plastic.AlongLayers) * share;
        var modulus = SectionModulus(parameters.TubeShape, half, half + wall);
        var interference = Math.Max(0, -2 * parameters.Clearance);
        (var pressure, var hoop) = Squeeze(interference, half, half + wall, plastic.Modulus, Poisson);
        return new(
            along * modulus,
            across * modulus,
            along * parameters.TubeOutside * depth * depth / 6,
            // Lasting squeeze relaxes like any other stress.
            Friction * LastingShare * pressure * 2 * Math.PI * half * depth,
            hoop,
            along
        );
    }

    /// <summary>[m³] Of an eight-sided socket around a round bore, or a square one around a square bore.</summary>
    /// <remarks>
    /// Octagon of inscribed radius R: I = 0.8758 R⁴ = (11 + 8√2)/12 · a⁴ with side a = 2 R tan(π/8); square: (2R)⁴/12. The
    /// bore comes off, the whole is divided by R.
    /// </remarks>
    private static double SectionModulus(TubeShape shape, double half, double outer)
    {
        var side = 2 * outer * Math.Tan(Math.PI / 8);
        return shape == TubeShape.Round
            ? (((11 + (8 * Math.Sqrt(2))) / 12 * Math.Pow(side, 4)) - (Math.PI / 4 * Math.Pow(half, 4))) / outer
            : (Math.Pow(2 * outer, 4) - Math.Pow(2 * half, 4)) / 12 / outer;
    }
}
