using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Lays the header from the pump to every row's entry.</summary>
internal sealed class SupplyPlacement(
    Rig rig,
    RigParts parts,
    IReadOnlyList<RowPlace> rows,
    IReadOnlyList<RowFeed> feeds,
    TankPlace tank
)
{
    /// <summary>[m] An eighth of an inch lets in air enough and loses little water. Common practice.</summary>
    internal const double SiphonBreakDiameter = 0.003175;

    /// <summary>[m] How far over the highest water the hole lies: clear of ripples. Common practice.</summary>
    private const double SiphonBreakOverWater = 0.03;

    private readonly PipeSize _pipe = parts.Header;
    private readonly List<FeedLink> _links = [];

    private FittingType Fitting(FittingKind kind) => parts.Fitting(_pipe, kind);

    private double Reach(FittingKind kind) => Fitting(kind).LayingLength + Fitting(kind).SocketDepth;

    private Vector3 Entry(int row, int which) =>
        new(rows[row].OriginX + feeds[row].Entries[which], rows[row].CentreY, feeds[row].Height);

    /// <summary>Every link, upstream first.</summary>
    public IReadOnlyList<FeedLink> Lay()
    {
        var pump = tank.PumpOutlet;
        var first = Entry(0, 0);
        var rise = Math.Abs(rig.Feed.Header.Rise ?? first.Z - pump.Z);
        var run = rig.Feed.Header.Run ?? (Math.Abs(first.X - pump.X) + Math.Abs(first.Y - pump.Y));
        var toFirst = Math.Max(rise + run, 0.05);
        var both = rig.Feed.Entry == FeedEntry.BothEnds;
        var bypass = rig.Feed.Bypass is not null;

        // The bypass leaves over the tank's rim; the split to the far ends just before the first row. Where the header is
        // too short for its fittings it grows until they fit: a tee in the hand takes its room whatever the file says.
        var bypassAt = Math.Min(Math.Max(tank.Rim - pump.Z + 0.1, 0.1), 0.5 * toFirst);
        var splitAt = Math.Max(toFirst - 0.15, 0.75 * toFirst);
        var elbowsFrom = Math.Clamp(rise, bypassAt + (0.4 * (splitAt - bypassAt)), 0.95 * splitAt);
        var valveAt = bypassAt + (0.3 * (splitAt - bypassAt));
        var header = new RunDraft("H", RunService.Header, 0, _pipe, parts)
        {
            Path = [pump, pump with { Z = first.Z }, .. PathThrough(0, pump with { Z = first.Z })],
            Start = 0,
            End = 0,
        };
        header.FitAfter(FittingNeeds.Straight(_pipe), 0);
        if (rig.Feed.CheckValve)
        {
            header.FitAfter(FittingKind.CheckValve, 0.2 * bypassAt);
        }

        if (bypass)
        {
            bypassAt = header.FitAfter(FittingKind.Tee, bypassAt);
        }

        if (rig.Feed.Throttle is not null)
        {
            header.FitAfter(FittingKind.Valve, valveAt);
        }

        for (var i = 0; i < rig.Feed.Header.Elbows; i++)
        {
            // The first elbow tops the rise; where the others sit is the grower's to say, so they are spread evenly.
            var share = (double)i / rig.Feed.Header.Elbows;
            header.FitAfter(FittingKind.Elbow90, elbowsFrom + (share * (splitAt - elbowsFrom) * 0.99));
        }

        if (both)
        {
            splitAt = header.FitAfter(FittingKind.Tee, splitAt);
        }

        var taps = FitTaps(header, toFirst, 0);
        header.End = taps[^1];
        var hole = rig.Feed.SiphonBreak ? DrillSiphonBreak(header, pump) : null;
        var headerRun = header.Finish([]);

        var upstream = "pump";
        double at = 0;
        void Link(string to, double station, double height)
        {
            _links.Add(new FeedLink(upstream, to, headerRun, station - at, height, Loss(headerRun, at, station)));
            upstream = to;
            at = station;
        }

        List<(string To, double Station, double Height)> points =
        [
            .. bypass ? [("bypass", bypassAt, pump.Z + bypassAt)] : (List<(string, double, double)>)[],
            .. hole is { } drilled
                ? [(FeedLink.BreakHole, drilled, headerRun.At(drilled).Z)]
                : (List<(string, double, double)>)[],
            .. both ? [("split", splitAt, first.Z)] : (List<(string, double, double)>)[],
            .. rows.Select((_, i) => ($"near-{Labels.Of(i + 1)}", taps[i], feeds[i].Height)),
        ];
        foreach (var (to, station, height) in points.OrderBy(p => p.Station))
        {
            Link(to, station, height);
        }

        if (both)
        {
            LayFarSide(first);
        }

        if (bypass)
        {
            LayBypass(pump.Z + bypassAt);
        }

        return _links;
    }

    /// <summary>[m] Station of the hole; null where none can be drilled, or where nothing is lifted that could siphon.</summary>
    private double? DrillSiphonBreak(RunDraft header, Vector3 pump)
    {
        if (parts.Pump is null)
        {
            return null;
        }

        var radius = SiphonBreakDiameter / 2;
        var clear = new ClearStations([.. header.Fittings.Select(f => (f.Station, f.Reach))]);
        var least = Math.Max(tank.Full - pump.Z, 0) + SiphonBreakOverWater;
        if (clear.Nearest(least, radius, least, header.End - radius) is not { } station)
        {
            return null;
        }

        header.Drill(station, HoleUse.SiphonBreak, 0, SiphonBreakDiameter);
        header.SortHoles();
        return station;
    }

    /// <summary>Puts each row's tap on a header, beginning at the first row's.</summary>
    /// <returns>[m] Their stations.</returns>
    private List<double> FitTaps(RunDraft header, double first, int which)
    {
        List<double> taps = [];
        var wanted = first;
        for (var i = 0; i < rows.Count; i++)
        {
            if (i > 0)
            {
                var a = Entry(i - 1, which);
                var b = Entry(i, which);
                wanted = taps[^1] + Math.Abs(b.X - a.X) + Math.Abs(b.Y - a.Y) + Math.Abs(b.Z - a.Z);
            }

            // The last row takes the pipe's end straight into its line.
            var straight = FittingNeeds.Straight(_pipe);
            taps.Add(header.FitAfter(i == rows.Count - 1 ? straight : FittingKind.Tee, wanted));
        }

        return taps;
    }

    private IEnumerable<Vector3> PathThrough(int which, Vector3 from)
    {
        var at = from;
        for (var i = 0; i < rows.Count; i++)
        {
            var to = Entry(i, which);
            foreach (var corner in (Vector3[])[at with { X = to.X }, at with { X = to.X, Y = to.Y }, to])
            {
                if (corner.DistanceTo(at) > 1e-9)
                {
                    yield return corner;
                    at = corner;
                }
            }
        }
    }

    private void LayFarSide(Vector3 first)
    {
        var far = Entry(0, 1);
        var across = Math.Abs(far.X - first.X) + 0.15;
        var draft = new RunDraft("G", RunService.Header, 0, _pipe, parts)
        {
            Path = [first, .. PathThrough(1, first)],
            Start = 0,
            End = 0,
            StartLaying = Fitting(FittingKind.Tee).LayingLength,
        };
        draft.FitAfter(FittingKind.Elbow90, 0.1);
        var taps = FitTaps(draft, across, 1);
        draft.End = taps[^1];
        var run = draft.Finish([]);
        var upstream = "split";
        double at = 0;
        var branch = Fitting(FittingKind.Tee).LossBranch;
        for (var i = 0; i < rows.Count; i++)
        {
            var loss = Loss(run, at, taps[i]) + branch;
            _links.Add(new FeedLink(upstream, $"far-{Labels.Of(i + 1)}", run, taps[i] - at, feeds[i].Height, loss));
            upstream = $"far-{Labels.Of(i + 1)}";
            at = taps[i];
            branch = 0;
        }
    }

    private void LayBypass(double height)
    {
        var length = Math.Max(0.3, height - tank.Rim + 0.25);
        var side = rig.Reservoir.At == RowEnd.Left ? 0.1 : -0.1;
        var start = tank.PumpOutlet with { Z = height };
        var draft = new RunDraft("B", RunService.Bypass, 0, _pipe, parts)
        {
            Path =
            [
                start,
                start with
                {
                    X = start.X + side,
                },
                new Vector3(start.X + side, start.Y, height - length + 0.1),
            ],
            Start = 0,
            End = length,
            StartLaying = Fitting(FittingKind.Tee).LayingLength,
        };
        draft.FitAfter(FittingKind.Elbow90, 0.1);
        var valve = draft.FitAfter(FittingKind.Valve, 0.6 * length);
        length = Math.Max(length, valve + Reach(FittingKind.Valve));
        draft.End = length;
        var run = draft.Finish([]);
        var loss = Loss(run, 0, length) + Fitting(FittingKind.Tee).LossBranch;
        _links.Add(new FeedLink("bypass", "tank", run, length, height - length + 0.1, loss));
    }

    /// <summary>[-] Losses of the fittings after one station up to and with another, valves left to the solver.</summary>
    private static double Loss(PipeRun run, double from, double to) =>
        run
            .Fittings.Where(f =>
                (f.Station > from || f.Station == run.Start && from == run.Start)
                && f.Station <= to
                && f.Type.Kind is not FittingKind.Valve
            )
            .Sum(f => f.Type.LossThrough);
}
