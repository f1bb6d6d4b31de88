using System.Globalization;

namespace Dripwright.Engine.Units;

/// <content>Printing so that nothing is lost.</content>
public static partial class QuantityText
{
    /// <summary>Prints a quantity so that reading it gives the same double, bit for bit, in the shortest text that does.</summary>
    /// <remarks>A zero with a minus sign is written, and read, as zero.</remarks>
    /// <param name="dimension">What it measures.</param>
    /// <param name="si">[SI unit of the dimension] The value.</param>
    /// <param name="units">System of units that is taken when several texts are about as short.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or beyond 10¹², or no such dimension.</exception>
    public static string Exact(Dimension dimension, double si, UnitSystem units)
    {
        ThrowIfNotFinite(si);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Math.Abs(si), 1e12, nameof(si));
        if (si == 0 && dimension is not Dimension.Temperature)
        {
            return $"0 {ExactUnits(dimension, units is UnitSystem.Us).Own[0]}";
        }
        string? best = null;
        var least = int.MaxValue;
        foreach (var (text, foreign) in ExactTexts(dimension, si + 0.0, units))
        {
            // A text in the other system must be a good deal shorter to be better: "30 cm" for "11.811023622 in".
            var cost = text.Length + (foreign ? 4 : 0);
            if (cost < least)
            {
                (best, least) = (text, cost);
            }
        }
        return best ?? InSi(dimension, si + 0.0);
    }

    private static IEnumerable<(string Text, bool Foreign)> ExactTexts(Dimension dimension, double si, UnitSystem units)
    {
        if (
            dimension is Dimension.Length
            && Math.Abs(si) < 1e4
            && PrettyInches(si) is { } inches
            && Parse(dimension, inches) == si
        )
        {
            yield return (inches, units is not UnitSystem.Us);
        }
        if (dimension is Dimension.Slope && Math.Abs(si) < 1e4)
        {
            var perFoot = $"{Fraction((long)Math.Round(si * 12 * 64), 64)} in per ft";
            if (Parse(dimension, perFoot) == si)
            {
                // Only where it is shorter than the per cent.
                yield return (perFoot, units is not UnitSystem.Us);
            }
        }
        var (own, other) = ExactUnits(dimension, units is UnitSystem.Us);
        foreach (var symbol in own)
        {
            if (InUnit(UnitTable.Named(dimension, symbol), si) is { } text)
            {
                yield return (text, false);
            }
        }
        foreach (var symbol in other)
        {
            if (InUnit(UnitTable.Named(dimension, symbol), si) is { } text)
            {
                yield return (text, true);
            }
        }
    }

    private static (string[] Own, string[] Other) ExactUnits(Dimension dimension, bool us)
    {
        var (usUnits, metric) = dimension switch
        {
            Dimension.Length => (new[] { "in", "ft" }, new[] { "cm", "mm", "m" }),
            Dimension.Volume => (["gal", "fl oz"], ["L", "mL", "m3"]),
            Dimension.Flow => (["gph", "gal/day", "gpm"], ["L/h", "L/day", "mL/min", "L/min", "m3/h"]),
            Dimension.Pressure => (["psi", "ft H2O"], ["kPa", "bar", "Pa", "m H2O"]),
            Dimension.Temperature => (["F"], ["C"]),
            Dimension.Mass => (["lb", "g"], ["kg", "g"]),
            Dimension.Power => (["W", "kW"], ["W", "kW"]),
            Dimension.Duration => (["s", "min", "h", "d"], ["s", "min", "h", "d"]),
            _ => ([UnitTable.Of(dimension)[0].Symbol], [UnitTable.Of(dimension)[0].Symbol]),
        };
        return us ? (usUnits, metric) : (metric, usUnits);
    }

    private static string? PrettyInches(double metres)
    {
        var parts = (long)Math.Round(metres / 0.0254 * 64);
        var (feet, left) = Math.DivRem(Math.Abs(parts), 12 * 64);
        var sign = parts < 0 ? "-" : "";
        if (Math.Abs(parts) < 36 * 64)
        {
            return $"{Fraction(parts, 64)} in";
        }
        return left == 0 ? $"{sign}{Whole(feet)} ft" : $"{sign}{Whole(feet)} ft {Fraction(left, 64)} in";
    }

    /// <summary>The fewest decimals in this unit that read back as the same double; null where none do.</summary>
    private static string? InUnit(MeasureUnit unit, double si)
    {
        if (Math.Abs(si) is > 1e12 or (< 1e-10 and > 0))
        {
            return null;
        }
        var number = unit.FromSi(si);
        for (var figures = 1; figures <= 21; figures = figures == 6 ? 14 : figures + 1)
        {
            var rounded = Round(number, figures);
            if (unit.ToSi(rounded) == si)
            {
                return $"{rounded.ToString("0.############################", CultureInfo.InvariantCulture)} {unit.Symbol}";
            }
        }
        return null;
    }

    private static decimal Round(decimal number, int figures)
    {
        if (number == 0)
        {
            return 0;
        }
        var decimals = figures - 1 - (int)Math.Floor(Math.Log10((double)Math.Abs(number)));
        if (decimals >= 0)
        {
            return Math.Round(number, Math.Min(decimals, 28));
        }
        var step = (decimal)Math.Pow(10, -decimals);
        return Math.Round(number / step) * step;
    }

    /// <summary>The double's own digits in the SI unit.</summary>
    private static string InSi(Dimension dimension, double si)
    {
        var number = si.ToString("R", CultureInfo.InvariantCulture);
        return dimension switch
        {
            Dimension.Length => $"{number} m",
            Dimension.Volume => $"{number} m3",
            Dimension.Flow => $"{number} m3/s",
            Dimension.Pressure => $"{number} Pa",
            Dimension.Slope => $"{number} m per m",
            Dimension.Temperature => $"{number} K",
            Dimension.Share => $"{number} of 1",
            Dimension.Duration => $"{number} s",
            Dimension.Mass => $"{number} kg",
            Dimension.Force => $"{number} N",
            Dimension.Conductivity => $"{number} S/m",
            _ => $"{number} {UnitTable.Of(dimension)[0].Symbol}",
        };
    }
}
