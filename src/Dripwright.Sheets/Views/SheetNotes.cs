using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>The strip along the lower edge of a drawing: scale bar, what lines mean, notes.</summary>
internal static class SheetNotes
{
    /// <summary>[mm] Height of the strip.</summary>
    public const double Height = 19;

    private const int LegendRows = 3;

    /// <summary>[mm] Body height with capitals of 0.9 mm: only many notes in a language of very long words come so low.</summary>
    private const double Smallest = 1.4;

    private const double ColumnGap = 5;
    private const double LeastWidth = 25;
    private const double FirstLine = 6;

    /// <summary>Draws the strip.</summary>
    public static IEnumerable<Element> Draw(
        Box strip,
        Scale scale,
        UnitSystem units,
        IReadOnlyList<LegendEntry> legend,
        IReadOnlyList<string> notes
    )
    {
        // Beyond this the bar's figures would run into each other.
        if (scale.Denominator <= 500)
        {
            yield return ScaleBar.Draw(strip.TopLeft.Move(0, 8), scale, Scales.UnitsOf(units));
        }

        yield return new Text(new Wording(units).DimensionNote, strip.TopLeft.Move(0, 15.5), TextStyle.Note);
        foreach (var element in Told(strip, strip.X + 94, legend, notes))
        {
            yield return element;
        }
    }

    /// <summary>What lines mean, and notes beside it; set smaller where words are long, so that none is left out.</summary>
    /// <param name="strip">The strip.</param>
    /// <param name="left">[mm] Where the list of lines starts.</param>
    /// <param name="legend">What lines mean.</param>
    /// <param name="notes">The notes.</param>
    public static IEnumerable<Element> Told(
        Box strip,
        double left,
        IReadOnlyList<LegendEntry> legend,
        IReadOnlyList<string> notes
    )
    {
        var columns = legend.Chunk(LegendRows).ToList();
        var style = TextStyle.Note;
        while (style.Size > Smallest && !Fits(style))
        {
            style = style with { Size = style.Size - 0.1 };
        }

        var x = left;
        List<Element> elements = [];
        foreach (var column in columns)
        {
            elements.Add(Legend.Draw(new(x, strip.Y + 3), column, style));
            x += Legend.Width(column, style) + ColumnGap;
        }

        elements.AddRange(
            Lines(style)
                .Select((line, i) => new Text(line, new(x, strip.Y + FirstLine + (i * style.LineHeight)), style))
        );
        return elements;

        double Room(TextStyle tried) => strip.Right - left - columns.Sum(c => Legend.Width(c, tried) + ColumnGap);

        List<string> Lines(TextStyle tried) =>
            [.. notes.SelectMany(note => TextMeasure.Wrap(note, Math.Max(LeastWidth, Room(tried)), tried))];

        bool Fits(TextStyle tried) =>
            Room(tried) >= (notes.Count == 0 ? -ColumnGap : LeastWidth)
            && FirstLine + ((Lines(tried).Count - 1) * tried.LineHeight) <= Height;
    }
}
