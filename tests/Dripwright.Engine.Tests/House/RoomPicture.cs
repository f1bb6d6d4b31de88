using System.Globalization;
using System.Text;

namespace Dripwright.Engine.Tests.House;

/// <summary>A table of who uses whom: a row uses the columns; what lies right of the slope would close a circle.</summary>
internal static class RoomPicture
{
    private const int Cell = 30;
    private const int Margin = 110;

    /// <summary>The picture.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="rooms">Rooms, the lowest first.</param>
    /// <param name="arrows">How many pairs of types stand behind each arrow.</param>
    public static string Of(
        string title,
        IReadOnlyList<string> rooms,
        IReadOnlyDictionary<(string From, string To), int> arrows
    )
    {
        var size = Margin + (rooms.Count * Cell) + 10;
        var upward = arrows.Where(arrow => Rank(arrow.Key.To) > Rank(arrow.Key.From)).Sum(arrow => arrow.Value);
        var svg = new StringBuilder();
        Line(
            $"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {size} {size + 26}" font-family="sans-serif" font-size="11">"""
        );
        Line($"""<rect width="{size}" height="{size + 26}" fill="#fffdf7"/>""");
        Line($"""<text x="10" y="{size + 12}">{title}: {arrows.Values.Sum()} arrows, {upward} of them upward</text>""");
        for (var i = 0; i < rooms.Count; i++)
        {
            var at = Margin + (i * Cell);
            Line($"""<text x="{Margin - 6}" y="{at + 19}" text-anchor="end">{rooms[i]}</text>""");
            Line(
                $"""<text x="{at + 19}" y="{Margin - 6}" transform="rotate(-90 {at + 19} {Margin - 6})">{rooms[i]}</text>"""
            );
            Line($"""<rect x="{at}" y="{at}" width="{Cell}" height="{Cell}" fill="#d8d3c4"/>""");
        }

        foreach (var ((from, to), count) in arrows.OrderBy(a => Rank(a.Key.From)).ThenBy(a => Rank(a.Key.To)))
        {
            var (x, y) = (Margin + (Rank(to) * Cell), Margin + (Rank(from) * Cell));
            var fill = Rank(to) > Rank(from) ? "#e8b4a4" : "#dfe8ef";
            Line($"""<rect x="{x}" y="{y}" width="{Cell}" height="{Cell}" fill="{fill}" stroke="#fffdf7"/>""");
            Line($"""<text x="{x + (Cell / 2)}" y="{y + 19}" text-anchor="middle">{count}</text>""");
        }

        return svg.Append("</svg>\n").ToString();

        int Rank(string room) => rooms.Index().First(pair => pair.Item == room).Index;

        void Line(FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }
}
