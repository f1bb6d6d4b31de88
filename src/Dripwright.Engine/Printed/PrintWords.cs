using System.Globalization;

namespace Dripwright.Engine.Printed;

/// <summary>Numbers that are raised on a part.</summary>
internal static class PrintWords
{
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
