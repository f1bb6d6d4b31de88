using Dripwright.Sheets.Lists;

namespace Dripwright.Sheets.Plots;

/// <summary>A column of the numbers behind a plot.</summary>
/// <param name="Field">What the file calls it: the same in every language.</param>
/// <param name="Name">What it is, in the reader's words.</param>
/// <param name="Unit">Unit of its numbers; "" for plain counts.</param>
public sealed record PlotColumn(string Field, string Name, string Unit)
{
    /// <summary>A column that has a name of its own in every language, such as an element.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="unit">Unit of its numbers; "" for plain counts.</param>
    public PlotColumn(string name, string unit)
        : this(name, name, unit) { }

    /// <summary>Name and unit as a table heads it: "Flow (L/h)".</summary>
    public string Heading => WithUnit(Name);

    /// <summary>Field and unit as a file heads it.</summary>
    public string FileHeading => WithUnit(Field);

    private string WithUnit(string name) => Unit.Length == 0 ? name : $"{name} ({Unit})";
}

/// <summary>The numbers behind a plot, in the units of its axes and not rounded.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, one number for each column; null where there is none.</param>
public sealed record PlotTable(IReadOnlyList<PlotColumn> Columns, IReadOnlyList<IReadOnlyList<double?>> Rows)
{
    private const int Figures = 7;

    /// <summary>The table as CSV (RFC 4180, UTF-8, decimal points), numbers to seven figures.</summary>
    public byte[] Csv() =>
        CsvText.Write([.. Columns.Select(c => c.FileHeading)], Rows.Select(row => row.Select(Field).ToList()));

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
