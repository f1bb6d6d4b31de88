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
    Vector3 Mouth
);

/// <summary>Where a row's water goes down, to the collector or into the reservoir.</summary>
/// <param name="At">Centre of the fitting.</param>
/// <param name="Laying">[m] Its laying length.</param>
internal readonly record struct RowEndPlace(Vector3 At, double Laying);

/// <summary>Lays drains so that everything falls: rows to their exits, exits to a collector, the collector to the reservoir.</summary>
/// <remarks>
/// One row alone runs straight on to the reservoir. Several rows end beside the stand and drop into a collector that slopes
/// from the hindmost drain to the foremost and a corner further, in line with which the reservoir stands.
/// </remarks>
internal sealed class DrainPlacement(Rig rig, RigParts parts, IReadOnlyList<RowPlace> rows)
{
    /// <summary>[m] How far beyond the rows' ends the collector runs where nothing asks otherwise. Common practice.</summary>
    private const double CollectorBeyond = 0.15;

    private readonly PipeSize _pipe = parts.Drain;
    private readonly double _slope = rig.Drain.Slope;
    private readonly double _stretch = Math.Sqrt(1 + (rig.Drain.Slope * rig.Drain.Slope));
    private readonly bool _left = rig.Reservoir.At == RowEnd.Left;
    private readonly FittingType _elbow = parts.Fitting(parts.Drain, FittingKind.Elbow90);
    private readonly List<PipeRun> _returns = [];

    private bool Alone => rows.Count == 1;

    // A drain that runs on to the reservoir has none.
    private FittingType Tee => parts.Fitting(_pipe, FittingKind.Tee);

    /// <summary>[m] X of the rows' ends next to the reservoir.</summary>
    private double EndX => _left ? rows[0].OriginX : rows[0].OriginX + rows[0].Length;

    private double CollectorX => _left ? EndX - CollectorOut : EndX + CollectorOut;

    /// <summary>[m] From the rows' ends outwards to the collector.</summary>
    private double CollectorOut
    {
        get
        {
            var mouth = TankPlacement.MouthX(rig, parts, EndX, EndX);
            var toMouth = _left ? EndX - mouth : mouth - EndX;
            // Where the mouth is too near for a corner of two elbows, the collector runs straight over it.
            var corner = 2 * Reach(_elbow);
            return Math.Abs(toMouth - CollectorBeyond) >= corner ? CollectorBeyond
                : toMouth >= 0 ? toMouth
                : toMouth + corner;
        }
    }

    public DrainPlaces Lay()
    {
        List<PipeRun> drains = [];
        List<double> exits = [];
        List<RowEndPlace> ends = [];
        foreach (var row in rows)
        {
            (var drain, var exit, var end) = rig.Drain.Exit == DrainExit.Middle ? LayToMiddle(row) : LayToEnd(row);
            drains.Add(drain);
            exits.Add(exit);
            ends.Add(end);
        }

        var mouth = Alone ? ends[0].At : LayCollector(ends);
        AddLastDrop(mouth, Alone ? ends[0].Laying : _elbow.LayingLength);
        return new DrainPlaces(drains, exits, _returns, mouth);
    }

    private static double Reach(FittingType fitting) => fitting.LayingLength + fitting.SocketDepth;

    /// <summary>[m] Least distance between the centres of two fittings that a nipple joins.</summary>
    private static double Apart(FittingType a, FittingType b) => Reach(a) + Reach(b);

    private double NearStation(RowPlace row) => _left ? 0 : row.Length;

    /// <summary>[m] Station, in a row, at which the water must arrive that leaves it at another.</summary>
    private double StopStation(RowPlace row, double exit)
    {
        var x = Alone ? TankPlacement.MouthX(rig, parts, EndX, row.OriginX + exit) : CollectorX;
        return x - row.OriginX;
    }

    private double HighCentre(RowPlace row) => row.Base - rig.Drain.BelowPots - (_pipe.OutsideDiameter / 2);

    private double DrainY(RowPlace row)
    {
        var side = (row.Pot.Width / 2) + parts.Outlet.Reach;
        return (row.Spec.Arrangement, row.Spec.DrainSide) switch
        {
            (Arrangement.Staggered, _) or (_, Side.Middle) => row.CentreY,
            (_, Side.Front) => row.CentreY - side,
            _ => row.CentreY + side,
        };
    }

