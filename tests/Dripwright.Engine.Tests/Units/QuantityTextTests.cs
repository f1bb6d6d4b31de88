using CsCheck;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Units;

public sealed class QuantityTextTests
{
    [Theory]
    // Inches are 0.0254 m and US gallons 231 in³ by definition.
    [InlineData(Dimension.Length, "1/2 in", 0.0127)]
    [InlineData(Dimension.Length, "1 1/2 in", 0.0381)]
    [InlineData(Dimension.Length, "1-1/2 in", 0.0381)]
    [InlineData(Dimension.Length, "1½ in", 0.0381)]
    [InlineData(Dimension.Length, "½\"", 0.0127)]
    [InlineData(Dimension.Length, "1½″", 0.0381)]
    [InlineData(Dimension.Length, "6 ft 3 in", 1.905)]
    [InlineData(Dimension.Length, "6ft3in", 1.905)]
    [InlineData(Dimension.Length, "5' 3\"", 1.6002)]
    [InlineData(Dimension.Length, "5'-3\"", 1.6002)]
    [InlineData(Dimension.Length, "6'3 1/2\"", 1.9177)]
    [InlineData(Dimension.Length, "6 feet 3 1/2 inches", 1.9177)]
    [InlineData(Dimension.Length, "-1 ft", -0.3048)]
    [InlineData(Dimension.Length, "-1 ft 6 in", -0.4572)]
    [InlineData(Dimension.Length, "−3 in", -0.0762)]
    [InlineData(Dimension.Length, "1 yd", 0.9144)]
    [InlineData(Dimension.Length, "30 cm", 0.3)]
    [InlineData(Dimension.Length, "2.5CM", 0.025)]
    [InlineData(Dimension.Length, "1 m 20 cm", 1.2)]
    [InlineData(Dimension.Length, "150 µm", 0.00015)]
    [InlineData(Dimension.Length, ".165 in", 0.004191)]
    [InlineData(Dimension.Volume, "35 gal", 0.13248941244)]
    [InlineData(Dimension.Volume, "35 US gallons", 0.13248941244)]
    [InlineData(Dimension.Volume, "130 L", 0.13)]
    [InlineData(Dimension.Volume, "500 ml", 0.0005)]
    [InlineData(Dimension.Volume, "4 qt", 0.003785411784)]
    [InlineData(Dimension.Volume, "1 cu ft", 0.028316846592)]
    [InlineData(Dimension.Volume, "1 ft³", 0.028316846592)]
    [InlineData(Dimension.Volume, "1 imp gal", 0.00454609)]
    [InlineData(Dimension.Flow, "3600 L/h", 0.001)]
    [InlineData(Dimension.Flow, "3600 lph", 0.001)]
    [InlineData(Dimension.Flow, "60 L/min", 0.001)]
    [InlineData(Dimension.Flow, "60 litres per minute", 0.001)]
    [InlineData(Dimension.Flow, "3.6 m3/h", 0.001)]
    [InlineData(Dimension.Flow, "86400 L/day", 0.001)]
    [InlineData(Dimension.Flow, "3600 gph", 0.003785411784)]
    [InlineData(Dimension.Flow, "60 gpm", 0.003785411784)]
    [InlineData(Dimension.Flow, "3600 gal/hr", 0.003785411784)]
    [InlineData(Dimension.Pressure, "100 kPa", 100000)]
    [InlineData(Dimension.Pressure, "1 bar", 100000)]
    [InlineData(Dimension.Slope, "1/4 in per ft", 1.0 / 48)]
    [InlineData(Dimension.Slope, "1/4 in/ft", 1.0 / 48)]
    [InlineData(Dimension.Slope, "1/4\" per ft", 1.0 / 48)]
    [InlineData(Dimension.Slope, "1/4\"/ft", 1.0 / 48)]
    [InlineData(Dimension.Slope, "1 in per 4 ft", 1.0 / 48)]
    [InlineData(Dimension.Slope, "10 mm/m", 0.01)]
    [InlineData(Dimension.Slope, "1 cm/m", 0.01)]
    [InlineData(Dimension.Slope, "2 %", 0.02)]
    [InlineData(Dimension.Slope, "1:50", 0.02)]
    [InlineData(Dimension.Temperature, "68 F", 293.15)]
    [InlineData(Dimension.Temperature, "68 °F", 293.15)]
    [InlineData(Dimension.Temperature, "20 C", 293.15)]
    [InlineData(Dimension.Temperature, "20 deg C", 293.15)]
    [InlineData(Dimension.Temperature, "293.15 K", 293.15)]
    [InlineData(Dimension.Power, "1.5 kW", 1500)]
    [InlineData(Dimension.Voltage, "120 V", 120)]
    [InlineData(Dimension.Frequency, "60 hz", 60)]
    [InlineData(Dimension.Current, "15 amps", 15)]
    [InlineData(Dimension.Duration, "1 h 30 min", 5400)]
    [InlineData(Dimension.Duration, "1h30min", 5400)]
    [InlineData(Dimension.Duration, "3 d", 259200)]
    [InlineData(Dimension.Mass, "31 lb", 14.06136347)]
    [InlineData(Dimension.Mass, "14 kg", 14)]
    [InlineData(Dimension.Mass, "250 g", 0.25)]
    [InlineData(Dimension.Force, "200 N", 200)]
    [InlineData(Dimension.Force, "1 lbf", 4.4482216152605)]
    [InlineData(Dimension.Force, "20 kg", 196.133)]
    [InlineData(Dimension.Share, "80 %", 0.8)]
    [InlineData(Dimension.Share, "80%", 0.8)]
    public void What_growers_write_is_read(Dimension dimension, string text, double si) =>
        Assert.Equal(si, QuantityText.Parse(dimension, text));

