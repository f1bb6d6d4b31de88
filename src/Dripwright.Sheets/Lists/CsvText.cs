using System.Globalization;
using CsvHelper;

namespace Dripwright.Sheets.Lists;

/// <summary>Writes a list as CSV after RFC 4180: UTF-8 without a mark, CRLF, decimal points in every culture.</summary>
internal static class CsvText
{
    // A name that starts with "=" or "+" must not become a formula when the list is opened in a spreadsheet.
    private static readonly CsvWriterOptions s_options = CsvWriterOptions.Default with
    {
        FormatProvider = CultureInfo.InvariantCulture,
        Injection = CsvInjection.Escape,
    };

    /// <summary>The file.</summary>
    /// <param name="header">Names of the columns, units in the names.</param>
    /// <param name="rows">Fields; text, whole numbers, decimals, or null for an empty field.</param>
    public static byte[] Write(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<object?>> rows)
    {
        using var bytes = new MemoryStream();
        using (var csv = CsvWriter.Create(bytes, s_options, leaveOpen: true))
        {
            foreach (var row in rows.Prepend(header))
            {
                foreach (var field in row)
                {
                    csv.WriteField(field);
                }

                csv.EndRecord();
            }
        }

        return bytes.ToArray();
    }

    /// <summary>Millimetres to a hundredth, as a decimal so that no digits of a binary fraction show.</summary>
    public static decimal Millimetres(double metres) => Rounded(metres * 1000, 2);

    /// <summary>Inches to a thousandth.</summary>
    public static decimal Inches(double metres) => Rounded(metres / 0.0254, 3);

    private static decimal Rounded(double value, int digits)
    {
        // Dividing by one with many noughts takes off trailing noughts: 12.50 is written 12.5.
        return Math.Round((decimal)value, digits) / 1.0000000000000000000000000000m;
    }
}