    private void DrillPots(RunDraft draft, RowPlace row)
    {
        foreach (var pot in row.Pots)
        {
            draft.Drill(pot.Station, HoleUse.PotOutlet, pot.Number, parts.Outlet.PipeHole);
        }

        draft.SortHoles();
    }

    private (PipeRun Run, double Exit, RowEndPlace End) LayToEnd(RowPlace row)
    {
        var near = NearStation(row);
        var far = row.Length - near;
        var stop = StopStation(row, near);
        // A reservoir wholly under the row is reached by a return below; the drain itself must pass every pot.
        var back = _left ? stop > 1e-9 : stop < row.Length - 1e-9;
        var last = back ? near : stop;
        var high = HighCentre(row);
        var low = high - (_slope * Math.Abs(far - last));
        var y = DrainY(row);
        Vector3 At(double station, double z) => new(row.OriginX + station, y, z);
        var draft = new RunDraft($"D{Labels.Of(row.Number)}", RunService.Drain, row.Number, _pipe, parts)
        {
            Path = _left ? [At(last, low), At(far, high)] : [At(far, high), At(last, low)],
            Start = Math.Min(last, far),
            End = Math.Max(last, far),
            Stretch = _stretch,
            FromEnd = _left,
        };
        DrillPots(draft, row);
        draft.Fit(rig.Drain.Vent ? FittingKind.Elbow90 : FittingKind.Cap, far);
        draft.Fit(FittingKind.Elbow90, last);
        AddVent(row, row.OriginX + far, y, high, "V");
        var end = back
            ? HangReturn(row, At(last, low), _elbow, stop)
            : new RowEndPlace(At(last, low), _elbow.LayingLength);
        return (draft.Finish(row.Joints), near, end);
    }

