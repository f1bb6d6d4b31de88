namespace Dripwright.Sheets.Drawing;

/// <summary>Round values for an axis.</summary>
public static class Ticks
{
    /// <summary>Round values (1, 2, 5 × 10ⁿ apart) that cover the range, first and last included.</summary>
    /// <param name="low">[-] Smallest value, finite, in the unit of the axis.</param>
    /// <param name="high">[-] Largest value, finite, not below <paramref name="low"/>.</param>
    /// <param name="most">[-] At most about this many steps, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static IReadOnlyList<double> Nice(double low, double high, int most)
    {
        if (!double.IsFinite(low) || !double.IsFinite(high - low))
        {
            throw new ArgumentOutOfRangeException(nameof(low), low, "An axis needs finite ends.");
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(high, low);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        if (high - low <= Math.Abs(high) * 1e-12)
        {
            var room = high == 0 ? 1 : Math.Abs(high) / 2;
            (low, high) = (low - (low == 0 ? 0 : room), high + room);
        }

        var step = Step((high - low) / most);
        var (first, last) = (Math.Floor((low / step) + 1e-9), Math.Ceiling((high / step) - 1e-9));
        return [.. Enumerable.Range(0, (int)(last - first) + 1).Select(i => Clean((first + i) * step))];
    }

    private static double Step(double least)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return new[] { 1, 2, 5, 10 }.Select(n => n * power).First(step => step >= least * (1 - 1e-9));
    }

    /// <summary>Without the dust of multiplication: 0.3, not 0.30000000000000004.</summary>
    private static double Clean(double value) => value == 0 ? 0 : (double)(decimal)value;
}
