using System.Globalization;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Language;

/// <summary>Makes words of what the engine has to say, in the reader's language and in the units asked for.</summary>
/// <param name="units">The units to tell values in; they need not be the rig's.</param>
public sealed class PlanWords(UnitSystem units)
{
    private const int MostPlaces = 6;

    /// <summary>The units values are told in.</summary>
    public UnitSystem Units { get; } = units;

    /// <summary>Quantities in these units.</summary>
    public QuantityWords Quantities { get; } = new(units);

    /// <summary>A phrase in words.</summary>
    /// <param name="phrase">The phrase.</param>
    /// <exception cref="KeyNotFoundException">There is no text of its key.</exception>
    public string Of(Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        if (phrase.Key.Length == 0)
        {
            return Told(phrase.Values[0]);
        }

        return phrase.Values.Count == 0
            ? Words.Of(phrase.Key)
            : string.Format(
                CultureInfo.InvariantCulture,
                Words.Of(phrase.Key),
                [.. phrase.Values.Select(object (value) => Told(value))]
            );
    }

    /// <summary>A measured value in words.</summary>
    /// <param name="value">The value.</param>
    public string Of(Measured value) =>
        value.Form switch
        {
            MeasuredForm.Mark => Quantities.Mark(value.Value),
            MeasuredForm.Shift => Quantities.Shift(value.Value),
            MeasuredForm.Size => Quantities.Size(value.Value),
            MeasuredForm.Head => Quantities.Head(value.Value),
            MeasuredForm.Velocity => Quantities.Velocity(value.Value),
            MeasuredForm.Percent => QuantityWords.Percent(value.Value),
            MeasuredForm.Number => QuantityWords.Number(value.Value),
            MeasuredForm.Concentration => $"{Figures(value.Value * 1000)} mg/L",
            MeasuredForm.PH => QuantityWords.Number(value.Value, "0.0"),
            MeasuredForm.Ec => $"{QuantityWords.Number(value.Value * 10, "0.00")} dS/m",
            MeasuredForm.Weighed => $"{QuantityWords.Number(value.Value * 1000, Decimals(value.Step * 1000))} g",
            MeasuredForm.MeasuredOut =>
                $"{QuantityWords.Number(value.Value * 1e6, value.Value < 9.95e-6 ? "0.0" : "0")} mL",
            MeasuredForm.Millimoles => $"{Figures(value.Value)} mmol/L",
            MeasuredForm.Milliequivalents => $"{Figures(value.Value)} meq/L",
            MeasuredForm.GramsPerLitre => $"{Figures(value.Value)} g/L",
            MeasuredForm.Days => Days(value.Value),
            MeasuredForm.Warming => Words.Of("measured.a-day", Quantities.Difference(value.Value)),
            MeasuredForm.FloorLoad => Quantities.FloorLoad(value.Value),
            MeasuredForm.Tool => Quantities.Tool(value.Value),
            MeasuredForm.Millimetres => $"{QuantityWords.Number(value.Value * 1000)} mm",
            MeasuredForm.Newtons => $"{QuantityWords.Number(value.Value)} N",
            MeasuredForm.NewtonMetres => $"{QuantityWords.Number(value.Value)} N m",
            MeasuredForm.Celsius => $"{QuantityWords.Number(value.Value - 273.15)} °C",
            MeasuredForm.Degrees => $"{QuantityWords.Number(value.Value * 180 / Math.PI)}°",
            MeasuredForm.Opening => $"{QuantityWords.Number(value.Value * 1e6, "0")} µm",
            _ => QuantityText.Format(value.Dimension, WithoutNoise(value), Units),
        };

    /// <summary>Where a finding is: all its places, or the first few of many.</summary>
    /// <param name="finding">The finding.</param>
    public string Place(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var places = finding.Places;
        if (places.Count > 1 && places.All(place => place == Engine.Findings.Place.OfRow(place.Row)))
        {
            return Of(Phrase.Of("place.rows", new Numbers([.. places.Select(place => place.Row)])));
        }

        var first = string.Join("; ", places.Take(MostPlaces).Select(place => Of(place.Name)));
        return places.Count > MostPlaces ? Words.Of("place.more", first, places.Count - MostPlaces) : first;
    }