    [Theory]
    // Factors as printed in NIST Special Publication 811 (2008), appendix B.8, from memory; tolerance half of their seventh digit.
    [InlineData(Dimension.Length, "1 yd", 9.144e-1)]
    [InlineData(Dimension.Volume, "1 gal", 3.785412e-3)]
    [InlineData(Dimension.Volume, "1 qt", 9.463529e-4)]
    [InlineData(Dimension.Volume, "1 pt", 4.731765e-4)]
    [InlineData(Dimension.Volume, "1 fl oz", 2.957353e-5)]
    [InlineData(Dimension.Volume, "1 cubic inch", 1.638706e-5)]
    [InlineData(Dimension.Volume, "1 cu ft", 2.831685e-2)]
    [InlineData(Dimension.Volume, "1 imperial gallon", 4.54609e-3)]
    [InlineData(Dimension.Flow, "1 gpm", 6.309020e-5)]
    [InlineData(Dimension.Flow, "1 gpd", 4.381264e-8)]
    [InlineData(Dimension.Flow, "1 cfm", 4.719474e-4)]
    [InlineData(Dimension.Pressure, "1 psi", 6.894757e3)]
    [InlineData(Dimension.Pressure, "1 ft H2O", 2.989067e3)]
    [InlineData(Dimension.Pressure, "1 in of water", 2.490889e2)]
    [InlineData(Dimension.Pressure, "1 m H2O", 9.80665e3)]
    [InlineData(Dimension.Power, "1 hp", 7.456999e2)]
    public void Factors_are_those_of_the_tables(Dimension dimension, string text, double si)
    {
        var halfOfTheSeventhDigit = 0.5e-6 * Math.Pow(10, Math.Floor(Math.Log10(si)));
        Assert.Equal(si, QuantityText.Parse(dimension, text), halfOfTheSeventhDigit);
    }

