using System.Globalization;
using System.Text.Json;

namespace Dripwright.Language.Report;

/// <summary>Writes JSON in which no number can lack its unit: each method appends its unit to the name it is given.</summary>
/// <remarks>
/// Numbers are rounded to nine figures. That is far beyond what can be measured, and it hides the last bit in which the
/// mathematical libraries of two machines may differ.
/// </remarks>
internal sealed class UnitJson(Utf8JsonWriter json)
{
    private const double Litre = 1e-3;
    private const double Hour = 3600;

    public void Object(string name, Action body)
    {
        json.WriteStartObject(name);
        body();
        json.WriteEndObject();
    }

    /// <summary>A list of objects, one for each item.</summary>
    public void List<T>(string name, IEnumerable<T> items, Action<T> body)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            body(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public void Texts(string name, IEnumerable<string> items)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStringValue(item);
        }

        json.WriteEndArray();
    }

    /// <summary>Numbers of things that are counted from 1, such as rows and pots.</summary>
    public void Ordinals(string name, IEnumerable<int> items)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteNumberValue(item);
        }

        json.WriteEndArray();
    }

    public void Null(string name) => json.WriteNull(name);

    public void Text(string name, string value) => json.WriteString(name, value);

    public void Yes(string name, bool value) => json.WriteBoolean(name, value);

    /// <summary>A count or an ordinal number: its unit is the thing its name says.</summary>
    public void Count(string name, int value) => json.WriteNumber(name, value);

    public void Metres(string name, double? metres) => Number(name + "Metres", metres);

    public void Millimetres(string name, double? metres) => Number(name + "Millimetres", metres * 1000);

    public void Litres(string name, double? cubicMetres) => Number(name + "Litres", cubicMetres / Litre);

    public void LitresPerHour(string name, double? cubicMetresPerSecond) =>
        Number(name + "LitresPerHour", cubicMetresPerSecond / Litre * Hour);

    public void LitresPerDay(string name, double? cubicMetresPerSecond) =>
        Number(name + "LitresPerDay", cubicMetresPerSecond / Litre * Hour * 24);

    public void Kilopascals(string name, double? pascals) => Number(name + "Kilopascals", pascals / 1000);

    public void MetresPerSecond(string name, double? value) => Number(name + "MetresPerSecond", value);

    public void Watts(string name, double? value) => Number(name + "Watts", value);

    public void KilowattHours(string name, double? value) => Number(name + "KilowattHours", value);

    public void Kelvins(string name, double? value) => Number(name + "Kelvins", value);

    public void Kilograms(string name, double? value) => Number(name + "Kilograms", value);

    public void Grams(string name, double? kilograms) => Number(name + "Grams", kilograms * 1000);

    public void Millilitres(string name, double? cubicMetres) => Number(name + "Millilitres", cubicMetres * 1e6);

    public void MilligramsPerLitre(string name, double? value) => Number(name + "MilligramsPerLitre", value);

    public void DecisiemensPerMetre(string name, double? value) => Number(name + "DecisiemensPerMetre", value);

    public void Newtons(string name, double? value) => Number(name + "Newtons", value);

    public void Seconds(string name, double? value) => Number(name + "Seconds", value);

    public void Hours(string name, double? value) => Number(name + "Hours", value);

    public void Days(string name, double? value) => Number(name + "Days", value);

    /// <summary>A part of a whole, 1 being all of it.</summary>
    public void Share(string name, double? value) => Number(name + "Share", value);

    /// <summary>A number without a unit that is not a part of a whole.</summary>
    public void Ratio(string name, double? value) => Number(name + "Ratio", value);

    public void MetresEach(string name, IEnumerable<double> values) => Numbers(name + "Metres", values);

    public void ShareEach(string name, IEnumerable<double> values) => Numbers(name + "Share", values);

    /// <summary>A price, or a length that is bought: value and unit side by side.</summary>
    public void Valued(string name, double? value, string unit)
    {
        if (value is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        Valued(value.Value, unit);
        json.WriteEndObject();
    }

    /// <summary>Value and unit side by side, in the object at hand.</summary>
    public void Valued(double value, string unit)
    {
        Number("value", value);
        Text("unit", unit);
    }

    public void Valued(string name, decimal? value, string unit)
    {
        if (value is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteNumber("value", value.Value);
        Text("unit", unit);
        json.WriteEndObject();
    }

    private void Numbers(string name, IEnumerable<double> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteNumberValue(Rounded(value));
        }

        json.WriteEndArray();
    }

    private void Number(string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, Rounded(number));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    // Adding zero turns a negative zero, which would be written "-0", into a plain one.
    private static double Rounded(double value) =>
        double.Parse(value.ToString("G9", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + 0.0;
}
