using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>Works out what each pot is given in a day by the pump's clock.</summary>
/// <remarks>
/// A watering counts from the moment the water arrives: what ran out of the lines after the last one must be pumped back
/// into them first. What runs out through low emitters then reaches the pots of those rows. Method page: docs/methods/dose.md
/// </remarks>
internal sealed class DosePlanner(RigLayout layout, FeedPlan feed)
{
    private const double SecondsPerDay = 86_400;

    public DosePlan Plan()
    {
        var clock = layout.Resolved.Clock;
        var stops = layout.Parts.Pump is not null && !clock.Continuous;
        var fill = stops ? FillTime() : 0;
        var watering = clock.Watering;
        var running = clock.Waterings * Math.Max(0, watering - fill);
        // A pulse too short to fill the lines leaves no more in them than it brought.
        var filled = fill > 0 ? Math.Min(1, watering / fill) : 1;
        var runOff = stops ? clock.Waterings * filled * RunOffPerLowPot() : 0;
        var places = layout
            .Rows.SelectMany(row => row.Pots.Select(pot => (row.Number, Pot: pot)))
            .ToDictionary(p => (p.Number, p.Pot.Number), p => p.Pot);
        return new DosePlan
        {
            Pots =
            [
                .. feed
                    .Pots.Where(p => p.Planted && p.Flow > 0)
                    .Select(p =>
                    {
                        var pot = places[(p.Row, p.Pot)];
                        var use = layout.Resolved.UsePerPlant(pot.CropType!) * SecondsPerDay;
                        var given = (p.Flow * running) + (feed.Stop.LowRows.Contains(p.Row) ? runOff : 0);
                        return new PotDose(p.Row, p.Pot, pot.Plants, p.Flow, given, pot.Plants * use);
                    }),
            ],
            FillTime = fill,
            Running = running,
            Waterings = stops ? clock.Waterings : 1,
        };
    }

    private double FillTime()
    {
        var ranOut = feed.Stop.BackToTank + feed.Stop.ThroughEmitters;
        var flow = Math.Max(feed.TotalFlow, FillFlow());
        return flow > 0 ? ranOut / flow : 0;
    }

    /// <summary>[m³/s] What the pump gives while no emitter holds it back yet; 0 where a valve in the header does.</summary>
    /// <remarks>It lifts the water to the highest line, through the whole header and the whole longest line at once: the least it gives.</remarks>
    private double FillFlow()
    {
        var said = layout.Resolved.Rig.Feed;
        if (said.Throttle is not null || said.Bypass is not null)
        {
            return 0;
        }

        var lift = layout.Rows.SelectMany(r => r.Feed).SelectMany(r => r.Path).Max(p => p.Z) - layout.Tank.Lowest;
        var viscosity = WaterProperties.KinematicViscosity(layout.Resolved.Rig.Reservoir.WaterTemperature - 273.15);
        List<PipeLaw> laws =
        [
            .. layout
                .Supply.Where(l => l.Run.Service != RunService.Bypass)
                .Select(l => Law(l.Run.Pipe, l.Length, l.Loss)),
            Law(layout.Parts.Line, layout.Rows.SelectMany(r => r.Feed).Max(r => r.Length), 0),
        ];
        PipeLaw Law(PipeSize pipe, double length, double loss) =>
            new(new Pipe(length, pipe.InsideDiameter, pipe.Roughness, loss), viscosity);

        return feed
            .PumpCurve.Where(p => p.Head >= lift + laws.Sum(law => law.At(p.Flow).Head))
            .Select(p => p.Flow)
            .DefaultIfEmpty(0)
            .Max();
    }

    /// <summary>[m³] What a pot of a low row gets of the water that runs out of the lines after one watering.</summary>
    private double RunOffPerLowPot()
    {
        var pots = feed.Pots.Count(p => p.Flow > 0 && feed.Stop.LowRows.Contains(p.Row));
        return pots > 0 ? feed.Stop.ThroughEmitters / pots : 0;
    }
}
