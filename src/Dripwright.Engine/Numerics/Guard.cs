using System.Runtime.CompilerServices;

namespace Dripwright.Engine.Numerics;

/// <summary>Range checks that also refuse what is not a finite number, which the framework's own let through.</summary>
internal static class Guard
{
    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        Finite(value, name);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(value, name);
        return value;
    }

    public static double NotNegative(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        Finite(value, name);
        ArgumentOutOfRangeException.ThrowIfNegative(value, name);
        return value;
    }

    public static double Between(
        double value,
        double least,
        double most,
        [CallerArgumentExpression(nameof(value))] string? name = null
    )
    {
        Finite(value, name);
        ArgumentOutOfRangeException.ThrowIfLessThan(value, least, name);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, most, name);
        return value;
    }

    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "A finite number is needed.");
        }

        return value;
    }
}
