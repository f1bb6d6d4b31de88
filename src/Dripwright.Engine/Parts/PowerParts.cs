using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Parts;

/// <summary>Counts reservoir, strainer, pump and what stands between the pump and the wall.</summary>
internal static class PowerParts
{
    /// <summary>[V] Above this a fault can kill. Extra-low voltage ends at 50 V alternating (IEC 61140, from memory).</summary>
    private const double DangerousVoltage = 50;

    public static void Count(PartsTally tally, Rig rig, RigLayout layout)
    {
        tally.Add(rig.Reservoir.Tank, 1, "reservoir");
        if (rig.Drain.Into == DrainTarget.CatchTank)
        {
            tally.Add(
                rig.Reservoir.Tank,
                1,
                "catch tank under the drain",
                note: "the second one may be any tank that fits"
            );
        }

        if (layout.Parts.Strainer is { } strainer)
        {
            tally.Add(strainer.Key, 1, strainer.Loss > 0 ? "in the header after the pump" : "round the pump");
        }

        if (layout.Parts.Pump is not { } pump)
        {
            return;
        }

        tally.Add(rig.Pump.Model, 1, "in the reservoir", spares: rig.Spares.Pumps);
        if (rig.Timer.Mode == TimerMode.Cycle)
        {
            tally.Add("timer-outlet", 1, "switches the pump", spares: rig.Spares.Timers);
        }

        if (rig.Site.Voltage > DangerousVoltage)
        {
            tally.Add("gfci-adapter", 1, "between wall outlet and pump, unless the outlet has one");
        }

        double missing = PumpCord.Needed(rig, layout, pump) - pump.Cord;
        if (missing > 0)
        {
            string length = QuantityText.Format(Dimension.Length, missing, rig.Units);
            tally.Add(
                "extension-cord",
                1,
                "from the pump's cord to the wall outlet",
                note: $"{length} or more; only where no outlet can be set nearer: the outdoor kind, in one piece, its plug hung dry"
            );
        }
    }
}