    [Theory]
    [InlineData(Dimension.Length, "")]
    [InlineData(Dimension.Length, "12")]
    [InlineData(Dimension.Length, "a foot")]
    [InlineData(Dimension.Length, "1,000 ft")]
    [InlineData(Dimension.Length, "12,500 mm")]
    [InlineData(Dimension.Length, "1,000,000 mm")]
    [InlineData(Dimension.Length, "1,000.5 mm")]
    [InlineData(Dimension.Length, "1.000,5 mm")]
    [InlineData(Dimension.Length, "2,5,5 cm")]
    [InlineData(Dimension.Length, "2, 5 cm")]
    [InlineData(Dimension.Length, "2 ,5 cm")]
    [InlineData(Dimension.Length, ",5 cm")]
    [InlineData(Dimension.Length, "5, cm")]
    [InlineData(Dimension.Length, "1/2,5 in")]
    [InlineData(Dimension.Length, "1,5/2 in")]
    [InlineData(Dimension.Volume, "1,000 L")]
    [InlineData(Dimension.Length, "3 in 6 ft")]
    [InlineData(Dimension.Length, "6 ft 3 ft")]
    [InlineData(Dimension.Length, "6 ft 3")]
    [InlineData(Dimension.Length, "6 ft -3 in -2 mm x")]
    [InlineData(Dimension.Length, "1/0 in")]
    [InlineData(Dimension.Length, "1 gal")]
    [InlineData(Dimension.Length, "1e999 m")]
    [InlineData(Dimension.Length, "99999999999999999999999999999999999 m")]
    [InlineData(Dimension.Length, "3½3 in")] // not three and a twenty-third
    [InlineData(Dimension.Length, "NaN m")]
    [InlineData(Dimension.Length, "∞ m")]
    [InlineData(Dimension.Pressure, "1 MPa")]
    [InlineData(Dimension.Slope, "1:0")]
    [InlineData(Dimension.Slope, "1 in per 0 ft")]
    [InlineData(Dimension.Slope, "0.02")]
    [InlineData(Dimension.Share, "0.8")]
    [InlineData(Dimension.Temperature, "20")]
    [InlineData(Dimension.Power, "1 MW")]
    public void What_can_be_misread_is_refused(Dimension dimension, string text)
    {
        Assert.False(QuantityText.TryParse(dimension, text, out _));
        Assert.Contains("such as", QuantityText.Read(dimension, text).Expected().Told(), StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => QuantityText.Parse(dimension, text));
    }

    [Theory]
    [InlineData(Dimension.Length, "2,5 cm", 0.025)]
    [InlineData(Dimension.Length, "0,75 m", 0.75)]
    [InlineData(Dimension.Length, "-2,5 cm", -0.025)]
    [InlineData(Dimension.Length, "1,5e3 mm", 1.5)]
    [InlineData(Dimension.Length, "1 m 2,5 cm", 1.025)]
    [InlineData(Dimension.Length, "0,500 m", 0.5)]
    [InlineData(Dimension.Length, "1,2345 m", 1.2345)]
    [InlineData(Dimension.Length, "1234,500 mm", 1.2345)]
    [InlineData(Dimension.Volume, "1,5 L", 0.0015)]
    [InlineData(Dimension.Slope, "1:12,5", 0.08)]
    [InlineData(Dimension.Slope, "2,5 mm per m", 0.0025)]
    [InlineData(Dimension.Conductivity, "1,8 mS/cm", 0.18)]
    public void A_decimal_comma_is_read_where_it_can_be_nothing_else(Dimension dimension, string text, double si)
    {
        Assert.Equal(si, QuantityText.Parse(dimension, text));
        Assert.Matches(QuantityPattern.Of(dimension), text);
    }

    [Fact]
    public void A_comma_that_may_part_thousands_is_told_with_both_its_readings()
    {
        var expected = QuantityText.Read(Dimension.Volume, "1,000 L").Expected().Told();
        Assert.Contains("\"1,000\", which can be read as 1000 or as 1.000", expected, StringComparison.Ordinal);
        Assert.DoesNotMatch(QuantityPattern.Of(Dimension.Volume), "1,000 L");
    }

    [Fact]
    public void A_comma_is_read_as_the_point_or_not_at_all() =>
        Gen.Select(Gen.Int[0, 99_999], Gen.Int[0, 99_999], Gen.Int[1, 5])
            .Holds(
                (whole, part, width) =>
                {
                    var digits = part.ToString("D5", System.Globalization.CultureInfo.InvariantCulture)[..width];
                    var comma = QuantityText.Read(Dimension.Length, Invariant($"{whole},{digits} m")).Value;
                    var isThousands = width == 3 && whole is > 0 and < 1000;
                    return isThousands
                        ? comma is null
                        : comma == QuantityText.Parse(Dimension.Length, Invariant($"{whole}.{digits} m"));
                }
            );

