using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>The drains of all rows and the way back.</summary>
/// <param name="Rows">A drain run for each row.</param>
/// <param name="Exits">[m] Station at which each row's drain leaves it.</param>
/// <param name="Returns">Under-row returns, drops, collector, and the last drop into the reservoir.</param>
/// <param name="Mouth">Centre of the last elbow over the reservoir.</param>
internal sealed record DrainPlaces(
    IReadOnlyList<PipeRun> Rows,
    IReadOnlyList<double> Exits,
    IReadOnlyList<PipeRun> Returns,
    Point3 Mouth
);

/// <summary>Lays drains so that everything falls: rows to their exits, exits to a collector, the collector to the reservoir.</summary>
/// <remarks>
/// One row alone runs straight on to the reservoir. Several rows end beside the stand and drop into a collector that slopes
/// from the last row to the first, in line with which the reservoir stands.
/// </remarks>
internal sealed class DrainPlacement(Rig rig, RigParts parts, IReadOnlyList<RowPlace> rows)
{
    /// <summary>[m] How far beyond the rows' ends the collector runs.</summary>
    private const double CollectorBeyond = 0.15;

    private readonly PipeSize _pipe = parts.Drain;
    private readonly double _slope = rig.Drain.Slope;
    private readonly double _stretch = Math.Sqrt(1 + (rig.Drain.Slope * rig.Drain.Slope));
    private readonly bool _left = rig.Reservoir.At == RowEnd.Left;
    private readonly FittingType _elbow = parts.Fitting(parts.Drain, FittingKind.Elbow90);
    private readonly FittingType _tee = parts.Fitting(parts.Drain, FittingKind.Tee);
    private readonly List<PipeRun> _returns = [];

    private bool Alone => rows.Count == 1;

    /// <summary>[m] X of the rows' ends next to the reservoir.</summary>
    private double EndX => _left ? rows[0].OriginX : rows[0].OriginX + rows[0].Length;

    private double CollectorX => _left ? EndX - CollectorBeyond : EndX + CollectorBeyond;

    private double MouthX => TankPlacement.MouthX(rig, parts, EndX);

    public DrainPlaces Lay()
    {
        List<PipeRun> drains = [];
        List<double> exits = [];
        List<double> ends = [];
        foreach (RowPlace row in rows)
        {
            (PipeRun drain, double exit, double endHeight) =
                rig.Drain.Exit == DrainExit.Middle ? LayToMiddle(row) : LayToEnd(row);
            drains.Add(drain);
            exits.Add(exit);
            ends.Add(endHeight);
        }

        Point3 mouth = Alone ? new Point3(MouthX, DrainY(rows[0]), ends[0]) : LayCollector(ends);
        AddLastDrop(mouth);
        return new DrainPlaces(drains, exits, _returns, mouth);
    }

    private double NearStation(RowPlace row) => _left ? 0 : row.Length;

    /// <summary>[m] Station, in a row, of the x at which its own pipe stops.</summary>
    private double StopStation(RowPlace row) => (Alone ? MouthX : CollectorX) - row.OriginX;

    private double HighCentre(RowPlace row) => row.Base - rig.Drain.BelowPots - (_pipe.OutsideDiameter / 2);

    private double DrainY(RowPlace row)
    {
        double side = (row.Pot.Width / 2) + parts.Outlet.Reach;
        return (row.Spec.Arrangement, row.Spec.DrainSide) switch
        {
            (Arrangement.Staggered, _) or (_, Side.Middle) => row.CentreY,
            (_, Side.Front) => row.CentreY - side,
            _ => row.CentreY + side,
        };
    }

    private void DrillPots(RunDraft draft, RowPlace row)
    {
        foreach (PotPlace pot in row.Pots)
        {
            draft.Drill(pot.Station, HoleUse.PotOutlet, pot.Number, parts.Outlet.PipeHole);
        }

        draft.SortHoles();
    }

    private (PipeRun Run, double Exit, double EndHeight) LayToEnd(RowPlace row)
    {
        double far = row.Length - NearStation(row);
        double stop = StopStation(row);
        double high = HighCentre(row);
        double low = high - (_slope * Math.Abs(far - stop));
        double y = DrainY(row);
        Point3 At(double station, double z) => new(row.OriginX + station, y, z);
        bool leftIsLow = stop < far;
        var draft = new RunDraft($"D{Text.Of(row.Number)}", RunService.Drain, row.Number, _pipe, parts)
        {
            Path = leftIsLow ? [At(stop, low), At(far, high)] : [At(far, high), At(stop, low)],
            Start = Math.Min(stop, far),
            End = Math.Max(stop, far),
            Stretch = _stretch,
        };
        DrillPots(draft, row);
        draft.Fit(rig.Drain.Vent ? FittingKind.Elbow90 : FittingKind.Cap, far);
        draft.Fit(FittingKind.Elbow90, stop);
        AddVent(row, row.OriginX + far, y, high, "V");
        return (draft.Finish(row.Joints), NearStation(row), low);
    }

