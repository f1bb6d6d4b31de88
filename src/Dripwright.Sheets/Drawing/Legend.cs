using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>What a line or a surface means.</summary>
/// <param name="Words">Its meaning.</param>
/// <param name="Pen">Pen of the line or outline.</param>
/// <param name="Fill">Fill of a surface; null for a line.</param>
/// <param name="Marker">Marker of a series of points.</param>
public sealed record LegendEntry(string Words, Pen? Pen, Fill? Fill = null, Marker Marker = Marker.None);

/// <summary>A list of lines and surfaces with their meanings.</summary>
public static class Legend
{
    private const double Row = 5;
    private const double Sample = 14;

    /// <summary>[mm] Height of the list.</summary>
    public static double Height(IReadOnlyCollection<LegendEntry> entries) => entries.Count * Row;

    /// <summary>[mm] Width of the list.</summary>
    /// <param name="entries">Its entries.</param>
    /// <param name="style">Size of its words; that of a note where null.</param>
    public static double Width(IReadOnlyCollection<LegendEntry> entries, TextStyle? style = null) =>
        Sample + 2 + entries.Select(e => TextMeasure.Width(e.Words, style ?? TextStyle.Note)).DefaultIfEmpty().Max();

    /// <summary>The list.</summary>
    /// <param name="topLeft">Its corner.</param>
    /// <param name="entries">From the top down.</param>
    /// <param name="style">Size of its words; that of a note where null.</param>
    public static Group Draw(Point topLeft, IReadOnlyList<LegendEntry> entries, TextStyle? style = null)
    {
        var elements = new List<Element>();
        for (var i = 0; i < entries.Count; i++)
        {
            var entry = entries[i];
            var middle = topLeft.Move(0, (i + 0.5) * Row);
            if (entry.Fill is not null)
            {
                elements.Add(new Rectangle(new(middle.X, middle.Y - 1.7, Sample, 3.4), entry.Pen, entry.Fill));
            }
            else if (entry.Pen is not null)
            {
                elements.Add(new Line(middle, middle.Move(Sample, 0), entry.Pen));
            }

            elements.AddRange(
                PlotSeries.Marked(middle.Move(Sample / 2, 0), entry.Marker, entry.Pen?.Role ?? DrawnRole.Ink)
            );
            elements.Add(new Text(entry.Words, middle.Move(Sample + 2, 1.05), style ?? TextStyle.Note));
        }

        return new(elements) { Class = "legend" };
    }
}
