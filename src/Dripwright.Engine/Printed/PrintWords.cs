using System.Globalization;

namespace Dripwright.Engine.Printed;

/// <summary>Numbers in the texts of fittings.</summary>
internal static class PrintWords
{
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Millimetres(double metres) => $"{Number(metres * 1000)} mm";

    public static string Celsius(double kelvin) => $"{Number(kelvin - 273.15)} °C";

    public static string Degrees(double radians) => $"{Number(radians * 180 / Math.PI)}°";
}
