using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Computes the drains of a rig whose feed is known. All that is fed is taken to come back: the worst for the drain.</summary>
internal sealed class DrainPlanner(Rig rig, RigLayout layout, FeedPlan feed)
{
    /// <summary>[-] A thousandth is finer than anyone knows a drain.</summary>
    private readonly double _bore = layout.Parts.Drain.InsideDiameter;
    private readonly double _slope = rig.Drain.Slope;

    public DrainPlan Plan()
    {
        var flows = feed.Pots.ToLookup(p => p.Row);
        List<DrainRunPlan> runs = [];
        List<PotDrainPlan> pots = [];
        var rowFlow = new double[layout.Rows.Count];
        foreach (var row in layout.Rows)
        {
            rowFlow[row.Number - 1] = flows[row.Number].Sum(p => p.Flow);
        }

        // Upstream from the reservoir: what stands in one pipe may back up into the next.
        var collector = layout.Returns.FirstOrDefault(r => r.Label == "C") is { } pipe
            ? CollectorOf(pipe, rowFlow)
            : null;
        Dictionary<int, DrainRunPlan> returns = [];
        foreach (var run in layout.Returns.Where(r => r.Label.StartsWith('R')))
        {
            returns[run.Row] = ReturnOf(
                run,
                rowFlow[run.Row - 1],
                WaterBelow(layout.Rows[run.Row - 1], null, collector)
            );
        }

        foreach (var row in layout.Rows)
        {
            double[] pot = [.. flows[row.Number].OrderBy(p => p.Pot).Select(p => p.Flow)];
            var below = WaterBelow(row, returns.GetValueOrDefault(row.Number), collector);
            List<(DrainRun Run, DrainProfile Profile, double High, double Direction)> halves =
            [
                .. Halves(row, pot, below),
            ];
            foreach ((var run, var profile, var high, var direction) in halves)
            {
                (var side, var half) =
                    halves.Count == 1 ? ("", DrainHalf.Whole)
                    : direction > 0 ? (" left", DrainHalf.Left)
                    : (" right", DrainHalf.Right);
                var plan = PlanOf(row.Drain.Label + side, row.Number, row.Drain, profile, high, direction);
                runs.Add(plan with { Half = half });
            }

            pots.Add(PotsOf(row, pot, halves));
        }

        runs.AddRange(layout.Returns.Where(r => r.Label.StartsWith('R')).Select(r => returns[r.Row]));
        if (collector is not null)
        {
            runs.Add(collector);
        }

        var highest = layout.Rows.Max(r => r.Drain.Path.Max(p => p.Z));
        return new DrainPlan(
            runs,
            pots,
            highest - layout.Tank.Mouth.Z,
            layout.Tank.Mouth.Z - (_bore / 2) - layout.Tank.Rim
        );
    }

    /// <summary>A row's drain as one run, or two that meet at a middle tee. Direction is that of the flow along the stations.</summary>
    private IEnumerable<(DrainRun Run, DrainProfile Profile, double High, double Direction)> Halves(
        RowLayout row,
        double[] pots,
        double below
    )
    {
        var pipe = row.Drain;
        if (rig.Drain.Exit == DrainExit.Middle)
        {
            yield return Half(row, pots, pipe.Start, row.DrainExit, pipe.Stretch, below);
            yield return Half(row, pots, pipe.End, row.DrainExit, pipe.Stretch, below);
            yield break;
        }

        var flowsLeft = pipe.Path[0].Z < pipe.Path[^1].Z || (_slope == 0 && rig.Reservoir.At == RowEnd.Left);
        var high = flowsLeft ? pipe.End : pipe.Start;
        var low = flowsLeft ? pipe.Start : pipe.End;
        yield return Half(row, pots, high, low, pipe.Stretch, below);
    }

