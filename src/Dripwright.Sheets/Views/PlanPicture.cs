using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>The rig from above, without dimensions.</summary>
internal sealed class PlanPicture(Plan plan, View view)
{
    /// <summary>[mm] A row so deep on paper has room for texts at its end.</summary>
    public const double RoomForLabels = 4;

    private readonly RigLayout _layout = plan.Layout;
    private readonly RunPainter _painter = new(plan.Rig, p => view[p.X, p.Y]);
    private readonly RunPainter _drains = new(plan.Rig, p => view[p.X, p.Y].Move(0, DrainShift(plan.Layout, view)));

    /// <summary>What the picture shows of the world: rows, pipes, reservoir.</summary>
    public static Extent ExtentOf(RigLayout layout)
    {
        var runs = layout.Runs.SelectMany(r => r.Path).ToList();
        var tank = layout.Tank;
        return new(
            Math.Min(tank.Left, Math.Min(layout.Rows.Min(Left), runs.Min(p => p.X))),
            Math.Min(tank.Front, Math.Min(layout.Rows.Min(r => r.CentreY - (r.Depth / 2)), runs.Min(p => p.Y))),
            Math.Max(tank.Right, Math.Max(layout.Rows.Max(Right), runs.Max(p => p.X))),
            Math.Max(tank.Back, Math.Max(layout.Rows.Max(r => r.CentreY + (r.Depth / 2)), runs.Max(p => p.Y)))
        );
    }

    /// <summary>Everything, lowest first.</summary>
    public IEnumerable<Element> Draw(bool texts)
    {
        yield return Tank();
        yield return Stand();
        foreach (var run in _layout.Runs.Where(r => r.Service is RunService.Drain or RunService.Return))
        {
            yield return _drains.Draw(run, fittings: false);
        }

        foreach (var row in _layout.Rows)
        {
            foreach (var pot in row.Pots)
            {
                yield return PotSymbol.FromAbove(row, pot, view, numbered: texts);
            }
        }

        foreach (var run in _layout.Runs.Where(r => r.Service is not (RunService.Drain or RunService.Return)))
        {
            yield return _painter.Draw(run, fittings: false);
        }

        yield return Pump();
        if (texts)
        {
            foreach (var wire in _layout.Wires)
            {
                yield return Wire(wire);
            }

            foreach (var element in _layout.Rows.SelectMany(Crops))
            {
                yield return element;
            }
        }
    }

    /// <summary>[mm] Where the crops of a row are written.</summary>
    public double CropLine(RowLayout row)
    {
        var drain = row.Drain.Path[0].Y - (row.Drain.Pipe.OutsideDiameter / 2);
        return view[0, Math.Min(row.CentreY - (row.Depth / 2), drain)].Y
            + (PotSymbol.NumbersInFront(row, view) ? 4.2 : 1.3);
    }

    // A drain right under its feed line would hide behind it: it is drawn a little to the front.
    private static double DrainShift(RigLayout layout, View view) =>
        layout.Rows.Any(r =>
            r.Feed.Any(f => Math.Abs(f.Path[0].Y - r.Drain.Path[0].Y) < view.Scale.Denominator * 0.001)
        )
            ? 1.2
            : 0;

    private static double Left(RowLayout row) => row.OriginX + Math.Min(0, row.Pots[0].Station - (row.Pot.Length / 2));

    private static double Right(RowLayout row) =>
        row.OriginX + Math.Max(row.Length, row.Pots[^1].Station + (row.Pot.Length / 2));

    private Group Wire(WirePlace wire)
    {
        var row = _layout.Rows[wire.Row - 1];
        // A wire right over its feed line is drawn a little to the front, where it is seen.
        var hidden = row.Feed.Any(f => view.Length(Math.Abs(f.Path[0].Y - wire.Y)) < 1);
        var shift = hidden ? Math.Min(2.4, view.Length(row.Pot.Width) * 0.35) : 0;
        Point At(double station) => view[row.OriginX + station, wire.Y].Move(0, shift);
        return new([
            new Line(At(wire.Supports[0]), At(wire.Supports[^1]), WirePicture.Over),
            .. wire.Supports.Select(s => new Circle(At(s), 0.6, Pen.Thin, Fill.Paper)),
        ])
        {
            Id = "wire-" + wire.Label,
            Class = "wire",
            Title = Words.Of("sheet.wire.title", wire.Label),
        };
    }

    private IEnumerable<Element> Crops(RowLayout row) =>
        view.Length(row.Depth) < RoomForLabels
            ? []
            : CropSpans.Draw(
                row,
                station => view[row.OriginX + station, 0].X,
                view.Length(Math.Min(row.Pot.Length, row.Spec.Spacing)) / 2,
                CropLine(row)
            );

    private Group Stand() =>
        new([
            .. _layout
                .Stand.Members.Where(m => m.Role is MemberRole.Rail or MemberRole.Cross)
                .Select(m => new Line(view[m.From.X, m.From.Y], view[m.To.X, m.To.Y], Pen.Thin)),
        ])
        {
            Class = "stand",
            Title = Words.Of("sheet.stand.title"),
        };

    private Group Tank()
    {
        var tank = _layout.Tank;
        var box = view.Box(tank.Left, tank.Front, tank.Right - tank.Left, tank.Back - tank.Front);
        var covered = _layout.Rows.Any(r =>
            tank.Left < r.OriginX + r.Length
            && tank.Right > r.OriginX
            && tank.Front < r.CentreY
            && tank.Back > r.CentreY
        );
        var pen = covered ? Pen.Hidden : Pen.Built;
        Element shape =
            _layout.Parts.Tank.Shape == TankShape.Upright
                ? new Circle(box.Centre, box.Width / 2, pen, Fill.StandingWater)
                : new Rectangle(box, pen, Fill.StandingWater);
        return new([shape])
        {
            Id = "reservoir",
            Class = "reservoir",
            Title = Words.Of("sheet.reservoir"),
        };
    }

    private Group Pump()
    {
        var at = view[_layout.Tank.PumpOutlet.X, _layout.Tank.PumpOutlet.Y];
        // A circle with a triangle the way the water is pushed: the pump's symbol after ISO 1219 and 14617, from memory.
        Element[] symbol = _layout.Parts.Pump is null
            ? [new Circle(at, 1.2, Pen.Water, Fill.Paper)]
            :
            [
                new Circle(at, 2, Pen.Thin, Fill.Paper),
                Polyline.Polygon([at.Move(0, -2), at.Move(1.7, 1), at.Move(-1.7, 1)], null, new(DrawnRole.Water)),
            ];
        return new(symbol)
        {
            Id = "pump",
            Class = "pump",
            Title = _layout.Parts.Pump is null ? Words.Of("sheet.plan.outlet") : Words.Of("sheet.plan.pump"),
        };
    }
}
