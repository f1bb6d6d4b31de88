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
    private readonly PipeSize _pipe = parts.Header;
    private readonly List<FeedLink> _links = [];

    private FittingType Fitting(FittingKind kind) => parts.Fitting(_pipe, kind);

    private Point3 Entry(int row, int which) =>
        new(rows[row].OriginX + feeds[row].Entries[which], rows[row].CentreY, feeds[row].Height);

    /// <summary>Every link, upstream first.</summary>
    public IReadOnlyList<FeedLink> Lay()
    {
        Point3 pump = tank.PumpOutlet;
        Point3 first = Entry(0, 0);
        double rise = Math.Abs(rig.Feed.Header.Rise ?? first.Z - pump.Z);
        double run = rig.Feed.Header.Run ?? (Math.Abs(first.X - pump.X) + Math.Abs(first.Y - pump.Y));
        double toFirst = Math.Max(rise + run, 0.05);
        List<double> taps = TapsFrom(0, toFirst);
        bool both = rig.Feed.Entry == FeedEntry.BothEnds;
        bool bypass = rig.Feed.Bypass is not null;

        // The bypass leaves over the tank's rim; the split to the far ends just before the first row.
        double bypassAt = Math.Min(Math.Max(tank.Rim - pump.Z + 0.1, 0.1), 0.5 * toFirst);
        double splitAt = Math.Max(toFirst - 0.15, 0.75 * toFirst);
        var header = new RunDraft("H", RunService.Header, 0, _pipe, parts)
        {
            Path = [pump, pump with { Z = first.Z }, .. PathThrough(0, pump with { Z = first.Z })],
            Start = 0,
            End = taps[^1],
        };
        header.Fit(_pipe.Flexible ? FittingKind.Barb : FittingKind.Adapter, 0);
        if (rig.Feed.CheckValve)
        {
            header.Fit(FittingKind.CheckValve, 0.2 * bypassAt);
        }

        if (bypass)
        {
            header.Fit(FittingKind.Tee, bypassAt);
        }

        if (rig.Feed.Throttle is not null)
        {
            header.Fit(FittingKind.Valve, bypassAt + (0.3 * (splitAt - bypassAt)));
        }

        for (int i = 0; i < rig.Feed.Header.Elbows; i++)
        {
            // The first elbow tops the rise; where the others sit is the grower's to say, so they are spread evenly.
            double share = i == 0 ? 0 : (double)i / rig.Feed.Header.Elbows;
            double start = Math.Clamp(rise, bypassAt + (0.4 * (splitAt - bypassAt)), 0.95 * splitAt);
            header.Fit(FittingKind.Elbow90, start + (share * (splitAt - start) * 0.99));
        }

        if (both)
        {
            header.Fit(FittingKind.Tee, splitAt);
        }

        FitTaps(header, taps);
        PipeRun headerRun = header.Finish([]);

        string upstream = "pump";
        double at = 0;
        void Link(string to, double station, double height)
        {
            _links.Add(new FeedLink(upstream, to, headerRun, station - at, height, Loss(headerRun, at, station)));
            upstream = to;
            at = station;
        }

        if (bypass)
        {
            Link("bypass", bypassAt, pump.Z + bypassAt);
        }

        if (both)
        {
            Link("split", splitAt, first.Z);
        }

        for (int i = 0; i < rows.Count; i++)
        {
            Link($"near-{Text.Of(i + 1)}", taps[i], feeds[i].Height);
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

    /// <summary>[m] Stations along a header of each row's tap, beginning at the first row's.</summary>
    private List<double> TapsFrom(int which, double first)
    {
        List<double> taps = [first];
        for (int i = 1; i < rows.Count; i++)
        {
            Point3 a = Entry(i - 1, which);
            Point3 b = Entry(i, which);
            taps.Add(taps[^1] + Math.Abs(b.X - a.X) + Math.Abs(b.Y - a.Y) + Math.Abs(b.Z - a.Z));
        }

        return taps;
    }

    private IEnumerable<Point3> PathThrough(int which, Point3 from)
    {
        Point3 at = from;
        for (int i = 0; i < rows.Count; i++)
        {
            Point3 to = Entry(i, which);
            foreach (Point3 corner in (Point3[])[at with { X = to.X }, at with { X = to.X, Y = to.Y }, to])
            {
                if (corner.DistanceTo(at) > 1e-9)
                {
                    yield return corner;
                    at = corner;
                }
            }
        }
    }

    private void FitTaps(RunDraft header, List<double> taps)
    {
        for (int i = 0; i < taps.Count; i++)
        {
            bool last = i == taps.Count - 1;
            // The last row takes the pipe's end straight into its line.
            FittingKind straight = _pipe.Flexible ? FittingKind.Barb : FittingKind.Adapter;
            header.Fit(last ? straight : FittingKind.Tee, taps[i]);
        }
    }

    private void LayFarSide(Point3 first)
    {
        Point3 far = Entry(0, 1);
        double across = Math.Abs(far.X - first.X) + 0.15;
        List<double> taps = TapsFrom(1, across);
        var draft = new RunDraft("G", RunService.Header, 0, _pipe, parts)
        {
            Path = [first, .. PathThrough(1, first)],
            Start = 0,
            End = taps[^1],
            StartLaying = Fitting(FittingKind.Tee).LayingLength,
        };
        draft.Fit(FittingKind.Elbow90, 0.1);
        FitTaps(draft, taps);
        PipeRun run = draft.Finish([]);
        string upstream = "split";
        double at = 0;
        double branch = Fitting(FittingKind.Tee).LossBranch;
        for (int i = 0; i < rows.Count; i++)
        {
            double loss = Loss(run, at, taps[i]) + branch;
            _links.Add(new FeedLink(upstream, $"far-{Text.Of(i + 1)}", run, taps[i] - at, feeds[i].Height, loss));
            upstream = $"far-{Text.Of(i + 1)}";
            at = taps[i];
            branch = 0;
        }
    }

    private void LayBypass(double height)
    {
        double length = Math.Max(0.3, height - tank.Rim + 0.25);
        Point3 start = tank.PumpOutlet with { Z = height };
        var draft = new RunDraft("B", RunService.Bypass, 0, _pipe, parts)
        {
            Path = [start, start with { X = start.X + 0.1 }, new Point3(start.X + 0.1, start.Y, height - length + 0.1)],
            Start = 0,
            End = length,
            StartLaying = Fitting(FittingKind.Tee).LayingLength,
        };
        draft.Fit(FittingKind.Elbow90, 0.1);
        draft.Fit(FittingKind.Valve, 0.6 * length);
        PipeRun run = draft.Finish([]);
        double loss = Loss(run, 0, length) + Fitting(FittingKind.Tee).LossBranch;
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
