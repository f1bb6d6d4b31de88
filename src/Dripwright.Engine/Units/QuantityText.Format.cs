using System.Globalization;
using System.Runtime.CompilerServices;

namespace Dripwright.Engine.Units;

/// <content>Printing for people.</content>
public static partial class QuantityText
{
    private const int Sixteenths = 16;

    /// <summary>Prints a quantity for people: inches in sixteenths, three figures that matter, the unit a grower would take.</summary>
    /// <param name="dimension">What it measures.</param>
    /// <param name="si">[SI unit of the dimension] The value.</param>
    /// <param name="units">System of units.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, or no such dimension.</exception>
    public static string Format(Dimension dimension, double si, UnitSystem units)
    {
        ThrowIfNotFinite(si);
        var us = units is UnitSystem.Us;
        return dimension switch
        {
            Dimension.Length => us ? FeetAndInches(si) : Metres(si),
            Dimension.Volume => us
                ? In(dimension, si, si.Is(below: 2e-4) ? "fl oz" : "gal")
                : In(dimension, si, si.Is(below: 1e-3) ? "mL" : "L"),
            Dimension.Flow when si.Is(below: 5.5e-8) => In(dimension, si, us ? "gal/day" : "L/day"),
            Dimension.Flow => us
                ? In(dimension, si, "gph")
                : In(dimension, si, si.Is(below: 10 / 3600.0) ? "L/h" : "m3/h"),
            Dimension.Pressure => In(dimension, si, us ? "psi" : "kPa"),
            Dimension.Slope when us && IsFraction(si * 12 * Sixteenths) =>
                $"{Fraction((long)Math.Round(si * 12 * Sixteenths), Sixteenths)} in per ft",
            Dimension.Slope or Dimension.Share => In(Dimension.Share, si, "%"),
            Dimension.Temperature => us ? $"{Fixed((si * 1.8) - 459.67, 1)} °F" : $"{Fixed(si - 273.15, 1)} °C",
            Dimension.Power => In(dimension, si, si.Is(below: 2000) ? "W" : "kW"),
            Dimension.Voltage => In(dimension, si, "V"),
            Dimension.Frequency => In(dimension, si, "Hz"),
            Dimension.Current => In(dimension, si, "A"),
            Dimension.Duration => Time(si),
            Dimension.Mass => us
                ? In(dimension, si, si.Is(below: 0.45) ? "oz" : "lb")
                : In(dimension, si, si.Is(below: 1) ? "g" : "kg"),
            Dimension.Conductivity => In(dimension, si, "dS/m"),
            Dimension.Force => us ? In(dimension, si, "lbf") : In(dimension, si, si.Is(below: 2000) ? "N" : "kN"),
            _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "Not a dimension."),
        };
    }

    /// <summary>Prints a length as it is marked on a pipe: inches to a sixteenth, or whole millimetres.</summary>
    /// <param name="metres">[m] The length.</param>
    /// <param name="units">System of units.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, or beyond a thousand kilometres.</exception>
    public static string Mark(double metres, UnitSystem units)
    {
        ThrowIfNotFinite(metres);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Math.Abs(metres), 1e6, nameof(metres));
        return units is UnitSystem.Us
            ? $"{Fraction((long)Math.Round(metres / 0.0254 * Sixteenths), Sixteenths)} in"
            : $"{Fixed(metres * 1000, 0)} mm";
    }

    private static void ThrowIfNotFinite(double si, [CallerArgumentExpression(nameof(si))] string? name = null)
    {
        if (!double.IsFinite(si))
        {
            throw new ArgumentOutOfRangeException(name, si, "Not a finite number.");
        }
    }

    private static bool Is(this double si, double below) => Math.Abs(si) > 0 && Math.Abs(si) < below;

    private static string In(Dimension dimension, double si, string symbol)
    {
        var unit = UnitTable.Named(dimension, symbol);
        return $"{Figures(si * (double)unit.Denominator / (double)unit.Numerator)} {symbol.Replace("m3", "m³", StringComparison.Ordinal)}";
    }

    private static string FeetAndInches(double metres)
    {
        var inches = metres / 0.0254;
        var size = Math.Abs(inches);
        if (size < 0.5 && !IsFraction(inches * Sixteenths))
        {
            return $"{Figures(inches)} in";
        }
        if (size >= 1e9)
        {
            return $"{Figures(inches / 12)} ft";
        }
        // From a hundred feet on nobody reads a sixteenth, from a thousand on no inch.
        var step =
            size < 1200 ? 1.0 / Sixteenths
            : size < 12000 ? 1
            : 12;
        var parts = (long)(Math.Round(size / step) * step * Sixteenths);
        var sign = inches < 0 && parts > 0 ? "-" : "";
        if (parts < 36 * Sixteenths)
        {
            return $"{sign}{Fraction(parts, Sixteenths)} in";
        }
        var (feet, left) = Math.DivRem(parts, 12 * Sixteenths);
        return left == 0 ? $"{sign}{Whole(feet)} ft" : $"{sign}{Whole(feet)} ft {Fraction(left, Sixteenths)} in";
    }

    private static string Metres(double metres) =>
        Math.Abs(metres) switch
        {
            < 0.01 => $"{Figures(metres * 1000)} mm",
            < 0.1 => $"{Fixed(metres * 1000, 1)} mm",
            < 2 => $"{Fixed(metres * 100, 1)} cm",
            _ => $"{Fixed(metres, 2)} m",
        };

    private static string Time(double seconds)
    {
        var size = Math.Abs(seconds);
        if (size < 120)
        {
            return $"{Figures(seconds)} s";
        }
        if (size >= 48 * 3600)
        {
            return $"{Figures(seconds / 86400)} d";
        }
        var minutes = (long)Math.Round(size / 60);
        var (hours, left) = Math.DivRem(minutes, 60);
        var sign = seconds < 0 ? "-" : "";
        return hours == 0 ? $"{sign}{Whole(left)} min"
            : left == 0 ? $"{sign}{Whole(hours)} h"
            : $"{sign}{Whole(hours)} h {Whole(left)} min";
    }

    private static bool IsFraction(double parts) =>
        parts == 0 || (Math.Abs(parts) is > 0.5 and < 1e9 && Math.Abs(parts - Math.Round(parts)) < 1e-6);

    /// <summary>A mixed number in lowest terms: "3 1/2", "5/8", "-1/4".</summary>
    private static string Fraction(long parts, long perWhole)
    {
        var sign = parts < 0 ? "-" : "";
        var (whole, left) = Math.DivRem(Math.Abs(parts), perWhole);
        if (left == 0)
        {
            return $"{sign}{Whole(whole)}";
        }
        var under = perWhole;
        while (left % 2 == 0)
        {
            (left, under) = (left / 2, under / 2);
        }
        return whole == 0
            ? $"{sign}{Whole(left)}/{Whole(under)}"
            : $"{sign}{Whole(whole)} {Whole(left)}/{Whole(under)}";
    }

    /// <summary>Three figures that matter; whole numbers keep all theirs.</summary>
    private static string Figures(double value)
    {
        if (value == 0)
        {
            return "0";
        }
        var decimals = 2 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return decimals <= 0 ? Fixed(value, 0)
            : decimals > 12 ? value.ToString("G3", CultureInfo.InvariantCulture)
            : Fixed(value, decimals);
    }

    private static string Fixed(double value, int decimals)
    {
        var text = value.ToString($"F{Whole(decimals)}", CultureInfo.InvariantCulture);
        text = decimals > 0 ? text.TrimEnd('0').TrimEnd('.') : text;
        return text == "-0" ? "0" : text;
    }

    private static string Whole(long value) => value.ToString(CultureInfo.InvariantCulture);
}
