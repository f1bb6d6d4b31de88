using System.Globalization;
using Dripwright.Engine.Files;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Parts;

/// <summary>Counts reservoir, strainer, pump and what stands between the pump and the wall.</summary>
internal static class PowerParts
{
    /// <summary>[V] Above this a fault can kill. Extra-low voltage ends at 50 V alternating (IEC 61140, from memory).</summary>
    private const double DangerousVoltage = 50;

    /// <summary>Key of a tank: the catalogue's, or one made of its measures, so that unlike ones are told apart.</summary>
    public static string KeyOf(ResolvedTank tank) =>
        tank.IsOwn
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"own-tank-{FieldDescription.Dashed(tank.Shape.ToString())}-{1000 * tank.Length:0}x{1000 * tank.Width:0}x{1000 * tank.Height:0}mm"
            )
            : tank.Type.Key;

    /// <summary>Key of a pump: the catalogue's, or one made of its figures, so that unlike ones are told apart.</summary>
    public static string KeyOf(ResolvedPump pump) =>
        pump.IsOwn
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"own-pump-{1000 * pump.Curve[0].Head:0}mm-{3.6e6 * pump.Curve[^1].Flow:0}lph"
            )
            : pump.Model.Key;

    public static void Count(PartsTally tally, Rig rig, RigLayout layout)
    {
        ResolvedTank tank = layout.Parts.Tank;
        OwnPart? ownTank = tank.IsOwn ? new OwnPart(tank.NameIn(rig.Units), PartLines.Garden) : null;
        tally.Add(KeyOf(tank), 1, "reservoir", own: ownTank);
        if (rig.Drain.Into == DrainTarget.CatchTank)
        {
            tally.Add(
                KeyOf(tank),
                1,
                "catch tank under the drain",
                note: "the second one may be any tank that fits",
                own: ownTank
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

        OwnPart? ownPump = pump.IsOwn ? new OwnPart(pump.NameIn(rig.Units), PartLines.Electrical) : null;
        tally.Add(KeyOf(pump), 1, "in the reservoir", spares: rig.Spares.Pumps, own: ownPump);
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
