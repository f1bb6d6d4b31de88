using System.Globalization;
using Dripwright.Engine.Files;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

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
        var tank = layout.Parts.Tank;
        var ownTank = tank.IsOwn ? new OwnPart(tank.Name, PartLines.Garden) : null;
        tally.Add(KeyOf(tank), 1, Phrase.Of("part.where.reservoir"), own: ownTank);
        if (rig.Drain.Into == DrainTarget.CatchTank)
        {
            tally.Add(
                KeyOf(tank),
                1,
                Phrase.Of("part.where.catch-tank"),
                note: Phrase.Of("part.note.catch-tank"),
                own: ownTank
            );
        }

        if (layout.Parts.Strainer is { } strainer)
        {
            tally.Add(
                strainer.Key,
                1,
                strainer.Loss > 0 ? Phrase.Of("part.where.strainer.header") : Phrase.Of("part.where.strainer.pump")
            );
        }

        if (layout.Parts.Pump is not { } pump)
        {
            if (rig.Timer.Mode == TimerMode.Cycle)
            {
                tally.Add("timer-valve", 1, Phrase.Of("part.where.timer-valve"), spares: rig.Spares.Timers);
            }

            return;
        }

        var ownPump = pump.IsOwn ? new OwnPart(pump.Name, PartLines.Electrical) : null;
        tally.Add(KeyOf(pump), 1, Phrase.Of("part.where.pump"), spares: rig.Spares.Pumps, own: ownPump);
        if (rig.Timer.Mode == TimerMode.Cycle)
        {
            tally.Add("timer-outlet", 1, Phrase.Of("part.where.timer"), spares: rig.Spares.Timers);
        }

        if (rig.Pump.FloatSwitch)
        {
            tally.Add("float-switch", 1, Phrase.Of("part.where.float-switch"));
        }

        if (rig.Site.Voltage > DangerousVoltage)
        {
            tally.Add("gfci-adapter", 1, Phrase.Of("part.where.gfci"));
        }

        var missing = PumpCord.Needed(rig, layout, pump) - pump.Cord;
        if (missing > 0)
        {
            tally.Add(
                "extension-cord",
                1,
                Phrase.Of("part.where.cord"),
                note: Phrase.Of("part.note.cord", Measured.Length(missing))
            );
        }
    }
}