    [Theory]
    [InlineData(Dimension.Length, "1 foots", "1 ft")]
    [InlineData(Dimension.Length, "12 inchs", "12 in")]
    [InlineData(Dimension.Volume, "35 gallns", "35 gal")]
    [InlineData(Dimension.Duration, "15 minuts", "15 min")]
    [InlineData(Dimension.Pressure, "15 psu", "15 psi")]
    [InlineData(Dimension.Length, "3 quux", null)]
    public void A_misspelt_unit_gets_a_suggestion(Dimension dimension, string text, string? nearest) =>
        Assert.Equal(nearest, QuantityText.Read(dimension, text).Nearest);

    [Fact]
    public void A_bare_number_is_told_its_units() =>
        Assert.Contains(
            "(in, ft, yd,",
            QuantityText.Read(Dimension.Length, "12").Expected().Told(),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(Dimension.Length, 1.6129, UnitSystem.Us, "5 ft 3 1/2 in")]
    [InlineData(Dimension.Length, 0.009525, UnitSystem.Us, "3/8 in")]
    [InlineData(Dimension.Length, -0.0254, UnitSystem.Us, "-1 in")]
    [InlineData(Dimension.Length, 0.004191, UnitSystem.Us, "0.165 in")]
    [InlineData(Dimension.Length, 0, UnitSystem.Us, "0 in")]
    [InlineData(Dimension.Length, 3.048, UnitSystem.Us, "10 ft")]
    [InlineData(Dimension.Length, 3.0479, UnitSystem.Us, "10 ft")] // rounding must not give "9 ft 12 in"
    [InlineData(Dimension.Length, 0.36, UnitSystem.Metric, "36 cm")]
    [InlineData(Dimension.Length, 0.025, UnitSystem.Metric, "25 mm")]
    [InlineData(Dimension.Length, 3.5, UnitSystem.Metric, "3.5 m")]
    [InlineData(Dimension.Volume, 0.13248941244, UnitSystem.Us, "35 gal")]
    [InlineData(Dimension.Volume, 0.13, UnitSystem.Metric, "130 L")]
    [InlineData(Dimension.Flow, 0.001, UnitSystem.Metric, "3600 L/h")]
    [InlineData(Dimension.Flow, 0.003785411784 / 3600, UnitSystem.Us, "1 gph")]
    [InlineData(Dimension.Pressure, 103421.4, UnitSystem.Us, "15 psi")]
    [InlineData(Dimension.Slope, 1.0 / 48, UnitSystem.Us, "1/4 in per ft")]
    [InlineData(Dimension.Slope, 0.02, UnitSystem.Us, "2 %")]
    [InlineData(Dimension.Temperature, 293.15, UnitSystem.Us, "68 °F")]
    [InlineData(Dimension.Temperature, 293.15, UnitSystem.Metric, "20 °C")]
    [InlineData(Dimension.Duration, 5400, UnitSystem.Us, "1 h 30 min")]
    [InlineData(Dimension.Duration, 259200, UnitSystem.Us, "3 d")]
    [InlineData(Dimension.Mass, 14, UnitSystem.Us, "30.9 lb")]
    [InlineData(Dimension.Mass, 0.25, UnitSystem.Metric, "250 g")]
    [InlineData(Dimension.Force, 200, UnitSystem.Us, "45 lbf")]
    [InlineData(Dimension.Force, 2500, UnitSystem.Metric, "2.5 kN")]
    [InlineData(Dimension.Share, 0.8, UnitSystem.Us, "80 %")]
    public void Printed_for_people(Dimension dimension, double si, UnitSystem units, string text) =>
        Assert.Equal(text, QuantityText.Format(dimension, si, units));

    [Theory]
    [InlineData(Dimension.Length, "30 cm", UnitSystem.Us, "30 cm")]
    [InlineData(Dimension.Length, "6 ft 3 1/2 in", UnitSystem.Us, "75.5 in")]
    [InlineData(Dimension.Length, "5/64 in", UnitSystem.Us, "5/64 in")]
    [InlineData(Dimension.Length, "30 cm", UnitSystem.Metric, "30 cm")]
    [InlineData(Dimension.Slope, "1/4 in per ft", UnitSystem.Us, "1/4 in per ft")]
    [InlineData(Dimension.Flow, "1 gph", UnitSystem.Us, "1 gph")]
    [InlineData(Dimension.Flow, "4 L/h", UnitSystem.Us, "4 L/h")]
    [InlineData(Dimension.Temperature, "68 F", UnitSystem.Us, "68 F")]
    [InlineData(Dimension.Duration, "14 h", UnitSystem.Us, "14 h")]
    public void Exact_text_is_short_where_it_can_be(Dimension dimension, string text, UnitSystem units, string exact) =>
        Assert.Equal(exact, QuantityText.Exact(dimension, QuantityText.Parse(dimension, text), units));

