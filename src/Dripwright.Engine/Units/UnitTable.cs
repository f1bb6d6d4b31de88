using UnitsNet;

namespace Dripwright.Engine.Units;

/// <summary>All units a rig file may use, by what they measure. Factors come from UnitsNet.</summary>
internal static class UnitTable
{
    public static readonly IReadOnlyList<MeasureUnit> Lengths =
    [
        Unit("in", Length.FromInches(1).Meters, "in.", "inch", "inches", "\"", "''"),
        Unit("ft", Length.FromFeet(1).Meters, "ft.", "foot", "feet", "'"),
        Unit("yd", Length.FromYards(1).Meters, "yd.", "yard", "yards"),
        Unit("mm", 0.001, "millimeter", "millimeters", "millimetre", "millimetres"),
        Unit("cm", 0.01, "centimeter", "centimeters", "centimetre", "centimetres"),
        Unit("m", 1, "meter", "meters", "metre", "metres"),
        Unit("um", 1e-6, "μm", "micron", "microns", "micrometer", "micrometers", "micrometre", "micrometres"),
    ];

    public static readonly IReadOnlyList<MeasureUnit> Volumes =
    [
        Unit(
            "gal",
            Volume.FromUsGallons(1).CubicMeters,
            ["gal.", "gals", "gallon", "gallons", "us gal", "us gallon", "us gallons"]
        ),
        Unit("qt", Volume.FromUsQuarts(1).CubicMeters, "qt.", "qts", "quart", "quarts"),
        Unit("pt", Volume.FromUsPints(1).CubicMeters, "pt.", "pint", "pints"),
        Unit("fl oz", Volume.FromUsOunces(1).CubicMeters, "fl. oz.", "floz", "fluid ounce", "fluid ounces"),
        Unit("ft3", Volume.FromCubicFeet(1).CubicMeters, "ft^3", "cu ft", "cu. ft.", "cubic foot", "cubic feet"),
        Unit("in3", Volume.FromCubicInches(1).CubicMeters, "in^3", "cu in", "cu. in.", "cubic inch", "cubic inches"),
        Unit("L", 0.001, "liter", "liters", "litre", "litres", "ltr"),
        Unit("mL", 1e-6, "milliliter", "milliliters", "millilitre", "millilitres", "cc", "cm3", "cm^3"),
        Unit("m3", 1, ["m^3", "cu m", "cubic meter", "cubic meters", "cubic metre", "cubic metres"]),
        Unit(
            "imp gal",
            Volume.FromImperialGallons(1).CubicMeters,
            ["imp. gal", "imp. gal.", "imperial gallon", "imperial gallons", "uk gal", "uk gallon", "uk gallons"]
        ),
    ];

    public static readonly IReadOnlyList<MeasureUnit> Durations =
    [
        Unit("s", 1, "sec", "secs", "second", "seconds"),
        Unit("min", 60, "mins", "minute", "minutes"),
        Unit("h", 3600, "hr", "hrs", "hour", "hours"),
        Unit("d", 86400, "day", "days"),
        Unit("wk", 604800, "week", "weeks"),
    ];

    /// <summary>Flows with a name of their own; all others are a volume per time.</summary>
    public static readonly IReadOnlyList<MeasureUnit> Flows =
    [
        Per("gph", "gal", "h"),
        Per("gpm", "gal", "min"),
        Per("gpd", "gal", "d"),
        Per("L/h", "L", "h", "lph"),
        Per("L/min", "L", "min", "lpm"),
        Per("mL/min", "mL", "min"),
        Per("gal/day", "gal", "d"),
        Per("L/day", "L", "d"),
        Per("m3/h", "m3", "h"),
        Per("m3/s", "m3", "s"),
        Per("cfm", "ft3", "min"),
    ];

    // The conventional metre of water: 1000 kg/m³ under standard gravity. The library's own metre and foot of head
    // belong to water of two different weights.
    private const decimal WaterPerMetre = 9806.65m;

    // A pound-force by definition: 0.45359237 kg under standard gravity, 9.80665 m/s².
    private const decimal PoundForce = KilogramsPerPound * 9.80665m;

    /// <summary>Pressures with a name of their own; all others are a height of water.</summary>
    public static readonly IReadOnlyList<MeasureUnit> Pressures =
    [
        Unit("psi", Pressure.FromPoundsForcePerSquareInch(1).Pascals, "psig", "lb/in2", "lbs/in2"),
        Unit("kPa", 1000, "kilopascal", "kilopascals"),
        Unit("bar", 100000, "bars"),
        Unit("mbar", 100, "millibar", "millibars", "hpa"),
        Unit("Pa", 1, "pascal", "pascals"),
        Water("ft H2O", "ft"),
        Water("in H2O", "in"),
        Water("m H2O", "m"),
        Water("cm H2O", "cm"),
        Water("mm H2O", "mm"),
    ];

    // 5/9 and 459.67 define the scales; as a decimal fraction they stay exact.
    public static readonly IReadOnlyList<MeasureUnit> Temperatures =
    [
        new("F", 5, 9, 459.67m, [.. Degrees("f"), "fahrenheit", "degrees fahrenheit"]),
        new("C", 1, 1, 273.15m, [.. Degrees("c"), "celsius", "degrees celsius", "centigrade"]),
        new("K", 1, 1, 0, ["k", "kelvin", "kelvins"]),
    ];

    public static readonly IReadOnlyList<MeasureUnit> Powers =
    [
        Unit("W", 1, "watt", "watts"),
        Unit("kW", 1000, "kilowatt", "kilowatts"),
        // 550 ft·lbf/s. The library's own horsepower is rounded to 745.69 W.
        Exactly("hp", 550 * 0.3048m * PoundForce, "horsepower"),
    ];