    /// <summary>A finding in words.</summary>
    /// <param name="finding">The finding.</param>
    public ToldFinding Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return new ToldFinding(
            finding.Rule,
            finding.Level,
            Place(finding),
            finding.Field,
            Of(finding.What),
            Of(finding.Value),
            Of(finding.Limit),
            Of(finding.Remedy),
            finding.Source
        );
    }

    /// <summary>Findings in words, in their order.</summary>
    /// <param name="findings">The findings.</param>
    public IReadOnlyList<ToldFinding> Of(IEnumerable<Finding> findings) => [.. findings.Select(Of)];

    /// <summary>Several phrases in a row.</summary>
    /// <param name="several">The phrases, and what stands between them.</param>
    public string Of(Several several)
    {
        ArgumentNullException.ThrowIfNull(several);
        var each = several.Each.Select(Of).Where(text => text.Length > 0).ToList();
        return several.Joint switch
        {
            Joint.And when each.Count > 1 => Words.Of("list.and", string.Join(", ", each.SkipLast(1)), each[^1]),
            Joint.Or when each.Count > 1 => Words.Of("list.or", string.Join(", ", each.SkipLast(1)), each[^1]),
            Joint.Semicolon => string.Join("; ", each),
            Joint.Comma => string.Join(", ", each),
            _ => string.Join(" ", each),
        };
    }

    private string Told(object value) =>
        value switch
        {
            string text => text,
            int count => QuantityWords.Count(count),
            Measured measured => Of(measured),
            Phrase phrase => Of(phrase),
            Numbers numbers => Numbers(numbers.Each),
            Several several => Of(several),
            _ => throw new InvalidOperationException($"A {value.GetType().Name} cannot be told."),
        };

    // The fewest decimals that show every step of the scale.
    private static string Decimals(double step)
    {
        if (step <= 0)
        {
            return "0.###";
        }

        var decimals = 0;
        for (var left = step; decimals < 4 && Math.Abs(left - Math.Round(left)) > 1e-3 * left; left *= 10)
        {
            decimals++;
        }

        return decimals == 0 ? "0" : $"0.{new string('0', decimals)}";
    }

    /// <summary>"1 to 4, 7": numbers as short as it goes, each said once.</summary>
    /// <param name="numbers">The numbers, in any order.</param>
    public static string Numbers(IEnumerable<int> numbers) =>
        string.Join(
            ", ",
            QuantityWords
                .Ranges(numbers)
                .Select(r =>
                    r.First == r.Last
                        ? QuantityWords.Count(r.First)
                        : Words.Of("list.range", QuantityWords.Count(r.First), QuantityWords.Count(r.Last))
                )
        );

    private static string Days(double seconds)
    {
        var days = QuantityWords.Number(seconds / 86_400, "0.#");
        return Words.Of(days == "1" ? "measured.days.one" : "measured.days.many", days);
    }

    /// <summary>[SI] A value of which nothing is left that nobody can measure: small ones are told in whole steps.</summary>
    private double WithoutNoise(Measured value)
    {
        var us = Units is UnitSystem.Us;
        var step = value.Dimension switch
        {
            Dimension.Length => us ? 0.000254 : 1e-4, // a caliper's 0.01 in or 0.1 mm
            Dimension.Volume => us ? 2.95735295625e-6 : 1e-6, // a syringe's 0.1 fl oz or 1 mL
            Dimension.Flow => us ? 4.381263638888889e-9 : 1e-3 / 86_400, // 0.1 gal or 1 L in a day
            Dimension.Pressure => us ? 68.94757293168361 : 10, // 0.01 psi or a millimetre of water
            Dimension.Slope or Dimension.Share => 1e-4, // 0.01 %
            Dimension.Force => us ? 0.44482216152605 : 0.1, // 0.1 lbf or 0.1 N
            Dimension.Mass => 1e-5, // a pocket scale's 0.01 g
            Dimension.Power => 0.1,
            Dimension.Current => 0.01,
            Dimension.Duration => 1,
            _ => 0,
        };
        return step > 0 && Math.Abs(value.Value) < 50 * step ? Math.Round(value.Value / step) * step : value.Value;
    }

    // As many figures as a water report gives.
    private static string Figures(double value) =>
        QuantityWords.Number(
            value,
            Math.Abs(value) is >= 100 or 0 ? "0"
                : Math.Abs(value) >= 10 ? "0.#"
                : Math.Abs(value) >= 0.1 ? "0.##"
                : "0.####"
        );
}