    [Theory]
    [InlineData(-40)]
    [InlineData(0)]
    [InlineData(68)]
    [InlineData(98.6)]
    public void Fahrenheit_agrees_with_the_units_library(double fahrenheit) =>
        Assert.Equal(
            UnitsNet.Temperature.FromDegreesFahrenheit(fahrenheit).Kelvins,
            QuantityText.Parse(Dimension.Temperature, Invariant($"{fahrenheit} F")),
            1e-9
        );

    private static readonly Gen<(Dimension Dimension, double Si, UnitSystem Units)> s_quantities = Gen.Select(
        Gen.Enum<Dimension>(),
        Gen.OneOf(
            Gen.Double[-1e4, 1e4],
            Gen.Double[-1, 1],
            Gen.Double[-1e-6, 1e-6],
            Gen.Double[-1e-30, 1e-30],
            Gen.Int[-4000, 4000].Select(sixteenths => sixteenths * 0.0254 / 16),
            Gen.Int[0, 4000].Select(cm => cm / 100.0)
        ),
        Gen.Enum<UnitSystem>()
    );

    [Fact]
    public void Exact_text_reads_back_bit_for_bit() =>
        s_quantities.Holds(
            q => QuantityText.Parse(q.Dimension, QuantityText.Exact(q.Dimension, q.Si, q.Units)) == q.Si,
            iter: 20_000
        );

    [Fact]
    public void Text_for_people_reads_back_nearly() =>
        s_quantities
            .Where(q => Math.Abs(q.Si) > 1e-9)
            .Holds(
                q =>
                {
                    var back = QuantityText.Parse(q.Dimension, QuantityText.Format(q.Dimension, q.Si, q.Units));
                    // Three figures, or half a sixteenth of an inch, a tenth of a degree, half a minute: whichever is more.
                    var coarse = q.Dimension switch
                    {
                        Dimension.Temperature => 0.06,
                        Dimension.Duration => 31,
                        _ => 0,
                    };
                    return Math.Abs(back - q.Si) <= coarse + (0.07 * Math.Abs(q.Si));
                },
                iter: 5_000
            );

    [Fact]
    public void The_same_length_in_feet_inches_and_centimetres_is_the_same_double() =>
        Gen.Int[-10_000, 10_000]
            .Holds(inches =>
            {
                var metres = QuantityText.Parse(Dimension.Length, Invariant($"{inches} in"));
                var centimetres = (inches * 2.54m).ToString(System.Globalization.CultureInfo.InvariantCulture);
                var feet = Math.Abs(inches) / 12;
                var sign = inches < 0 ? "-" : "";
                return metres == QuantityText.Parse(Dimension.Length, Invariant($"{centimetres} cm"))
                    && metres
                        == QuantityText.Parse(
                            Dimension.Length,
                            Invariant($"{sign}{feet} ft {Math.Abs(inches) % 12} in")
                        );
            });

    [Fact]
    public void The_same_flow_by_hour_minute_and_day_is_the_same_double() =>
        Gen.Int[0, 100_000]
            .Holds(n =>
                QuantityText.Parse(Dimension.Flow, Invariant($"{n} gph"))
                    == QuantityText.Parse(Dimension.Flow, Invariant($"{n * 24L} gal/day"))
                && QuantityText.Parse(Dimension.Flow, Invariant($"{n} gpm"))
                    == QuantityText.Parse(Dimension.Flow, Invariant($"{n * 60L} gph"))
            );

    [Fact]
    public void Any_text_is_read_or_refused_without_an_exception() =>
        Gen.Select(
                Gen.Enum<Dimension>(),
                Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789 /-.'\"inftmcgalphLeE%:,"], 0, 30])
            )
            .Holds(
                (dimension, text) =>
                    QuantityText.Read(dimension, text).Value is null or (> double.MinValue and < double.MaxValue),
                iter: 20_000
            );
}
