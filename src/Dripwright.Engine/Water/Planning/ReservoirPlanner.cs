using Dripwright.Engine.Catalogue;
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
        TankPlace place = layout.Tank;
        ResolvedTank tank = layout.Parts.Tank;
        VesselShape shape = tank.Inside;
        double fullLevel = tank.LevelIn(place.Full - place.Floor);
        double lowestLevel = tank.LevelIn(place.Lowest - place.Floor);
        double full = shape.VolumeAt(fullLevel);
        bool returns = rig.Drain.Into == DrainTarget.Reservoir;
        double fromLines = feed.Stop.BackToTank;
        double fromDrains = returns ? drain.Runs.Sum(r => r.Stored) : 0;
        double fromPots = returns ? PotsHold() : 0;
        double inlet = layout.Parts.Pump?.InletHeight ?? 0;
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
        double running = shape.LevelOf(Math.Clamp(full - powerOff.Returned, 0, shape.Capacity));
        double flow = feed.OperatingPoint?.Flow ?? feed.TotalFlow;
        int plants = layout.Rows.Sum(r => r.Pots.Sum(p => p.Plants));
        double use = layout
            .Rows.SelectMany(r => r.Pots)
            .Where(p => p.Planted)
            .Sum(p => p.Plants * layout.Resolved.UsePerPlant(p.CropType!));
        // What runs through comes back by itself, or is caught elsewhere and must be carried.
        double leaves = returns ? use : Math.Max(use, feed.TotalFlow * dose.Running / 86_400);
        double working = ReservoirDays.WorkingVolume(shape, lowestLevel, fullLevel);
        double density = WaterProperties.Density(rig.Reservoir.WaterTemperature - 273.15);
        double overInlet = Math.Max(0, full - shape.VolumeAt(tank.LevelIn(inlet)));
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
        double diameter = layout.Parts.Pump?.InletDiameter ?? layout.Parts.Header.InsideDiameter;
        return PumpInlet.LeastSubmergence(flow, diameter);
    }

    /// <summary>[m³] Free water over the sills of all pots while the pump runs.</summary>
    private double PotsHold()
    {
        double total = 0;
        ILookup<int, PotFlow> flows = feed.Pots.ToLookup(p => p.Row);
        foreach (RowLayout row in layout.Rows)
        {
            DrainedPot pot = DrainPlanner.PotOf(layout, row);
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

        double lift = Math.Max(0, layout.Supply[^1].Height - layout.Tank.Full);
        for (int i = feed.PumpCurve.Count - 1; i > 0; i--)
        {
            CurvePoint low = feed.PumpCurve[i - 1];
            CurvePoint high = feed.PumpCurve[i];
            if (low.Head >= lift)
            {
                double fall = low.Head - high.Head;
                double share = fall > 0 ? Math.Clamp((low.Head - lift) / fall, 0, 1) : 1;
                return low.Flow + ((high.Flow - low.Flow) * share);
            }
        }

        return 0;
    }
}
