using System.Globalization;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>Electrical conductivity of a solution, at 25 °C unless a temperature is named beside it.</summary>
/// <remarks>
/// Kept in dS/m, which is the same number as mS/cm, and in nothing else: ppm is a scale of the meter, not an amount
/// (see <see cref="PpmScale"/>).
/// </remarks>
public readonly record struct Ec : IComparable<Ec>
{
    /// <summary>A conductivity in dS/m (mS/cm).</summary>
    /// <param name="decisiemensPerMetre">[dS/m] Conductivity, not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public Ec(double decisiemensPerMetre) => DecisiemensPerMetre = Guard.NotNegative(decisiemensPerMetre);

    /// <summary>[dS/m] The conductivity; the same number as mS/cm.</summary>
    public double DecisiemensPerMetre { get; }

    /// <summary>[µS/cm] The conductivity as laboratory meters show it.</summary>
    public double MicrosiemensPerCentimetre => DecisiemensPerMetre * 1000;

    /// <summary>The same as a measured value, to be told.</summary>
    public Measured Measured => Measured.Ec(DecisiemensPerMetre / 10);

    /// <summary>A conductivity from µS/cm.</summary>
    /// <param name="microsiemensPerCentimetre">[µS/cm] Conductivity, not negative.</param>
    public static Ec FromMicrosiemens(double microsiemensPerCentimetre) => new(microsiemensPerCentimetre / 1000);

    /// <summary>Which is stronger.</summary>
    public int CompareTo(Ec other) => DecisiemensPerMetre.CompareTo(other.DecisiemensPerMetre);

    /// <summary>Weaker than.</summary>
    public static bool operator <(Ec a, Ec b) => a.DecisiemensPerMetre < b.DecisiemensPerMetre;

    /// <summary>Stronger than.</summary>
    public static bool operator >(Ec a, Ec b) => a.DecisiemensPerMetre > b.DecisiemensPerMetre;

    /// <summary>No stronger than.</summary>
    public static bool operator <=(Ec a, Ec b) => a.DecisiemensPerMetre <= b.DecisiemensPerMetre;

    /// <summary>No weaker than.</summary>
    public static bool operator >=(Ec a, Ec b) => a.DecisiemensPerMetre >= b.DecisiemensPerMetre;

    /// <summary>The value with two decimals and its unit.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{DecisiemensPerMetre:0.00} dS/m");
}
