using System.Globalization;

namespace Dripwright.Engine.Layout;

/// <summary>Numbers and letters in labels.</summary>
internal static class Labels
{
    public static string Of(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>0 is A, 25 is Z, 26 is AA.</summary>
    public static string Letters(int index)
    {
        var text = "";
        for (var n = index + 1; n > 0; n = (n - 1) / 26)
        {
            text = (char)('A' + ((n - 1) % 26)) + text;
        }

        return text;
    }
}
