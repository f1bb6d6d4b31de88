using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Names of rows, runs and reservoir on the plan view, and the marks of findings at their places.</summary>
internal sealed class PlanLabels(Plan plan, View view)
{
    private const double MarkPitch = FindingMarks.Pitch;
    private readonly RigLayout _layout = plan.Layout;
    private readonly IReadOnlyList<PlacedFinding> _findings = FindingMarks.Of(plan);
    private readonly Extent _extent = PlanPicture.ExtentOf(plan.Layout);

    private int Outwards => plan.Rig.Reservoir.At == RowEnd.Left ? 1 : -1;

    /// <summary>All of them.</summary>
    public IEnumerable<Element> Draw() =>
        [.. _layout.Rows.SelectMany(RowLabels), .. TankLabels(), .. _layout.Rows.SelectMany(PotMarks)];

    private IEnumerable<Element> RowLabels(RowLayout row)
    {
        var x = (Outwards > 0 ? view[_extent.Right, 0] : view[_extent.Left, 0]).X;
        var y = view[0, row.CentreY].Y;
        var style = TextStyle.Note with { Anchor = Outwards > 0 ? Anchor.Start : Anchor.End };
        var (feed, drain) = (row.Feed[0], row.Drain);
        var (feedY, drainY) = (view[0, feed.Path[0].Y].Y, view[0, drain.Path[0].Y].Y);
        var near = x + (Outwards * 2);
        if (Math.Abs(feedY - drainY) >= 4)
        {
            yield return Label(feed.Label, near, feedY, style with { Role = DrawnRole.Water });
            yield return Label(drain.Label, near, drainY, style with { Role = DrawnRole.Return });
        }
        else if (view.Length(row.Depth) >= 8)
        {
            yield return Label(feed.Label, near, feedY - 2.2, style with { Role = DrawnRole.Water });
            yield return Label(drain.Label, near, feedY + 2.2, style with { Role = DrawnRole.Return });
        }

        yield return Label(Words.Of("sheet.row.short", Wording.Count(row.Number)), x + (Outwards * 11), y, style.Bold);
        var marks = _findings.Where(f => f.Row == row.Number && f.At is null).Take(2).ToList();
        // Beside the name where the next row leaves room, else none: the cover sheet lists them all.
        if (view.Length(row.Depth) < 14 && _layout.Rows.Count > 4)
        {
            yield break;
        }

        for (var i = 0; i < marks.Count; i++)
        {
            yield return Draw(marks[i], new(x + (Outwards * (14 + (i * MarkPitch))), y + 6.5));
        }
    }

    private static Text Label(string text, double x, double y, TextStyle style) =>
        new(text, new(x, y + (style.CapHeight / 2)), style);

    private IEnumerable<Element> TankLabels()
    {
        var tank = _layout.Tank;
        var box = view.Box(tank.Left, tank.Front, tank.Right - tank.Left, tank.Back - tank.Front);
        var style = TextStyle.Note.Bold.Middle;
        var half = TextMeasure.Width(Words.Of("sheet.reservoir"), style) / 2;
        // A narrow reservoir at the edge must not push its name off the sheet.
        var x = Math.Clamp(box.Centre.X, view[_extent.Left, 0].X + half - 8, view[_extent.Right, 0].X - half + 8);
        var name = new Text(Words.Of("sheet.reservoir"), new(x, box.Bottom + 4), style);
        yield return Polyline.Polygon(TextMeasure.Corners(name), null, Fill.Paper);
        yield return name;
        var perLine = Math.Max(1, (int)((box.Width - 2) / MarkPitch));
        var lines = Math.Max(0, (int)((box.Height - 8) / 2 / MarkPitch));
        var shown = _findings.Where(f => f.Row == 0).Take(perLine * lines).ToList();
        for (var i = 0; i < shown.Count; i++)
        {
            yield return Draw(
                shown[i],
                new(box.X + 5 + (i % perLine * MarkPitch), box.Y + 5 + (i / perLine * MarkPitch))
            );
        }
    }

    private IEnumerable<Element> PotMarks(RowLayout row)
    {
        var y = view[0, row.CentreY + (row.Depth / 2)].Y - (PotSymbol.NumbersBeside(row, view) ? 7.5 : 4.5);
        return FindingMarks
            .Along(
                _findings.Where(f => f.Row == row.Number),
                at => view[at.X, 0].X,
                view[_extent.Left, 0].X,
                view[_extent.Right, 0].X
            )
            .Select(mark => Draw(mark.Finding, new(mark.X, y)));
    }

    private static Group Draw(PlacedFinding placed, Point at) =>
        Mark.Finding(at, placed.Grade, Wording.Count(placed.Number)) with
        {
            Description = placed.What,
        };
}