    private (PipeRun Run, double Exit, double EndHeight) LayToMiddle(RowPlace row)
    {
        double y = DrainY(row);
        double high = HighCentre(row);
        double reach = _tee.LayingLength + _tee.SocketDepth;
        var holes = new ClearStations([.. row.Pots.Select(p => (p.Station, parts.Outlet.PipeHole / 2))]);
        double middle = holes.Nearest(row.Length / 2, reach, reach, row.Length - reach) ?? (row.Length / 2);
        double low = high - (_slope * Math.Max(middle, row.Length - middle));
        Point3 At(double station, double z) => new(row.OriginX + station, y, z);
        var draft = new RunDraft($"D{Text.Of(row.Number)}", RunService.Drain, row.Number, _pipe, parts)
        {
            Path =
            [
                At(0, low + (_slope * middle)),
                At(middle, low),
                At(row.Length, low + (_slope * (row.Length - middle))),
            ],
            Start = 0,
            End = row.Length,
            Stretch = _stretch,
        };
        DrillPots(draft, row);
        FittingKind end = rig.Drain.Vent ? FittingKind.Elbow90 : FittingKind.Cap;
        draft.Fit(end, 0);
        draft.Fit(FittingKind.Tee, middle);
        draft.Fit(end, row.Length);
        AddVent(row, row.OriginX, y, low + (_slope * middle), "Vl");
        AddVent(row, row.OriginX + row.Length, y, low + (_slope * (row.Length - middle)), "Vr");

        // The return hangs just below: from the tee's branch through an elbow, back to the reservoir's end.
        double top = low - _tee.LayingLength - _elbow.LayingLength - _pipe.OutsideDiameter;
        double stop = StopStation(row);
        double end2 = top - (_slope * Math.Abs(middle - stop));
        AddDrop($"K{Text.Of(row.Number)}", row.Number, At(middle, low), top, _tee.LayingLength, _elbow.LayingLength);
        var back = new RunDraft($"R{Text.Of(row.Number)}", RunService.Return, row.Number, _pipe, parts)
        {
            Path = stop < middle ? [At(stop, end2), At(middle, top)] : [At(middle, top), At(stop, end2)],
            Start = Math.Min(stop, middle),
            End = Math.Max(stop, middle),
            Stretch = _stretch,
        };
        back.Fit(FittingKind.Elbow90, middle);
        back.Fit(FittingKind.Elbow90, stop);
        _returns.Add(back.Finish(row.Joints));
        return (draft.Finish(row.Joints), middle, end2);
    }

    private Point3 LayCollector(List<double> ends)
    {
        int last = rows.Count - 1;
        double least = _elbow.LayingLength + _tee.LayingLength;
        var heights = new double[rows.Count];
        // The last row's end elbow lies in the collector itself; every other row comes from above into a tee.
        heights[last] = ends[last];
        for (int i = last - 1; i >= 0; i--)
        {
            double fallen = heights[i + 1] - (_slope * (DrainY(rows[i + 1]) - DrainY(rows[i])));
            heights[i] = Math.Min(ends[i] - least, fallen);
        }

        // Heights must fall along one straight slope: hang the whole collector as low as its lowest point asks.
        double lowest = heights[0];
        double y0 = DrainY(rows[0]);
        double run = Math.Abs(MouthX - CollectorX);
        double mouth = lowest - (_slope * run);
        double across = DrainY(rows[last]) - y0;
        double highest = lowest + (_slope * across);
        double x = CollectorX;
        var draft = new RunDraft("C", RunService.Return, 0, _pipe, parts)
        {
            Path =
            [
                new Point3(x, DrainY(rows[last]), highest),
                new Point3(x, y0, lowest),
                new Point3(MouthX, y0, mouth),
            ],
            Start = 0,
            End = across + run,
            Stretch = _stretch,
        };
        for (int i = last; i >= 0; i--)
        {
            double station = DrainY(rows[last]) - DrainY(rows[i]);
            double height = lowest + (_slope * (DrainY(rows[i]) - y0));
            draft.Fit(i == last ? FittingKind.Elbow90 : FittingKind.Tee, station);
            AddDrop(
                $"L{Text.Of(rows[i].Number)}",
                rows[i].Number,
                new Point3(x, DrainY(rows[i]), ends[i]),
                height,
                _elbow.LayingLength,
                i == last ? _elbow.LayingLength : _tee.LayingLength
            );
        }

        draft.Fit(FittingKind.Elbow90, across + run);
        _returns.Add(draft.Finish([]));
        return new Point3(MouthX, y0, mouth);
    }

    private void AddDrop(string label, int row, Point3 start, double toHeight, double startLaying, double endLaying)
    {
        double length = start.Z - toHeight;
        if (length <= startLaying + endLaying + 1e-6)
        {
            return;
        }

        _returns.Add(
            new RunDraft(label, RunService.Return, row, _pipe, parts)
            {
                Path = [start, start with { Z = toHeight }],
                Start = 0,
                End = length,
                StartLaying = startLaying,
                EndLaying = endLaying,
            }.Finish([])
        );
    }

    private void AddVent(RowPlace row, double x, double y, double z, string letter)
    {
        if (!rig.Drain.Vent)
        {
            return;
        }

        // Up to the pots' drain sill and a hand more, so that a backed-up drain shows in the pots before it runs from here.
        double top = row.Base + row.Pot.DrainHeight + 0.05;
        double length = Math.Max(top - z, _elbow.LayingLength + (2 * _elbow.SocketDepth));
        _returns.Add(
            new RunDraft($"{letter}{Text.Of(row.Number)}", RunService.Return, row.Number, _pipe, parts)
            {
                Path = [new Point3(x, y, z), new Point3(x, y, z + length)],
                Start = 0,
                End = length,
                StartLaying = _elbow.LayingLength,
            }.Finish([])
        );
    }

    private void AddLastDrop(Point3 mouth)
    {
        double rim = rig.Reservoir.Base + parts.Tank.Height;
        double toRim =
            rig.Drain.Into == DrainTarget.CatchTank ? rig.Drain.Drop ?? 0.1 : rig.Drain.Drop ?? mouth.Z - rim;
        // Two fingers into the tank: quiet, and no splash over the rim.
        AddDrop("T", 0, mouth, mouth.Z - toRim - 0.05, _elbow.LayingLength, 0);
    }
}
