using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Scenes;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>The rows one behind the other, seen along them from the reservoir's end.</summary>
/// <param name="plan">The plan.</param>
/// <param name="view">The view's level direction to the right, height up.</param>
/// <param name="band">Where the crop wires stand.</param>
internal sealed class EndPicture(Plan plan, View view, WireBand band)
{
    private readonly RigLayout _layout = plan.Layout;
    private readonly Wording _words = new(plan.Rig.Units);
    private readonly SideParts _side = new(view, p => Level(plan, p.Y));
    private readonly RunPainter _painter = new(plan.Rig, p => view[Level(plan, p.Y), p.Z]);
    private readonly WirePicture _over = new(plan, view, band);

    /// <summary>Where the crop wires stand at a scale.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="spare">[mm] Height on paper that is left over.</param>
    public static WireBand BandOf(Plan plan, Scale scale, double spare = 0) =>
        WireBand.Of(plan.CropWire.Wires, ExtentOf(plan).High, scale, spare);

    /// <summary>Room for the dimensions.</summary>
    public static Margins Margins(Plan plan, Scale scale, double spare = 0) =>
        new(46, Math.Max(18, 6 + BandOf(plan, scale, spare).Above), 46, 33);

    // Looking to the right, the back of the room is at the left hand.
    private static double Level(Plan plan, double y) => plan.Rig.Reservoir.At == RowEnd.Left ? -y : y;

    private static bool Loose(PipeRun run) => run.Label is "G" or "H" or "B" or "T" or "C" || run.Label.StartsWith('L');

    /// <summary>What there is to see.</summary>
    public static Extent ExtentOf(Plan plan)
    {
        var (layout, tank) = (plan.Layout, plan.Layout.Tank);
        var points = layout.Runs.SelectMany(r => r.Path).ToList();
        double[] ys =
        [
            tank.Front,
            tank.Back,
            .. layout.Rows.SelectMany(r => new[] { r.CentreY - (r.Depth / 2), r.CentreY + (r.Depth / 2) }),
            .. points.Select(p => p.Y),
        ];
        double[] zs =
        [
            0,
            tank.Floor,
            tank.Rim,
            .. layout.Rows.SelectMany(r => new[] { r.Floor, r.Base + r.Pot.Height }),
            .. points.Select(p => p.Z),
        ];
        var levels = ys.Select(y => Level(plan, y)).ToList();
        return new(levels.Min(), zs.Min(), levels.Max(), zs.Max());
    }

    /// <summary>The picture.</summary>
    /// <param name="dimensions">Whether with its dimensions.</param>
    public IEnumerable<Element> Draw(bool dimensions = true)
    {
        foreach (var row in _layout.Rows.Reverse())
        {
            foreach (var element in Row(row))
            {
                yield return element;
            }
        }

        var tank = _layout.Tank;
        var (a, b) = (Level(plan, tank.Front), Level(plan, tank.Back));
        yield return _side.Tank(tank, Math.Min(a, b), Math.Max(a, b));
        if (_layout.Parts.Pump is not null)
        {
            yield return _side.Pump(tank);
        }

        var extent = ExtentOf(plan);
        foreach (var element in _over.Breaks(view[extent.Left, 0].X, view[extent.Right, 0].X))
        {
            yield return element;
        }

        foreach (var run in _layout.Runs.Where(Loose))
        {
            yield return _painter.Draw(run, fittings: false);
        }

        foreach (var element in dimensions ? Dimensions() : [])
        {
            yield return element;
        }
    }

    private IEnumerable<Element> Row(RowLayout row)
    {
        var middle = Level(plan, row.CentreY);
        var half = (row.Depth / 2) + 0.15;
        foreach (var element in _side.Floor(middle - half, middle + half, row.Floor))
        {
            yield return element;
        }

        var near = plan.Rig.Reservoir.At == RowEnd.Left ? row.OriginX : row.OriginX + row.Length;
        bool AtNear(double x) => Math.Abs(x - near) < 1e-6;
        yield return _side.Stand(
            _layout.Stand,
            m => m.Row == row.Number && m.Role != MemberRole.Rail && AtNear(m.From.X) && AtNear(m.To.X),
            j => j.Row == row.Number && AtNear(j.At.X)
        );
        var wires = WirePicture.Of(plan, row);
        foreach (var wire in wires)
        {
            yield return _over.Across(wire, y => Level(plan, y), row);
        }

        // The two pots next to the reader, one of each line.
        var nearest = row.Pots.GroupBy(p => p.BackLine).Select(g => g.MinBy(p => Math.Abs(p.Base.X - near))!);
        foreach (var pot in nearest)
        {
            yield return PotSymbol.FromSide(row, pot, Level(plan, pot.Base.Y), row.Pot.Width, view, false, true);
        }

        foreach (var run in row.Feed.Append(row.Drain))
        {
            yield return Pipe(run, near);
        }

        foreach (var run in _layout.Returns.Where(r => r.Row == row.Number && !Loose(r)))
        {
            yield return _painter.Draw(run, fittings: false);
        }

        var top = view[middle, row.Base + row.Pot.Height].Y - PotSymbol.PlantHeight(view) - 2.5;
        var name = new Text(
            Words.Of("sheet.row.short", Wording.Count(row.Number)),
            new(view[middle, 0].X, top),
            TextStyle.Note.Bold.Middle
        );
        // The string runs behind the name.
        if (wires.Count > 0)
        {
            yield return Polyline.Polygon(TextMeasure.Corners(name), null, Fill.Paper);
        }

        yield return name;
    }

