namespace Dripwright.Engine.Units;

/// <summary>Quantities as people write them: read, printed for people, and printed so that nothing is lost.</summary>
/// <remarks>
/// Reads decimals ("2.5 gph"), fractions ("1/2 in", "1 1/2 in", "1-1/2 in", "1½ in"), feet and inches ("6 ft 3 in",
/// "6' 3 1/2\""), sums of times ("1 h 30 min"), slopes ("1/4 in per ft", "10 mm/m", "2 %", "1:50"), in US and metric units
/// with their long names. Capitals do not matter, so "MPa" and "MW", which they tell from a billionth, are no units here. A gallon is a US gallon unless
/// "imp gal" is written. A decimal comma is read where it can be nothing else ("2,5 cm", "0,750 L"). A number without a unit and
/// one whose comma may part thousands ("1,000 L") are refused, for both can be misread. What is written has a point.
/// Method page: docs/methods/units.md
/// </remarks>
public static partial class QuantityText
{
    /// <summary>Most characters a quantity may have.</summary>
    public const int MaxLength = 100;

    /// <summary>Reads a quantity; says what is wrong where it cannot.</summary>
    /// <param name="dimension">What it measures.</param>
    /// <param name="text">The text.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such dimension.</exception>
    public static QuantityReading Read(Dimension dimension, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var known = UnitTable.Of(dimension);
        if (text.Length > MaxLength)
        {
            return new(dimension, null, QuantityFlaw.TooLong);
        }
        var tidy = NumberText.Tidy(text);
        if (NumberText.PutPoint(ref tidy) is { } doubt)
        {
            return new(
                dimension,
                null,
                doubt.Length == 0 ? QuantityFlaw.Commas : QuantityFlaw.EitherComma,
                Number: doubt
            );
        }
        try
        {
            return dimension switch
            {
                Dimension.Length or Dimension.Duration => ReadSum(dimension, known, tidy),
                Dimension.Slope => ReadSlope(tidy),
                _ => ReadSingle(dimension, tidy),
            };
        }
        catch (OverflowException)
        {
            return new(dimension, null, QuantityFlaw.TooLarge);
        }
    }

    /// <summary>Reads a quantity.</summary>
    /// <param name="dimension">What it measures.</param>
    /// <param name="text">The text.</param>
    /// <param name="si">[SI unit of the dimension] The value; zero where the text cannot be read.</param>
    /// <returns>Whether the text is such a quantity.</returns>
    public static bool TryParse(Dimension dimension, string text, out double si)
    {
        var value = Read(dimension, text).Value;
        si = value ?? 0;
        return value is not null;
    }

    /// <summary>Reads a quantity that is known to be good.</summary>
    /// <param name="dimension">What it measures.</param>
    /// <param name="text">The text.</param>
    /// <returns>[SI unit of the dimension] The value.</returns>
    /// <exception cref="FormatException">The text is no such quantity.</exception>
    public static double Parse(Dimension dimension, string text) =>
        Read(dimension, text) is { Value: { } si }
            ? si
            : throw new FormatException(
                $"\"{text}\" is no {dimension}, such as {string.Join(" or ", Examples(dimension))}."
            );

