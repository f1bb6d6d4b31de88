using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Computes the reservoir of a rig whose feed and drains are known.</summary>
/// <remarks>
/// Two cases are kept apart. Filled to its mark with the pump off, the level falls to the running level as lines, pots and
/// drains fill. Topped up to the mark while the pump runs, all of that comes back on top of the mark when the pump stops:
/// the case in which it overflows, and the one that is judged.
/// </remarks>
internal sealed class ReservoirPlanner(Rig rig, RigLayout layout, FeedPlan feed, DosePlan dose, DrainPlan drain)
{
    public ReservoirPlan Plan()
    {
        var place = layout.Tank;
        var tank = layout.Parts.Tank;
        var shape = tank.Inside;
        var fullLevel = tank.LevelIn(place.Full - place.Floor);
        var lowestLevel = tank.LevelIn(place.Lowest - place.Floor);
        var full = shape.VolumeAt(fullLevel);
        var returns = rig.Drain.Into == DrainTarget.Reservoir;
        var fromLines = feed.Stop.BackToTank;
        var fromDrains = returns ? drain.Runs.Sum(r => r.Stored) : 0;
        var fromPots = returns ? PotsHold() : 0;
        var inlet = layout.Parts.Pump?.InletHeight ?? 0;
        var powerOff = PowerOff.Follow(
            new PowerOffState
            {
                Reservoir = shape,
                RunningLevel = fullLevel,
                OverflowLevel = shape.Height,
                FeedLineReturn = fromLines,
                DrainFilm = fromDrains,
                PotsOverSill = fromPots,
                LowestOutlet = feed.Stop.Siphons ? LowestOutlet() - place.Floor : null,
                PumpInlet = inlet,
            }
        );
        var running = shape.LevelOf(Math.Clamp(full - powerOff.Returned, 0, shape.Capacity));
        var flow = feed.OperatingPoint?.Flow ?? feed.TotalFlow;
        var plants = layout.Rows.Sum(r => r.Pots.Sum(p => p.Plants));
        var use = layout
            .Rows.SelectMany(r => r.Pots)
            .Where(p => p.Planted)
            .Sum(p => p.Plants * layout.Resolved.UsePerPlant(p.CropType!));
        // What runs through comes back by itself, or is caught elsewhere and must be carried.
        var leaves = returns ? use : Math.Max(use, feed.TotalFlow * dose.Running / 86_400);
        var working = ReservoirDays.WorkingVolume(shape, lowestLevel, fullLevel);
        var density = WaterProperties.Density(rig.Reservoir.WaterTemperature - 273.15);
        var overInlet = Math.Max(0, full - shape.VolumeAt(tank.LevelIn(inlet)));
        return new ReservoirPlan
        {
            RimVolume = shape.Capacity,
            FullVolume = full,
            WorkingVolume = working,
            RunningLevel = running,
            InletCover = running - inlet,
            InletCoverWanted = CoverWanted(Math.Max(0, flow)),
            BackFromLines = fromLines,
            BackFromDrains = fromDrains,
            BackFromPots = fromPots,
            Freeboard = powerOff.FreeVolume,
            Overflow = powerOff.Overflow,
            SiphonsTo = feed.Stop.Siphons ? powerOff.SiphonLevel : null,
            SecondsToEmptyLineOff = LineOffFlow() is > 0 and { } open
                ? ReservoirDays.TimeToEmpty(overInlet, open)
                : null,
            SecondsToEmptyDrainBlocked = feed.TotalFlow > 0 ? ReservoirDays.TimeToEmpty(working, feed.TotalFlow) : null,
            Plants = plants,
            Use = use,
            Leaves = leaves,
            Days = leaves > 0 ? working / leaves / 86_400 : null,
            WaterMass = full * density,
            FloorPressure =
                full * density * StandardGravity.Value / ((place.Right - place.Left) * (place.Back - place.Front)),
        };
    }

    private double CoverWanted(double flow)
    {
        var diameter = layout.Parts.Pump?.InletDiameter ?? layout.Parts.Header.InsideDiameter;
        return PumpInlet.LeastSubmergence(flow, diameter);
    }

    /// <summary>[m³] Free water over the sills of all pots while the pump runs.</summary>
    private double PotsHold()
    {
        double total = 0;
        var flows = feed.Pots.ToLookup(p => p.Row);
        foreach (var row in layout.Rows)
        {
            var pot = DrainPlanner.PotOf(layout, row);
            // Equal flows hold equal water: many pots, few different flows.
            foreach (var group in flows[row.Number].GroupBy(p => p.Flow))
            {
                total += group.Count() * PotDrain.Running(pot, group.Key).VolumeOverSill;
            }
        }

        return total;
    }

    private double LowestOutlet() => layout.Rows.SelectMany(r => r.Emitters).Where(e => e.Open > 0).Min(e => e.Outlet);

    /// <summary>[m³/s] What the pump gives when the line comes off at the first row: only the lift is left. The soonest case.</summary>
    private double LineOffFlow()
    {
        if (feed.PumpCurve.Count < 2)
        {
            return 0;
        }

        var lift = Math.Max(0, layout.Supply[^1].Height - layout.Tank.Full);
        for (var i = feed.PumpCurve.Count - 1; i > 0; i--)
        {
            var low = feed.PumpCurve[i - 1];
            var high = feed.PumpCurve[i];
            if (low.Head >= lift)
            {
                var fall = low.Head - high.Head;
                var share = fall > 0 ? Math.Clamp((low.Head - lift) / fall, 0, 1) : 1;
                return low.Flow + ((high.Flow - low.Flow) * share);
            }
        }

        return 0;
    }
}
