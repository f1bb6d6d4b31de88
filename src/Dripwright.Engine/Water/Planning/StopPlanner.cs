using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>What the water in the lines does when the pump stops.</summary>
/// <remarks>
/// Water above the reservoir's level falls back through the stopped pump unless a check valve holds it; water above an open
/// emitter runs out there as air comes in through higher ones. Where both ways are open, the share of each is that of their
/// flows at the moment of stopping, with the lines still full. Method page: docs/methods/drain-back.md
/// </remarks>
internal sealed class StopPlanner(Rig rig, RigLayout layout)
{
    // Outlets this little below the line drain it no further than surface tension lets them.
    private const double NoDrop = 0.01;

    public StopEffect Plan()
    {
        var surface = layout.Tank.Full;
        List<(double Bottom, double Top, double Volume)> pieces = [.. Pieces()];
        var volume = pieces.Sum(p => p.Volume);
        List<(int Row, double Outlet)> open =
        [
            .. layout.Rows.SelectMany(r => r.Emitters.Where(e => e.Open > 0).Select(e => (r.Number, e.Outlet))),
        ];
        if (layout.Parts.Pump is null)
        {
            // A raised reservoir feeds on as long as its valve is open: nothing stops, so nothing runs back.
            return new StopEffect(volume, 0, 0, volume, [], false);
        }

        var lowest = open.Count > 0 ? open.Min(e => e.Outlet) : double.PositiveInfinity;
        var highest = pieces.Max(p => p.Top);
        var emittersDrain = lowest < highest - NoDrop;
        var tankDrains = !rig.Feed.CheckValve && highest > surface;
        var aboveLow = emittersDrain ? VolumeAbove(pieces, Math.Max(lowest, surface)) : 0;
        var aboveTank = tankDrains ? VolumeAbove(pieces, surface) : 0;
        var falls = Math.Max(aboveLow, aboveTank);
        var share =
            emittersDrain && tankDrains ? EmitterShare(open, surface, highest)
            : emittersDrain ? 1
            : 0;
        var through = Math.Min(falls * share, aboveLow);
        var back = tankDrains ? Math.Max(0, aboveTank - through) : 0;
        var siphons = open.Count > 0 && layout.BreakHole is null && lowest < surface - NoDrop;
        return new StopEffect(
            volume,
            through,
            back,
            volume - through - back,
            emittersDrain ? [.. open.Where(e => e.Outlet < highest - NoDrop).Select(e => e.Row).Distinct()] : [],
            siphons
        );
    }

    private IEnumerable<(double Bottom, double Top, double Volume)> Pieces()
    {
        var runs = layout
            .Supply.Select(l => l.Run)
            .Where(r => r.Service != RunService.Bypass)
            .Distinct()
            .Concat(layout.Rows.SelectMany(r => r.Feed));
        foreach (var run in runs)
        {
            double path = 0;
            for (var i = 1; i < run.Path.Count; i++)
            {
                path += run.Path[i - 1].DistanceTo(run.Path[i]);
            }

            for (var i = 1; i < run.Path.Count; i++)
            {
                var a = run.Path[i - 1];
                var b = run.Path[i];
                // A stated header length that differs from the drawn path stretches every leg alike.
                var share = path > 0 ? a.DistanceTo(b) / path : 0;
                yield return (Math.Min(a.Z, b.Z), Math.Max(a.Z, b.Z), run.Length * share * FeedModel.Area(run.Pipe));
            }
        }
    }

    private static double VolumeAbove(List<(double Bottom, double Top, double Volume)> pieces, double level) =>
        pieces.Sum(p =>
            p.Bottom >= level ? p.Volume
            : p.Top <= level ? 0
            : p.Volume * (p.Top - level) / (p.Top - p.Bottom)
        );

    /// <summary>[-] Share of the falling water that leaves through low emitters, by the flows at the moment of stopping.</summary>
    private double EmitterShare(List<(int Row, double Outlet)> open, double surface, double highest)
    {
        var law = FeedModel.LawOf(layout.Parts.Emitter, rig.Reservoir.WaterTemperature - 273.15);
        var through = open.Sum(e => law.Flow(Math.Max(0, highest - e.Outlet)));
        var bore = layout.Parts.Header.InsideDiameter;
        // Back through header and stopped pump: all head goes into its friction (taken as 0.03) and the pump's choke.
        var length = layout
            .Supply.TakeWhile(l => !l.From.StartsWith("near", StringComparison.Ordinal))
            .Sum(l => l.Length);
        var k = FeedModel.StoppedPumpLoss + LocalLoss.Exit + (0.03 * length / bore);
        var back =
            FeedModel.Area(layout.Parts.Header)
            * Math.Sqrt(2 * StandardGravity.Value * Math.Max(0, highest - surface) / k);
        return through + back > 0 ? through / (through + back) : 0;
    }
}
