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
        var x = strip.X + 94;
        for (var i = 0; i < legend.Count; i += LegendRows)
        {
            var column = legend.Skip(i).Take(LegendRows).ToList();
            yield return Legend.Draw(new(x, strip.Y + 3), column);
            x += Legend.Width(column) + 5;
        }

        var width = strip.Right - x;
        if (width < 25)
        {
            yield break;
        }

        var style = TextStyle.Note;
        var lines = notes.SelectMany(note => TextMeasure.Wrap(note, width, style)).Take(4).ToList();
        for (var i = 0; i < lines.Count; i++)
        {
            yield return new Text(lines[i], new(x, strip.Y + 6 + (i * style.LineHeight)), style);
        }
    }
}