    private (DrainRun, DrainProfile, double, double) Half(
        RowLayout row,
        double[] pots,
        double high,
        double low,
        double stretch,
        double below
    )
    {
        var lowInvert = row.Drain.At(Math.Clamp(low, row.Drain.Start, row.Drain.End)).Z - (_bore / 2);
        double direction = low > high ? 1 : -1;
        List<DrainInflow> inflows =
        [
            .. row
                .Pots.Select((p, i) => (Distance: (p.Station - high) * direction * stretch, Flow: pots[i]))
                .Where(p => p.Distance >= 0 && p.Distance <= Math.Abs(low - high) * stretch)
                .OrderBy(p => p.Distance)
                .Select(p => new DrainInflow(p.Distance, p.Flow)),
        ];
        var run = new DrainRun
        {
            Diameter = _bore,
            Length = Math.Abs(low - high) * stretch,
            Slope = _slope,
            Roughness = layout.Parts.Drain.ManningN,
            Inflows = inflows,
            OutletWaterDepth = Math.Max(0, below - lowInvert),
        };
        return (run, DrainProfile.Of(run), high, direction);
    }

    /// <summary>[m] Height of the water into which a row's drain, or its return, falls; minus infinity where it falls freely.</summary>
    /// <param name="row">The row.</param>
    /// <param name="back">The return under the row; null where the drain goes on by itself, or where the return is asked about.</param>
    /// <param name="collector">The collector; null where the row is alone.</param>
    private double WaterBelow(RowLayout row, DrainRunPlan? back, DrainRunPlan? collector)
    {
        if (back is not null)
        {
            return HeightOf(back.Surface[0]);
        }

        if (collector is null)
        {
            return Standing();
        }

        var at = Math.Abs(layout.Returns.First(r => r.Label == "C").Path[0].Y - DrainY(row));
        var nearest = collector.Surface.Min(p => Math.Abs(p.Station - at));
        return collector.Surface.Where(p => Math.Abs(p.Station - at) <= nearest + 1e-9).Max(HeightOf);
    }

    private static double HeightOf(SurfacePoint point) =>
        point.Depth > 0 ? point.Invert + point.Depth : double.NegativeInfinity;

    /// <summary>[m] Height of the reservoir's water, where the drains end in it.</summary>
    private double Standing() => rig.Drain.Into == DrainTarget.CatchTank ? double.NegativeInfinity : layout.Tank.Full;

    private DrainRunPlan ReturnOf(PipeRun run, double flow, double below)
    {
        var flowsLeft = rig.Reservoir.At == RowEnd.Left;
        return Simple(run, [new DrainInflow(0, flow)], flowsLeft, below);
    }

    private DrainRunPlan CollectorOf(PipeRun run, double[] rowFlow)
    {
        // From its high end the collector runs past the last row first; a row beyond its end still enters at the end.
        var highY = run.Path[0].Y;
        List<DrainInflow> inflows =
        [
            .. layout
                .Rows.Select(r => new DrainInflow(
                    Math.Clamp(Math.Abs(highY - DrainY(r)) * run.Stretch, 0, run.Length),
                    rowFlow[r.Number - 1]
                ))
                .OrderBy(inflow => inflow.Distance),
        ];
        return Simple(run, inflows, false, Standing());
    }

    private static double DrainY(RowLayout row) => row.Drain.Path[0].Y;

    private DrainRunPlan Simple(PipeRun pipe, List<DrainInflow> inflows, bool highAtEnd, double below)
    {
        var lowInvert = pipe.Path.Min(p => p.Z) - (_bore / 2);
        var run = new DrainRun
        {
            Diameter = _bore,
            Length = pipe.Length,
            Slope = _slope,
            Roughness = layout.Parts.Drain.ManningN,
            Inflows = inflows,
            OutletWaterDepth = Math.Max(0, below - lowInvert),
        };
        return PlanOf(
            pipe.Label,
            pipe.Row,
            pipe,
            DrainProfile.Of(run),
            highAtEnd ? pipe.End : pipe.Start,
            highAtEnd ? -1 : 1
        );
    }

    private DrainRunPlan PlanOf(
        string label,
        int row,
        PipeRun pipe,
        DrainProfile profile,
        double high,
        double direction
    )
    {
        var lowStation = high + (direction * profile.Run.Length / pipe.Stretch);
        var lowInvert = pipe.At(Math.Clamp(lowStation, pipe.Start, pipe.End)).Z - (_bore / 2);
        return new DrainRunPlan(
            label,
            row,
            profile.Run.TotalFlow,
            profile.UniformCapacity,
            profile.Run,
            [
                .. profile.Points.Select(p => new SurfacePoint(
                    high + (direction * p.Distance / pipe.Stretch),
                    lowInvert + p.InvertHeight,
                    p.Depth,
                    p.Flow,
                    p.Velocity
                )),
            ],
            high + (direction * profile.GreatestDepthDistance / pipe.Stretch),
            Math.Min(1, profile.GreatestDepthRatio),
            profile.RunsFull,
            profile.Run.OutletWaterDepth == 0,
            profile.StoredVolume
        );
    }

