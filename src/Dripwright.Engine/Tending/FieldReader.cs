using System.Globalization;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Files;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Tending;

/// <summary>One thing that was asked and answered wrongly.</summary>
/// <param name="Field">Which, by the name it was asked under.</param>
/// <param name="Found">What was written.</param>
/// <param name="Expected">What would do.</param>
public sealed record FieldFault(string Field, Phrase Found, Phrase Expected);

/// <summary>Reads what is asked about a tank: on the command line, over HTTP and on the page alike. Tells all faults at once.</summary>
public sealed class FieldReader
{
    private readonly List<FieldFault> _faults = [];

    /// <summary>All that was wrong so far.</summary>
    public IReadOnlyList<FieldFault> Faults => _faults;

    /// <summary>A quantity with its unit; nought after noting a fault.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="dimension">What it measures.</param>
    /// <param name="text">What was written.</param>
    /// <param name="assumed">Taken where nothing was written; a fault where null.</param>
    /// <returns>[SI] The value.</returns>
    public double Quantity(string field, Dimension dimension, string? text, string? assumed = null)
    {
        var written = string.IsNullOrWhiteSpace(text) ? assumed ?? "" : text;
        var reading = QuantityText.Read(dimension, written);
        if (reading.Value is { } si)
        {
            return si;
        }

        Fault(field, text, reading.Expected());
        return 0;
    }

    /// <summary>A volume of 0 or more that may be left out; nought where it is, or after noting a fault.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="text">What was written.</param>
    /// <returns>[m³] The volume.</returns>
    public double Volume(string field, string? text)
    {
        var volume = Maybe(field, Dimension.Volume, text) ?? 0;
        if (volume >= 0)
        {
            return volume;
        }

        Fault(field, text, Phrase.Of("ask.volume-not-negative", QuantityPhrases.Example(Dimension.Volume)));
        return 0;
    }

    /// <summary>A quantity that may be left out.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="dimension">What it measures.</param>
    /// <param name="text">What was written.</param>
    /// <returns>[SI] The value; null where nothing was written or after noting a fault.</returns>
    public double? Maybe(string field, Dimension dimension, string? text) =>
        string.IsNullOrWhiteSpace(text) ? null : Quantity(field, dimension, text);

    /// <summary>A plain number with a decimal point in every culture; nought after noting a fault.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="text">What was written.</param>
    /// <param name="example">A good one.</param>
    /// <returns>[-] The number, as it was written.</returns>
    public double Number(string field, string? text, string example)
    {
        if (
            double.TryParse(text?.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number)
        )
        {
            return number;
        }

        Fault(field, text, Phrase.Of("ask.number", example));
        return 0;
    }

    /// <summary>A pH; nought after noting a fault.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="text">What was written.</param>
    /// <returns>[-] The pH.</returns>
    public double Ph(string field, string? text)
    {
        if (PhText.Read(text ?? "") is { } ph)
        {
            return ph;
        }

        Fault(field, text, Phrase.Of("ask.ph"));
        return 0;
    }

    /// <summary>A whole number that may be left out.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="text">What was written.</param>
    /// <param name="most">Greatest value allowed.</param>
    public int? Count(string field, string? text, int most)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        if (
            int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number <= most
        )
        {
            return number;
        }

        Fault(field, text, Phrase.Of("ask.count", most));
        return null;
    }

    /// <summary>The strength that a meter shows.</summary>
    /// <param name="field">Name of its field.</param>
    /// <param name="text">What was written: "1.6 dS/m", or "1100 ppm" with a scale.</param>
    /// <param name="scaleField">Name of the scale's field.</param>
    /// <param name="scale">The meter's scale: 500, 640 or 700; null or empty where it shows EC.</param>
    /// <returns>[dS/m] EC at 25 °C.</returns>
    public double Strength(string field, string? text, string scaleField, string? scale)
    {
        var written = text?.Trim() ?? "";
        var isPpm = written.EndsWith("ppm", StringComparison.OrdinalIgnoreCase);
        if (string.IsNullOrWhiteSpace(scale) || !isPpm)
        {
            return Quantity(field, Dimension.Conductivity, text) * 10;
        }

        if (
            !int.TryParse(scale.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            || !Enum.IsDefined((PpmScale)number)
        )
        {
            Fault(scaleField, scale, Phrase.Of("ask.meter-scale"));
            return 0;
        }

        var ppm = Number(field, written[..^3], "\"1100 ppm\"");
        return PpmReading.ToEc(ppm, (PpmScale)number).DecisiemensPerMetre;
    }

    /// <summary>A reading of a tank; fields "ec", "meterScale", "ph", "volume" and "temperature".</summary>
    /// <param name="ec">Strength read.</param>
    /// <param name="meterScale">Scale of a meter that shows ppm.</param>
    /// <param name="ph">pH read.</param>
    /// <param name="volume">Water in the tank.</param>
    /// <param name="temperature">Its temperature; 20 °C where left out.</param>
    public TankReading Reading(string? ec, string? meterScale, string? ph, string? volume, string? temperature) =>
        new(
            Strength("ec", ec, "meterScale", meterScale),
            Ph("ph", ph),
            Quantity("volume", Dimension.Volume, volume),
            Quantity("temperature", Dimension.Temperature, temperature, "20 C") - 273.15
        );

    /// <summary>What else is known of a tank; fields "days" and "sodium".</summary>
    /// <param name="days">Days since it was last mixed fresh.</param>
    /// <param name="sodium">Sodium measured, as a report words it.</param>
    public TankPast Past(string? days, string? sodium)
    {
        double? held = null;
        if (!string.IsNullOrWhiteSpace(sodium))
        {
            var reading = NutrientText.Read("sodium", sodium);
            held = reading.Value?.Value;
            if (held is null)
            {
                Fault("sodium", sodium, reading.Expected);
            }
            else if (held < 0)
            {
                Fault("sodium", sodium, Phrase.Of("ask.amount-not-negative", reading.Expected));
                held = null;
            }
        }

        return new TankPast(Count("days", days, 3650), held);
    }

    /// <summary>One of two readings of which only strength and level count.</summary>
    /// <param name="name">"first" or "second": its fields are "firstEc" and "firstVolume".</param>
    /// <param name="ec">Strength read.</param>
    /// <param name="meterScale">Scale of a meter that shows ppm; field "meterScale".</param>
    /// <param name="volume">Water in the tank.</param>
    public TankReading OneOfTwo(string name, string? ec, string? meterScale, string? volume) =>
        new(
            Strength($"{name}Ec", ec, "meterScale", meterScale),
            7,
            Quantity($"{name}Volume", Dimension.Volume, volume)
        );

    /// <summary>What was poured in between; fields "water", "solution" and "stock".</summary>
    /// <param name="water">Plain water.</param>
    /// <param name="solution">Nutrient solution of full strength.</param>
    /// <param name="stock">Of stock A, and as much of stock B.</param>
    public PouredBetween Poured(string? water, string? solution, string? stock) =>
        new(Volume("water", water), Volume("solution", solution), Volume("stock", stock));

    private void Fault(string field, string? found, Phrase expected) =>
        _faults.Add(
            new FieldFault(
                field,
                string.IsNullOrWhiteSpace(found) ? Phrase.Of("ask.nothing") : FaultList.Quote(found),
                expected
            )
        );
}