    public static readonly IReadOnlyList<MeasureUnit> Voltages = [Unit("V", 1, "volt", "volts", "vac", "vdc")];

    public static readonly IReadOnlyList<MeasureUnit> Frequencies = [Unit("Hz", 1, "hertz")];

    public static readonly IReadOnlyList<MeasureUnit> Currents =
    [
        Unit("A", 1, "amp", "amps", "ampere", "amperes"),
        Unit("mA", 0.001, "milliamp", "milliamps", "milliampere", "milliamperes"),
    ];

    private const decimal KilogramsPerPound = 0.45359237m;

    public static readonly IReadOnlyList<MeasureUnit> Masses =
    [
        Exactly("lb", KilogramsPerPound, "lb.", "lbs", "pound", "pounds"),
        Exactly("oz", KilogramsPerPound / 16, "oz.", "ounce", "ounces"),
        Unit("kg", 1, "kilogram", "kilograms", "kilo", "kilos"),
        Unit("g", 0.001, "gram", "grams"),
        Unit("mg", 1e-6, "milligram", "milligrams"),
    ];

    // A hanging mass pulls with its weight, so people write "100 lb" and "50 kg" for a pull as well.
    public static readonly IReadOnlyList<MeasureUnit> Forces =
    [
        Exactly("lbf", PoundForce, "lb", "lb.", "lbs", "pound", "pounds", "pounds-force"),
        Unit("N", 1, "newton", "newtons"),
        Unit("kN", 1000, "kilonewton", "kilonewtons"),
        Exactly("kgf", 9.80665m, "kg", "kilogram", "kilograms", "kp"),
    ];

    // ppm is left out on purpose: it is a scale of the meter, not a unit.
    public static readonly IReadOnlyList<MeasureUnit> Conductivities =
    [
        Unit("dS/m", 0.1),
        Unit("mS/cm", 0.1),
        Unit("uS/cm", 1e-4, "\u00b5s/cm", "\u03bcs/cm"),
        Unit("mS/m", 1e-3),
        Unit("S/m", 1),
        Unit("CF", 0.01),
    ];

    /// <summary>The unit of plain ratios.</summary>
    public static readonly MeasureUnit One = Unit("of 1", 1);

    public static readonly IReadOnlyList<MeasureUnit> Shares = [Unit("%", 0.01, "percent", "per cent", "pct"), One];

    /// <summary>The units with a name of their own.</summary>
    public static IReadOnlyList<MeasureUnit> Of(Dimension dimension) =>
        dimension switch
        {
            Dimension.Length => Lengths,
            Dimension.Volume => Volumes,
            Dimension.Flow => Flows,
            Dimension.Pressure => Pressures,
            Dimension.Slope => Shares,
            Dimension.Temperature => Temperatures,
            Dimension.Power => Powers,
            Dimension.Voltage => Voltages,
            Dimension.Frequency => Frequencies,
            Dimension.Current => Currents,
            Dimension.Duration => Durations,
            Dimension.Share => Shares,
            Dimension.Mass => Masses,
            Dimension.Force => Forces,
            Dimension.Conductivity => Conductivities,
            _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "Not a dimension."),
        };

    /// <summary>The unit with that name, or null. The name is in lower case with single spaces.</summary>
    public static MeasureUnit? Find(IReadOnlyList<MeasureUnit> units, string name)
    {
        foreach (var unit in units)
        {
            if (unit.Names.Contains(name))
            {
                return unit;
            }
        }
        return null;
    }

    /// <summary>The unit with that symbol.</summary>
    public static MeasureUnit Named(Dimension dimension, string symbol) =>
        Of(dimension).First(unit => unit.Symbol == symbol);

    /// <summary>A flow as a volume per time.</summary>
    public static MeasureUnit Quotient(
        string symbol,
        MeasureUnit over,
        MeasureUnit under,
        IReadOnlyList<string> names
    ) => new(symbol, over.Numerator * under.Denominator, over.Denominator * under.Numerator, 0, names);

    private static MeasureUnit Unit(string symbol, double si, params string[] names) =>
        Exactly(symbol, MeasureUnit.ToDecimal(si), names);

    private static MeasureUnit Exactly(string symbol, decimal si, params string[] names) =>
        new(symbol, si, 1, 0, [Lower(symbol), .. names]);

    private static MeasureUnit Per(string symbol, string volume, string time, params string[] names) =>
        Quotient(
            symbol,
            Volumes.First(unit => unit.Symbol == volume),
            Durations.First(unit => unit.Symbol == time),
            [Lower(symbol), .. names]
        );

    private static MeasureUnit Water(string symbol, string length)
    {
        var unit = Lengths.First(one => one.Symbol == length);
        var names = unit.Names.Where(name => char.IsLetter(name[0])).SelectMany(WaterNames);
        return Exactly(symbol, WaterPerMetre * unit.Numerator, [.. names.Where(name => name != Lower(symbol))]);
    }

    private static IEnumerable<string> WaterNames(string length) =>
        [
            $"{length} h2o",
            $"{length}h2o",
            $"{length} of water",
            $"{length} water",
            $"{length} of head",
            $"{length} head",
        ];

    private static IEnumerable<string> Degrees(string letter) =>
        [letter, $"°{letter}", $"° {letter}", $"deg {letter}", $"deg{letter}", $"degree {letter}", $"degrees {letter}"];

#pragma warning disable CA1308 // Names of units are compared in lower case because that is how people read them.
    private static string Lower(string symbol) => symbol.ToLowerInvariant();
#pragma warning restore CA1308
}
