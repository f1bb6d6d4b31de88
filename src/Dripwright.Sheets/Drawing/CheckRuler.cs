using System.Globalization;
using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>Rulers that show whether a printer kept the size: 100 mm and 4 in, one pair across and one along.</summary>
public static class CheckRuler
{
    /// <summary>What to do with them.</summary>
    public static string Instruction => Words.Of("sheet.ruler.print");

    private const double Inch = 25.4;

    /// <summary>Both bars across, 104 mm wide and 16 mm high, with the instruction below them.</summary>
    /// <param name="at">Left end of the bars; the top.</param>
    public static Group Across(Point at)
    {
        var elements = new List<Element>();
        elements.AddRange(Bar(at.Move(0, 4), 10, 10, "mm"));
        elements.AddRange(Bar(at.Move(0, 11), Inch, 4, "in"));
        var lines = TextMeasure.Wrap(Instruction, 110, TextStyle.Small);
        elements.AddRange(lines.Select((line, i) => new Text(line, at.Move(0, 17 + (i * 3.2)), TextStyle.Small)));
        return new(elements) { Class = "ruler", Title = Words.Of("sheet.ruler.said") };
    }

    /// <summary>Both bars upwards, 16 mm wide and 104 mm high.</summary>
    /// <param name="at">Lower end of the bars; the left.</param>
    public static Group Along(Point at)
    {
        var elements = new List<Element>();
        elements.AddRange(Bar(new(0, 4), 10, 10, "mm"));
        elements.AddRange(Bar(new(0, 11), Inch, 4, "in"));
        return new(elements)
        {
            Class = "ruler",
            Title = Words.Of("sheet.ruler.said"),
            Offset = at,
            Rotation = -90,
        };
    }

    private static IEnumerable<Element> Bar(Point at, double step, int count, string unit)
    {
        yield return new Line(at, at.Move(step * count, 0), Pen.Built);
        for (var i = 0; i <= count; i++)
        {
            var end = i == 0 || i == count;
            yield return new Line(at.Move(i * step, end ? -2.5 : -1.5), at.Move(i * step, end ? 1 : 0), Pen.Thin);
        }

        var figure = unit == "mm" ? step * count : count;
        var text = figure.ToString("0", CultureInfo.InvariantCulture) + "\u202f" + unit;
        yield return new Text(text, at.Move((step * count) + 1.5, 0), TextStyle.Note.Bold);
    }
}
