using System.Globalization;

namespace Dripwright.Sheets.Writing;

/// <summary>Numbers in files: the same in every culture, at most a micrometre fine, never "-0".</summary>
internal static class FileNumbers
{
    public static string Millimetres(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A drawing needs finite coordinates.");
        }

        var rounded = Math.Round(value, 3, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.###", CultureInfo.InvariantCulture);
    }
}
