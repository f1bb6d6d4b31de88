using Dripwright.Engine.Layout;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Pots side by side with the same crop.</summary>
/// <param name="First">The first of them.</param>
/// <param name="Last">The last of them.</param>
/// <param name="Words">Crop, or "empty".</param>
internal sealed record CropSpan(PotPlace First, PotPlace Last, string Words)
{
    /// <summary>"1-8", or "3".</summary>
    public string Numbers =>
        First.Number == Last.Number
            ? Wording.Count(First.Number)
            : $"{Wording.Count(First.Number)}–{Wording.Count(Last.Number)}";
}

/// <summary>What grows where, as spans under a row.</summary>
internal static class CropSpans
{
    /// <summary>The spans of a row, left to right.</summary>
    public static IReadOnlyList<CropSpan> Of(RowLayout row)
    {
        List<CropSpan> spans = [];
        foreach (var pot in row.Pots)
        {
            var words =
                !pot.Planted ? Words.Of("sheet.crop.empty")
                : pot.Crop.Length == 0 ? Words.Of("sheet.crop.planted")
                : pot.Crop;
            if (spans.Count > 0 && spans[^1].Words == words)
            {
                spans[^1] = spans[^1] with { Last = pot };
            }
            else
            {
                spans.Add(new(pot, pot, words));
            }
        }

        return spans;
    }

    /// <summary>"Row 1: tomato 1–8, pepper 9–12".</summary>
    public static string Sentence(RowLayout row)
    {
        var crops = Of(row).GroupBy(s => s.Words).Select(g => $"{g.Key} {string.Join(", ", g.Select(s => s.Numbers))}");
        return Words.Of("sheet.crop.row", Wording.Count(row.Number), string.Join("; ", crops));
    }

    /// <summary>A line along the pots of each span with its crop below it.</summary>
    /// <param name="row">The row.</param>
    /// <param name="x">[mm] Place on paper of a station; the line lies at <paramref name="y"/>.</param>
    /// <param name="half">[mm] Half a pot on paper.</param>
    /// <param name="y">[mm] Height of the lines.</param>
    /// <param name="above">Texts above the line instead of below it.</param>
    public static IEnumerable<Element> Draw(
        RowLayout row,
        Func<double, double> x,
        double half,
        double y,
        bool above = false
    )
    {
        foreach (var span in Of(row))
        {
            var (left, right) = (x(span.First.Station) - half + 0.4, x(span.Last.Station) + half - 0.4);
            var role = span.First.Planted ? DrawnRole.Plant : DrawnRole.Explain;
            var style = TextStyle.Small.Middle with { Role = role };
            yield return new Line(new(left, y), new(right, y), new Pen(role));
            var text = TextMeasure.Shorten(span.Words, right - left, style);
            // Three letters and dots say nothing: the planting is told in the notes too.
            if (text == span.Words || text.Length > 4)
            {
                yield return new Text(text, new((left + right) / 2, above ? y - 1 : y + 2.6), style);
            }
        }
    }
}
