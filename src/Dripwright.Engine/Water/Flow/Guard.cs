using System.Runtime.CompilerServices;

namespace Dripwright.Engine.Water;

/// <summary>Range checks that refuse NaN and infinity as well, and name value and bound.</summary>
internal static class Guard
{
    public static void Positive(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        if (!(value > 0 && double.IsFinite(value)))
        {
            throw new ArgumentOutOfRangeException(name, value, "Must be greater than zero and finite.");
        }
    }

    public static void NotNegative(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        if (!(value >= 0 && double.IsFinite(value)))
        {
            throw new ArgumentOutOfRangeException(name, value, "Must not be negative, and must be finite.");
        }
    }

    public static void Finite(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "Must be finite.");
        }
    }

    public static void Between(
        double value,
        double low,
        double high,
        [CallerArgumentExpression(nameof(value))] string? name = null
    )
    {
        if (!(value >= low && value <= high))
        {
            throw new ArgumentOutOfRangeException(
                name,
                value,
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Must lie from {low} to {high}.")
            );
        }
    }
}