    /// <summary>Good quantities of the dimension, such as <c>1 ft</c> and <c>30 cm</c>.</summary>
    /// <param name="dimension">What they measure.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such dimension.</exception>
    public static IReadOnlyList<string> Examples(Dimension dimension) =>
        dimension switch
        {
            Dimension.Length => ["1 ft", "30 cm"],
            Dimension.Volume => ["35 gal", "130 L"],
            Dimension.Flow => ["1 gph", "4 L/h"],
            Dimension.Pressure => ["15 psi", "100 kPa"],
            Dimension.Slope => ["1/4 in per ft", "10 mm/m", "2 %"],
            Dimension.Temperature => ["68 F", "20 C"],
            Dimension.Power => ["40 W"],
            Dimension.Voltage => ["120 V"],
            Dimension.Frequency => ["60 Hz"],
            Dimension.Current => ["15 A"],
            Dimension.Duration => ["15 min", "1 h 30 min"],
            Dimension.Share => ["80 %"],
            Dimension.Mass => ["30 lb", "14 kg"],
            Dimension.Conductivity => ["2.0 dS/m", "2.0 mS/cm"],
            Dimension.Force => ["45 lbf", "200 N"],
            _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "Not a dimension."),
        };

    /// <summary>One number and all the rest its unit.</summary>
    private static QuantityReading ReadSingle(Dimension dimension, string tidy)
    {
        if (!NumberText.TryRead(tidy, out var number))
        {
            return new(dimension, null);
        }
        var name = Lower(tidy[number.Text.Length..].Trim());
        return Find(dimension, name) is { } unit
            ? new(dimension, number.In(unit))
            : Unknown(dimension, number.Text, name);
    }

    /// <summary>Numbers with their units, the greater unit first: feet and inches, hours and minutes.</summary>
    private static QuantityReading ReadSum(Dimension dimension, IReadOnlyList<MeasureUnit> known, string tidy)
    {
        decimal over = 0;
        decimal under = 1;
        var factorBefore = decimal.MaxValue;
        var negative = false;
        var rest = tidy;
        for (var first = true; first || rest.Length > 0; first = false)
        {
            // The hyphen of 5'-3" belongs to neither number.
            rest = first ? rest : rest.TrimStart('-').TrimStart(' ');
            if (!NumberText.TryRead(rest, out var number))
            {
                return new(dimension, null);
            }
            var unitText = rest[number.Text.Length..].TrimStart(' ');
            if (LongestUnit(known, unitText) is not var (unit, length))
            {
                var end = unitText.AsSpan().IndexOfAnyInRange('0', '9');
                return first
                    ? Unknown(dimension, number.Text, Lower(end < 0 ? unitText : unitText[..end]).Trim())
                    : new(dimension, null);
            }
            if (unit.Numerator >= factorBefore || (!first && (number.Over < 0 || number.Text[0] == '+')))
            {
                return new(dimension, null, QuantityFlaw.Order);
            }
            negative |= number.Text[0] == '-';
            factorBefore = unit.Numerator;
            if (first && length == unitText.Length)
            {
                return new(dimension, number.In(unit));
            }
            var part = Math.Abs(number.Over) * unit.Numerator;
            (over, under) = ((over * number.Under) + (part * under), under * number.Under);
            rest = unitText[length..].TrimStart(' ');
        }
        return new(dimension, MeasureUnit.ToDouble((negative ? -over : over) / under));
    }

    private static (MeasureUnit Unit, int Length)? LongestUnit(IReadOnlyList<MeasureUnit> known, string text)
    {
        var lower = Lower(text);
        (MeasureUnit, int)? longest = null;
        var most = 0;
        foreach (var unit in known)
        {
            foreach (var name in unit.Names)
            {
                if (
                    name.Length > most
                    && lower.StartsWith(name, StringComparison.Ordinal)
                    && EndsAt(lower, name.Length)
                )
                {
                    longest = (unit, name.Length);
                    most = name.Length;
                }
            }
        }
        return longest;
    }

    // A name ends where no letter follows; a quote mark ends anywhere. "6ft3in" is six feet three.
    private static bool EndsAt(string text, int end) =>
        end == text.Length
        || text[end - 1] is '"' or '\''
        || !(char.IsLetter(text[end]) || text[end] is '/' or '^' or '.' or '%');

    /// <summary>A share, a ratio "1:50", or a length per length.</summary>
    private static QuantityReading ReadSlope(string tidy)
    {
        var wrong = new QuantityReading(Dimension.Slope, null);
        var colon = tidy.IndexOf(':', StringComparison.Ordinal);
        if (colon >= 0)
        {
            var (drop, run) = (tidy[..colon].Trim(), tidy[(colon + 1)..].Trim());
            var good =
                NumberText.TryRead(drop, out var one) & NumberText.TryRead(run, out var many)
                && one.Text.Length == drop.Length
                && many.Text.Length == run.Length
                && many.Over > 0;
            return good
                ? wrong with
                {
                    Value = MeasureUnit.ToDouble(one.Over * many.Under / (one.Under * many.Over)),
                }
                : wrong;
        }
        var (split, width) = SlopeSplit(tidy);
        if (split < 0)
        {
            return ReadSingle(Dimension.Slope, tidy);
        }
        var over = tidy[..split].Trim();
        var under = tidy[(split + width)..].Trim();
        var perUnit = UnitTable.Find(UnitTable.Lengths, Lower(under));
        if (!NumberText.TryRead(over, out var rise))
        {
            return wrong;
        }
        var riseName = Lower(over[rise.Text.Length..].Trim());
        var riseUnit = UnitTable.Find(UnitTable.Lengths, riseName);
        var length = new NumberText(1, 1, "");
        if (perUnit is null && NumberText.TryRead(under, out length))
        {
            perUnit = UnitTable.Find(UnitTable.Lengths, Lower(under[length.Text.Length..].Trim()));
        }
        if (riseUnit is null || perUnit is null || length.Over <= 0)
        {
            return wrong;
        }
        if (ReferenceEquals(riseUnit, perUnit) && length.Text.Length == 0)
        {
            return wrong with { Value = rise.In(UnitTable.One) };
        }
        var drops = rise.Over * riseUnit.Numerator * length.Under;
        return wrong with { Value = MeasureUnit.ToDouble(drops / (length.Over * perUnit.Numerator * rise.Under)) };
    }

    // The slash of "1/4 in/ft" that divides is the one that follows no digit.
    private static (int At, int Width) SlopeSplit(string tidy)
    {
        var per = tidy.IndexOf(" per ", StringComparison.OrdinalIgnoreCase);
        if (per >= 0)
        {
            return (per, 5);
        }
        for (var i = 1; i < tidy.Length; i++)
        {
            if (tidy[i] == '/' && !char.IsAsciiDigit(tidy[i - 1]))
            {
                return (i, 1);
            }
        }
        return (-1, 0);
    }

    private static MeasureUnit? Find(Dimension dimension, string name)
    {
        if (UnitTable.Find(UnitTable.Of(dimension), name) is { } unit)
        {
            return unit;
        }
        if (dimension is not Dimension.Flow)
        {
            return null;
        }
        var per = name.IndexOf(" per ", StringComparison.Ordinal);
        var (split, width) = per >= 0 ? (per, 5) : (name.IndexOf('/', StringComparison.Ordinal), 1);
        return
            split > 0
            && UnitTable.Find(UnitTable.Volumes, name[..split].Trim()) is { } volume
            && UnitTable.Find(UnitTable.Durations, name[(split + width)..].Trim()) is { } time
            ? UnitTable.Quotient(name, volume, time, [])
            : null;
    }

    private static QuantityReading Unknown(Dimension dimension, string number, string name)
    {
        var known = UnitTable.Of(dimension);
        if (name.Length == 0)
        {
            return new(dimension, null, QuantityFlaw.NoUnit);
        }
        if (dimension is Dimension.Conductivity && name is ("ppm" or "mg/l"))
        {
            return new(dimension, null, QuantityFlaw.Ppm);
        }
        var nearest = NearestName.Of(name, known.SelectMany(unit => unit.Names));
        var symbol = nearest is null ? null : UnitTable.Find(known, nearest)!.Symbol;
        return new(dimension, null, Nearest: symbol is null ? null : $"{number} {symbol}");
    }

#pragma warning disable CA1308 // Names of units are compared in lower case because that is how people read them.
    private static string Lower(string text) => text.ToLowerInvariant();
#pragma warning restore CA1308
}