    private PotDrainPlan PotsOf(
        RowLayout row,
        double[] pots,
        List<(DrainRun Run, DrainProfile Profile, double High, double Direction)> halves
    )
    {
        var pot = PotOf(layout, row);
        var most = pots.Max();
        var running = PotDrain.Running(pot, most);
        var sill = row.Base + pot.SillHeight;
        List<int> ponding = [];
        BlockedDrainResult? blocked = null;
        var blockedPot = 0;
        foreach ((var run, var profile, var high, var direction) in halves)
        {
            var low = high + (direction * run.Length / row.Drain.Stretch);
            var invert = row.Drain.At(Math.Clamp(low, row.Drain.Start, row.Drain.End)).Z - (_bore / 2);
            var numbers = NumbersAlong(row, high, direction, run.Length / row.Drain.Stretch);
            for (var i = 0; i < profile.Stations.Count && i < numbers.Length; i++)
            {
                if (invert + profile.Stations[i].SurfaceHeight > sill)
                {
                    ponding.Add(numbers[i]);
                }
            }

            List<BlockedPot> standing =
            [
                .. numbers.Select(
                    (n, i) =>
                        new BlockedPot(
                            run.Inflows[i].Distance,
                            pots[n - 1],
                            sill - invert,
                            row.Base + row.Pot.Height - invert,
                            pot.FreeFraction * (pot.Shape.Capacity - pot.Shape.VolumeAt(pot.SillHeight)),
                            null
                        )
                ),
            ];
            double? vent = rig.Drain.Vent ? VentTop(row, high) - invert : null;
            var result = BlockedDrain.Follow(run, standing, run.Length, vent);
            if (result.Time is { } time && (blocked?.Time is not { } before || time < before))
            {
                blocked = result;
                blockedPot = result.Pot is { } index ? numbers[index] : 0;
            }
        }

        return new PotDrainPlan(
            row.Number,
            running.StandingVolume,
            running.HeadOverSill,
            PotOutlet.Flow(row.Pot.Height - pot.SillHeight, pot.Bore),
            PotDrain.TimeToDrain(pot, pot.Shape.Height) ?? 0,
            ponding,
            blockedPot,
            blocked?.Time ?? 0,
            blocked?.AtVent ?? false
        );
    }

    private double VentTop(RowLayout row, double high) =>
        layout
            .Returns.Where(r => r.Label.StartsWith('V') && r.Row == row.Number)
            .OrderBy(r => Math.Abs(r.Path[0].X - row.OriginX - high))
            .Select(r => r.Path[^1].Z)
            .FirstOrDefault(double.MaxValue);

    private static int[] NumbersAlong(RowLayout row, double high, double direction, double length) =>
        [
            .. row
                .Pots.Where(p => (p.Station - high) * direction >= 0 && (p.Station - high) * direction <= length)
                .OrderBy(p => (p.Station - high) * direction)
                .Select(p => p.Number),
        ];

    /// <summary>A row's pot as its drain sees it.</summary>
    internal static DrainedPot PotOf(RigLayout layout, RowLayout row) =>
        new()
        {
            Shape = VesselOf(row.Pot),
            SillHeight = row.Pot.DrainHeight,
            Bore = layout.Parts.Outlet.Bore,
            FreeFraction = layout.MediumOf(row).Air,
        };

    /// <summary>A pot as the vessel of its volume: its walls lean so that base, rim and height give it.</summary>
    private static VesselShape VesselOf(Catalogue.PotType pot)
    {
        // A vessel needs a floor; of a pot that runs to a point it is a millionth of the rim.
        var low = Math.Max(pot.BaseRatio, 1e-6);
        return pot.Round
            ? new RoundVessel(low * pot.Length, pot.Length, pot.Height)
            : new BoxVessel(low * pot.Length, low * pot.Width, pot.Length, pot.Width, pot.Height);
    }
}