    /// <summary>A pipe cut across, at the end of the row next to the reader.</summary>
    private Group Pipe(PipeRun run, double x)
    {
        var nearer = Math.Abs(run.Path[0].X - x) <= Math.Abs(run.Path[^1].X - x) ? run.Path[0] : run.Path[^1];
        var at =
            run.Path[0].X == run.Path[^1].X
                ? nearer
                : run.At(Math.Clamp(run.Start + Math.Abs(x - run.Path[0].X), run.Start, run.End));
        var pen = RunPainter.PenOf(run) with { Type = LineType.Continuous };
        var radius = Math.Max(view.Length(run.Pipe.OutsideDiameter) / 2, 0.7);
        return new([new Circle(view[Level(plan, at.Y), at.Z], radius, pen, Fill.Paper)])
        {
            Id = SceneNames.Run(run.Label),
            Class = "run " + run.Service.ToString().ToLowerInvariant(),
            Title = RunPainter.TitleOf(run),
            Description = run.Pipe.Name,
        };
    }

    private IEnumerable<Group> Dimensions()
    {
        var extent = ExtentOf(plan);
        var bottom = view[0, extent.Low].Y;
        Point Foot(double level) => new(view[level, 0].X, bottom + 3);
        // The chain lies outside: figures without room hang below it.
        yield return Across(Foot, bottom + 19);
        var tank = _layout.Tank;
        var (a, b) = (Level(plan, tank.Front), Level(plan, tank.Back));
        yield return DimensionLine.Horizontal(Foot(a), Foot(b), bottom + 11, _words.Mark(Math.Abs(a - b)));
        var left = plan.Rig.Reservoir.At == RowEnd.Left;
        var row = _layout.Rows[^1];
        List<(double, string)> rows =
        [
            (row.Floor, Words.Of("sheet.height.floor")),
            (row.Base, Words.Of("sheet.height.pots")),
            (row.Base + row.Pot.Height, Words.Of("sheet.height.rim")),
            (row.Feed[0].Path[0].Z, Words.Of("sheet.height.feed")),
            (Math.Min(row.Drain.Path[0].Z, row.Drain.Path[^1].Z), Words.Of("sheet.height.drain")),
            .. WirePicture.Of(plan, row).Take(1).Select(w => (w.Place.Z, Words.Of("sheet.height.wire"))),
        ];
        var (back, front) = left ? (extent.Left, extent.Right) : (extent.Right, extent.Left);
        yield return _side.Heights(rows, back, view[back, 0].X + (left ? -9 : 9), !left, _words, band.Drawn);
        yield return _side.Heights(
            SideParts.TankHeights(tank),
            front,
            view[front, 0].X + (left ? 9 : -9),
            left,
            _words
        );
    }

    private Group Across(Func<double, Point> foot, double y)
    {
        var centres = _layout.Rows.Select(r => Level(plan, r.CentreY)).Order().ToList();
        if (centres.Count == 1)
        {
            var half = _layout.Rows[0].Depth / 2;
            return DimensionLine.Horizontal(foot(centres[0] - half), foot(centres[0] + half), y, _words.Mark(2 * half));
        }

        var steps = centres.Zip(centres.Skip(1), (a, b) => b - a).ToList();
        return steps.Count > 4 && steps.All(s => Math.Abs(s - steps[0]) < 1e-6)
            ? DimensionLine.Horizontal(foot(centres[0]), foot(centres[^1]), y, _words.Repeated(steps.Count, steps[0]))
            : DimensionLine.HorizontalChain([.. centres.Select(foot)], y, [.. steps.Select(_words.Mark)]);
    }
}
