using Dripwright.Engine.Layout;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Module lengths of a row one after another, with the reservoir and its gap where it stands beyond the end.</summary>
/// <param name="row">The row.</param>
/// <param name="tank">The reservoir; null to leave it out.</param>
/// <param name="scale">Scale.</param>
/// <param name="words">Figures.</param>
internal sealed class ModuleDimensions(RowLayout row, TankPlace? tank, Scale scale, Wording words)
{
    /// <summary>Whether a figure has no room in its piece and moves away from the thing.</summary>
    public bool Overflows
    {
        get
        {
            var (marks, end) = Marks();
            return marks
                .Select((m, i) => (m.Text, Length: (i + 1 < marks.Count ? marks[i + 1].X : end) - m.X))
                .Any(p => TextMeasure.Width(p.Text, TextStyle.Note) + 1 > scale.OnPaper(p.Length));
        }
    }

    /// <summary>The chain.</summary>
    /// <param name="at">Where the extension line at an X begins.</param>
    /// <param name="y">[mm] Height of the dimension line.</param>
    public Group Draw(Func<double, Point> at, double y)
    {
        var (marks, end) = Marks();
        return DimensionLine.HorizontalChain(
            [.. marks.Select(m => at(m.X)), at(end)],
            y,
            [.. marks.Select(m => m.Text)]
        );
    }

    private (List<(double X, string Text)> Marks, double End) Marks()
    {
        List<(double X, string Text)> marks = [];
        var (left, right) = (row.OriginX, row.OriginX + row.Length);
        var before = tank is not null && tank.Right <= left + 1e-9;
        var after = tank is not null && tank.Left >= right - 1e-9;
        if (before)
        {
            marks.Add((tank!.Left, words.Mark(tank.Right - tank.Left)));
            marks.Add((tank.Right, words.Mark(left - tank.Right)));
        }

        var module = row.Spec.ModuleLength;
        var each = TextMeasure.Width(words.Mark(module), TextStyle.Note) + 1.5 <= scale.OnPaper(module);
        if (each && row.Modules <= 12)
        {
            marks.AddRange(Enumerable.Range(0, row.Modules).Select(i => (left + (i * module), words.Mark(module))));
        }
        else
        {
            marks.Add((left, words.Repeated(row.Modules, module)));
        }

        if (after)
        {
            marks.Add((right, words.Mark(tank!.Left - right)));
            marks.Add((tank.Left, words.Mark(tank.Right - tank.Left)));
        }

        var end = after ? tank!.Right : right;
        // A reservoir that touches the row has no gap to dimension.
        return ([.. marks.Where((m, i) => (i + 1 < marks.Count ? marks[i + 1].X : end) - m.X > 1e-6)], end);
    }
}
