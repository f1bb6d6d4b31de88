using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>The dimensions round the plan view.</summary>
internal sealed class PlanDimensions(Plan plan, View view)
{
    /// <summary>[mm] Room at the rows' far ends for their labels.</summary>
    public const double LabelRoom = 27;

    private readonly Wording _words = new(plan.Rig.Units);
    private readonly RigLayout _layout = plan.Layout;
    private readonly Extent _extent = PlanPicture.ExtentOf(plan.Layout);

    private bool TankLeft => plan.Rig.Reservoir.At == RowEnd.Left;

    private RowLayout Longest => _layout.Rows.MaxBy(r => r.Length)!;

    /// <summary>Room that dimensions and labels need at a scale.</summary>
    public static Margins Margins(Plan plan, Scale scale)
    {
        var first = plan.Layout.Rows[0];
        var bottom =
            CropRoom(plan.Layout, scale)
            + PotDimensions.Depth(first, scale, new Wording(plan.Rig.Units))
            + (PotDimensions.CanRun(first, scale) ? 6 : 3);
        var far = LabelRoom + (plan.Layout.Rows.Count > 1 ? 20 : 12);
        var left = plan.Rig.Reservoir.At == RowEnd.Left;
        var chain = Modules(plan, scale);
        var top = 9 + (8 * Levels(plan.Layout)) + MarkRoom(plan) + OverflowRoom(chain.Overflows);
        return new(left ? 10 : far, top, left ? far : 10, bottom);
    }

    // Where rows are too small for their crops, the reservoir's name alone stands before them.
    private static double CropRoom(RigLayout layout, Scale scale) =>
        layout.Rows.Any(r => scale.OnPaper(r.Depth) >= PlanPicture.RoomForLabels) ? 9 : 6;

    // With many rows height is dear, and a chain that takes more of it leaves the reservoir out.
    private static ModuleDimensions Modules(Plan plan, Scale scale)
    {
        var (longest, words) = (plan.Layout.Rows.MaxBy(r => r.Length)!, new Wording(plan.Rig.Units));
        var full = new ModuleDimensions(longest, plan.Layout.Tank, scale, words);
        return Levels(plan.Layout) == 1 && full.Overflows ? new(longest, null, scale, words) : full;
    }

    // Figures without room move away from the thing: the chain that has such lies outermost.
    private static double OverflowRoom(bool overflows) => overflows ? 12 : 0;

    // Of many rows the sum with the reservoir is left to the reader: height is dear.
    private static int Levels(RigLayout layout) => layout.Rows.Count > 4 ? 1 : 2;

    // Numbers and marks of the last row stand between it and the dimensions.
    private static double MarkRoom(Plan plan) =>
        FindingMarks.Of(plan).Any(f => f.At is not null && f.Row == plan.Layout.Rows.Count) ? 11
        : Levels(plan.Layout) == 1 ? 1
        : 3;

    /// <summary>All dimensions.</summary>
    public IEnumerable<Element> Draw()
    {
        var first = _layout.Rows[0];
        var low = view[0, _extent.Low].Y;
        var crops = CropRoom(_layout, view.Scale);
        var high = view[0, _extent.High].Y - MarkRoom(plan);
        var front = view[0, first.CentreY - (first.Depth / 2)].Y;
        yield return PotDimensions.Draw(
            first,
            s => new(view[first.OriginX + s, 0].X, Math.Max(front, low - 1) + crops - 3),
            low + crops + (PotDimensions.CanRun(first, view.Scale) ? 4 : 1),
            view.Scale,
            _words,
            below: true
        );
        Point Top(double x) => new(view[x, 0].X, high);
        var (left, right) = (Longest.OriginX, Longest.OriginX + Longest.Length);
        var chain = Modules(plan, view.Scale);
        var levels = Levels(_layout);
        var (own, whole, chained) = chain.Overflows ? (7, 15, 7 + (8 * levels)) : (15, 23, 7);
        // What lies outermost is drawn first, so that its extension lines do not cross the others' figures.
        List<Group> inwards =
        [
            .. levels == 1 ? [] : Whole(left, right, Top, high - whole),
            DimensionLine.Horizontal(Top(left), Top(right), high - own, _words.Mark(right - left)),
            chain.Draw(Top, high - chained),
        ];
        foreach (var group in chain.Overflows ? inwards.AsEnumerable().Reverse() : inwards)
        {
            yield return group;
        }

        foreach (var group in Across())
        {
            yield return group;
        }
    }

    private IEnumerable<Group> Whole(double left, double right, Func<double, Point> top, double y)
    {
        var beyond = _layout.Tank.Right <= left + 1e-9 || _layout.Tank.Left >= right - 1e-9;
        var (from, to) = beyond
            ? (Math.Min(left, _layout.Tank.Left), Math.Max(right, _layout.Tank.Right))
            : (_layout.Tank.Left, _layout.Tank.Right);
        yield return DimensionLine.Horizontal(top(from), top(to), y, _words.Mark(to - from));
    }

    private IEnumerable<Group> Across()
    {
        var end = TankLeft ? view[_extent.Right, 0].X : view[_extent.Left, 0].X;
        var x = end + ((TankLeft ? 1 : -1) * (LabelRoom + 6));
        Point At(double y) => new(end + ((TankLeft ? 1 : -1) * LabelRoom), view[0, y].Y);
        var rows = _layout.Rows;
        var edges = rows.SelectMany(r => new[] { r.CentreY - (r.Depth / 2), r.CentreY + (r.Depth / 2) }).ToList();
        var centres = rows.Select(r => r.CentreY).ToList();
        var steps = centres.Zip(centres.Skip(1), (a, b) => b - a).ToList();
        if (HaveRoom(edges))
        {
            yield return Chain(edges, At, x);
        }
        else if (steps.Count == 0)
        {
            yield return DimensionLine.Vertical(At(edges[0]), At(edges[1]), x, _words.Mark(edges[1] - edges[0]));
        }
        else if (steps.Count > 1 && steps.All(d => Math.Abs(d - steps[0]) < 1e-6))
        {
            yield return DimensionLine.Vertical(
                At(centres[0]),
                At(centres[^1]),
                x,
                _words.Repeated(steps.Count, steps[0])
            );
        }
        else if (HaveRoom(centres))
        {
            yield return Chain(centres, At, x);
        }
        else
        {
            // Running figures need less room; where even they have none, the first and the last row must do.
            var few = rows.Count * 3.8 <= view.Length(centres[^1] - centres[0]) + 20;
            var shown = few ? centres : [centres[0], centres[^1]];
            yield return DimensionLine.VerticalRunning(
                [.. shown.Select(At)],
                x,
                [.. shown.Select(y => _words.Mark(y - centres[0]))],
                right: TankLeft
            );
        }
    }

    private bool HaveRoom(List<double> places) =>
        places
            .Zip(places.Skip(1), (a, b) => b - a)
            .All(d => d < 1e-6 || TextMeasure.Width(_words.Mark(d), TextStyle.Note) + 1.2 <= view.Length(d));

    private Group Chain(List<double> places, Func<double, Point> at, double x)
    {
        var kept = places.Where((y, i) => i == 0 || y - places[i - 1] > 1e-6).ToList();
        return DimensionLine.VerticalChain(
            [.. kept.Select(at)],
            x,
            [.. kept.Zip(kept.Skip(1), (a, b) => _words.Mark(b - a))]
        );
    }
}
