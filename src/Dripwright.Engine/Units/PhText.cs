using System.Globalization;

namespace Dripwright.Engine.Units;

/// <summary>pH as people write it and as it is printed. It is no quantity: it has no unit, and two of them have no mean.</summary>
public static class PhText
{
    /// <summary>Reads a pH: "6.4", or "6,4" with a decimal comma.</summary>
    /// <param name="text">The text.</param>
    /// <returns>[-] The pH, 0 to 14; null where the text is none.</returns>
    public static double? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var plain = text.Trim();
        var comma = plain.IndexOf(',', StringComparison.Ordinal);
        if (comma >= 0 && plain.IndexOfAny(['.', ','], comma + 1) < 0)
        {
            plain = plain.Replace(',', '.');
        }
        return
            double.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var ph)
            && ph is >= 0 and <= 14
            ? ph
            : null;
    }

    /// <summary>Prints a pH with one decimal, or with two where the second says something.</summary>
    /// <param name="ph">[-] The pH.</param>
    public static string Print(double ph) => ph.ToString("0.0#", CultureInfo.InvariantCulture);
}
