using Dripwright.Sheets.Lists;

namespace Dripwright.Sheets.Plots;

/// <summary>A column of the numbers behind a plot.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Unit">Unit of its numbers; "" for plain counts.</param>
public sealed record PlotColumn(string Name, string Unit)
{
    /// <summary>Name and unit as the table and the file head it: "Flow (L/h)".</summary>
    public string Heading => Unit.Length == 0 ? Name : $"{Name} ({Unit})";
}

/// <summary>The numbers behind a plot, in the units of its axes and not rounded.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, one number for each column; null where there is none.</param>
public sealed record PlotTable(IReadOnlyList<PlotColumn> Columns, IReadOnlyList<IReadOnlyList<double?>> Rows)
{
    private const int Figures = 7;

    /// <summary>The table as CSV (RFC 4180, UTF-8, decimal points), numbers to seven figures.</summary>
    public byte[] Csv() =>
        CsvText.Write([.. Columns.Select(c => c.Heading)], Rows.Select(row => row.Select(Field).ToList()));

    // A decimal, so that no digits of a binary fraction show.
    private static object? Field(double? value)
    {
        if (value is not { } known)
        {
            return null;
        }

        var digits = known == 0 ? 0 : Figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(known)));
        return digits is > 28 or < 0
            ? (decimal)Math.Round(known)
            : Math.Round((decimal)known, digits) / 1.0000000000000000000000000000m;
    }
}
