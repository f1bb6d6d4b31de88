using System.Globalization;

namespace Dripwright.Solids;

/// <summary>Numbers as files want them, whatever the machine's language.</summary>
internal static class Number
{
    public static string Of(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>The shortest text that reads back as the same single-precision number.</summary>
    public static string Of(float value) => value.ToString("R", CultureInfo.InvariantCulture);

    public static string Of(double value, int decimals)
    {
        var text = Math.Round(value, decimals).ToString("0.####", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}
