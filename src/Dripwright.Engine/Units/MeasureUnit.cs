using System.Globalization;

namespace Dripwright.Engine.Units;

/// <summary>One unit as people write it, with its exact way to SI.</summary>
/// <remarks>
/// SI value = (number + <see cref="Offset"/>) · <see cref="Numerator"/> / <see cref="Denominator"/>. The factors are kept as
/// decimals, so that "12 in", "1 ft" and "30.48 cm" are the very same double.
/// </remarks>
/// <param name="Symbol">The name used when writing.</param>
/// <param name="Numerator">SI units in <paramref name="Denominator"/> of these.</param>
/// <param name="Denominator">See <paramref name="Numerator"/>.</param>
/// <param name="Offset">Added to the number first: only scales of temperature have one.</param>
/// <param name="Names">All names, lower case, the symbol's among them.</param>
internal sealed record MeasureUnit(
    string Symbol,
    decimal Numerator,
    decimal Denominator,
    decimal Offset,
    IReadOnlyList<string> Names
)
{
    /// <summary>The SI value of a number of these units.</summary>
    /// <exception cref="OverflowException">The number is beyond all bounds.</exception>
    public double ToSi(decimal number) => ToSi(number, 1);

    /// <summary>The SI value of a fraction of these units.</summary>
    /// <exception cref="OverflowException">The number is beyond all bounds.</exception>
    public double ToSi(decimal over, decimal under) =>
        ToDouble((over + (Offset * under)) * Numerator / (under * Denominator));

    /// <summary>How many of these units an SI value is.</summary>
    /// <exception cref="OverflowException">The value is beyond all bounds.</exception>
    public decimal FromSi(double si) => (ToDecimal(si) * Denominator / Numerator) - Offset;

    /// <summary>The decimal with the digits that a double shows when printed shortest.</summary>
    public static decimal ToDecimal(double value) =>
        decimal.Parse(
            value.ToString("R", CultureInfo.InvariantCulture),
            NumberStyles.Float,
            CultureInfo.InvariantCulture
        );

    /// <summary>The nearest double. The framework's own conversion rounds twice; going through text rounds once.</summary>
    public static double ToDouble(decimal value) =>
        double.Parse(value.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + 0.0;
}