    private (PipeRun Run, double Exit, RowEndPlace End) LayToMiddle(RowPlace row)
    {
        var y = DrainY(row);
        var high = HighCentre(row);
        var reach = Reach(Tee);
        var holes = new ClearStations([.. row.Pots.Select(p => (p.Station, parts.Outlet.PipeHole / 2))]);
        var middle = holes.Nearest(row.Length / 2, reach, reach, row.Length - reach, !_left) ?? (row.Length / 2);
        var low = high - (_slope * Math.Max(middle, row.Length - middle));
        Vector3 At(double station, double z) => new(row.OriginX + station, y, z);
        var draft = new RunDraft($"D{Labels.Of(row.Number)}", RunService.Drain, row.Number, _pipe, parts)
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
            FromEnd = _left,
        };
        DrillPots(draft, row);
        var end = rig.Drain.Vent ? FittingKind.Elbow90 : FittingKind.Cap;
        draft.Fit(end, 0);
        draft.Fit(FittingKind.Tee, middle);
        draft.Fit(end, row.Length);
        AddVent(row, row.OriginX, y, low + (_slope * middle), "Vl");
        AddVent(row, row.OriginX + row.Length, y, low + (_slope * (row.Length - middle)), "Vr");
        var stop = HangReturn(row, At(middle, low), Tee, StopStation(row, middle));
        return (draft.Finish(row.Joints), middle, stop);
    }

    /// <summary>Hangs a return below the row's drain, from its exit to where the water must go.</summary>
    /// <param name="row">The row.</param>
    /// <param name="exit">Centre of the fitting by which the water leaves the drain, downwards.</param>
    /// <param name="exitFitting">That fitting; it is counted on the drain.</param>
    /// <param name="wanted">[m] Station to which the return runs.</param>
    private RowEndPlace HangReturn(RowPlace row, Vector3 exit, FittingType exitFitting, double wanted)
    {
        var from = exit.X - row.OriginX;
        var away = wanted - from;
        if (Math.Abs(away) < 1e-9)
        {
            // The reservoir stands right below.
            return new RowEndPlace(exit, exitFitting.LayingLength);
        }

        var stop = from + (Math.Sign(away) * Math.Max(Math.Abs(away), Apart(_elbow, _elbow)));
        var top = exit.Z - Apart(exitFitting, _elbow);
        var low = top - (_slope * Math.Abs(stop - from));
        AddDrop($"K{Labels.Of(row.Number)}", row.Number, exit, top, exitFitting.LayingLength, _elbow.LayingLength);
        Vector3 end = new(row.OriginX + stop, exit.Y, low);
        var back = new RunDraft($"R{Labels.Of(row.Number)}", RunService.Return, row.Number, _pipe, parts)
        {
            Path = stop < from ? [end, exit with { Z = top }] : [exit with { Z = top }, end],
            Start = Math.Min(stop, from),
            End = Math.Max(stop, from),
            Stretch = _stretch,
            FromEnd = stop < from,
        };
        back.Fit(FittingKind.Elbow90, from);
        back.Fit(FittingKind.Elbow90, stop);
        _returns.Add(back.Finish(row.Joints));
        return new RowEndPlace(end, _elbow.LayingLength);
    }

    private Vector3 LayCollector(List<RowEndPlace> ends)
    {
        // From the hindmost drain to the foremost; by place, not by number, for drains may lie on either side of a row.
        int[] order = [.. Enumerable.Range(0, rows.Count).OrderByDescending(i => ends[i].At.Y)];
        var x = CollectorX;
        var back = ends[order[0]].At.Y;
        var draft = new RunDraft("C", RunService.Return, 0, _pipe, parts)
        {
            Path = [],
            Start = 0,
            End = 0,
            Stretch = _stretch,
        };
        // Every row comes from above: into the elbow that begins the collector, or into a tee.
        var stations = new double[rows.Count];
        var start = double.PositiveInfinity;
        for (var k = 0; k < order.Length; k++)
        {
            var end = ends[order[k]];
            stations[k] = draft.FitAfter(k == 0 ? FittingKind.Elbow90 : FittingKind.Tee, back - end.At.Y);
            // The collector has one slope: it hangs as low as its lowest drop asks.
            var least = Apart(_elbow, k == 0 ? _elbow : Tee);
            start = Math.Min(start, end.At.Z - least + (_slope * stations[k]));
        }

        var corner = draft.FitAfter(FittingKind.Elbow90, stations[^1]);
        var mouthX = TankPlacement.MouthX(rig, parts, EndX, EndX);
        var across = Math.Abs(mouthX - x);
        var stop = across > 1e-9 ? draft.FitAfter(FittingKind.Elbow90, corner + across) : corner;
        double HeightAt(double station) => start - (_slope * station);
        draft.End = stop;
        var mouth = new Vector3(mouthX, back - corner, HeightAt(stop));
        var turn = new Vector3(x, back - corner, HeightAt(corner));
        draft.Path = across > 1e-9 ? [new Vector3(x, back, start), turn, mouth] : [new Vector3(x, back, start), mouth];
        for (var k = 0; k < order.Length; k++)
        {
            var row = rows[order[k]];
            AddDrop(
                $"L{Labels.Of(row.Number)}",
                row.Number,
                ends[order[k]].At,
                HeightAt(stations[k]),
                _elbow.LayingLength,
                (k == 0 ? _elbow : Tee).LayingLength
            );
        }

        _returns.Add(draft.Finish([]));
        return mouth;
    }

    private void AddDrop(string label, int row, Vector3 start, double toHeight, double startLaying, double endLaying)
    {
        var length = start.Z - toHeight;
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
        var top = row.Base + row.Pot.DrainHeight + 0.05;
        var length = Math.Max(top - z, _elbow.LayingLength + (2 * _elbow.SocketDepth));
        _returns.Add(
            new RunDraft($"{letter}{Labels.Of(row.Number)}", RunService.Return, row.Number, _pipe, parts)
            {
                Path = [new Vector3(x, y, z), new Vector3(x, y, z + length)],
                Start = 0,
                End = length,
                StartLaying = _elbow.LayingLength,
            }.Finish([])
        );
    }

    private void AddLastDrop(Vector3 mouth, double startLaying)
    {
        var rim = rig.Reservoir.Base + parts.Tank.Height;
        var toRim = rig.Drain.Into == DrainTarget.CatchTank ? rig.Drain.Drop ?? 0.1 : rig.Drain.Drop ?? mouth.Z - rim;
        // Two fingers into the tank: quiet, and no splash over the rim.
        AddDrop("T", 0, mouth, mouth.Z - toRim - 0.05, startLaying, 0);
    }
}
