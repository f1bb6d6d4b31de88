using Dripwright.Engine.Layout;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Module lengths of a row one after another, with the reservoir and its gap where it stands beyond the end.</summary>
internal static class ModuleDimensions
{
    /// <summary>The chain.</summary>
    /// <param name="row">The row.</param>
    /// <param name="tank">The reservoir; null to leave it out.</param>
    /// <param name="at">Where the extension line at an X begins.</param>
    /// <param name="y">[mm] Height of the dimension line.</param>
    /// <param name="scale">Scale.</param>
    /// <param name="words">Figures.</param>
    public static Group Draw(
        RowLayout row,
        TankPlace? tank,
        Func<double, Point> at,
        double y,
        Scale scale,
        Wording words
    )
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
        var kept = marks.Where((m, i) => (i + 1 < marks.Count ? marks[i + 1].X : end) - m.X > 1e-6).ToList();
        return Dimension.HorizontalChain([.. kept.Select(m => at(m.X)), at(end)], y, [.. kept.Select(m => m.Text)]);
    }
}
