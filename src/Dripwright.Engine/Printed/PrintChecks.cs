using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Makers;

namespace Dripwright.Engine.Printed;

/// <summary>Finds what is wrong with the parameters of a fitting.</summary>
internal static class PrintChecks
{
    /// <summary>[m] Farther than this a drain hanger is not printed.</summary>
    public const double MostReach = 0.300;

    public static IEnumerable<PrintFault> Of(PrintedKind kind, PrintParameters p)
    {
        foreach (
            (string field, double value, double least, double most, string remedy) in new[]
            {
                (nameof(p.TubeOutside), p.TubeOutside, 0.010, 0.080, "measure across the tube with a caliper"),
                (nameof(p.Clearance), p.Clearance, -0.0005, 0.0015, "print the coupon and take the bore that fits"),
                (nameof(p.PipeOutside), p.PipeOutside, 0.012, 0.170, "measure across the pipe, not its bore"),
                (
                    nameof(p.HangerReach),
                    p.HangerReach ?? 0.05,
                    0.010,
                    MostReach,
                    "hang the pipe by perforated strap there"
                ),
                (nameof(p.HangerLow), p.HangerLow, 0, 0.150, "lay the drain lower (drain.belowPots)"),
                (nameof(p.HoseOutside), p.HoseOutside, 0.006, 0.060, "measure across the hose, not its bore"),
                (nameof(p.HolePitch), p.HolePitch, 0.040, 2.000, "give the distance from hole to hole"),
                (nameof(p.PilotDrill), p.PilotDrill, 0.0015, 0.010, "give the pilot drill, not the hole saw"),
                (nameof(p.StakeDiameter), p.StakeDiameter, 0.002, 0.015, "measure the stake's shaft"),
                (nameof(p.RimThickness), p.RimThickness, 0.0005, 0.010, "measure the pot's rim"),
                (nameof(p.RimRadius), p.RimRadius ?? 0.15, 0.030, 2.000, "measure across the pot and take half"),
                ("Printer.Nozzle", p.Printer.Nozzle, 0.0002, 0.0010, "read the number on the nozzle"),
                ("Printer.Layer", p.Printer.Layer, 0.00005, 0.8 * p.Printer.Nozzle, "take half the nozzle's bore"),
                ("Printer.BedWidth", p.Printer.BedWidth, 0.080, 1.000, "measure the bed"),
                ("Printer.BedDepth", p.Printer.BedDepth, 0.080, 1.000, "measure the bed"),
                ("Printer.Height", p.Printer.Height, 0.050, 1.000, "see the printer's papers"),
                ("Printer.Filament", p.Printer.Filament, 0.0015, 0.0035, "read the spool: 1.75 mm or 2.85 mm"),
            }
        )
        {
            // Also false for what is not a number.
            if (!(value >= least && value <= most))
            {
                yield return new(
                    field,
                    PrintWords.Millimetres(value),
                    $"{PrintWords.Millimetres(least)} to {PrintWords.Millimetres(most)}",
                    remedy
                );
            }
        }

        if (p.SocketDepth is { } depth && !(depth >= 0.5 * p.TubeOutside && depth <= 4 * p.TubeOutside))
        {
            yield return new(
                nameof(p.SocketDepth),
                PrintWords.Millimetres(depth),
                "half to four times the tube's size",
                "one and a half times is usual"
            );
        }

        if (!(p.Load.Moment >= 0 && p.Load.Moment <= 1e4))
        {
            yield return new(
                "Load.Moment",
                PrintWords.Number(p.Load.Moment),
                "0 to 10,000 N m",
                "see the stand's findings"
            );
        }

        if (!(p.HangerLoad >= 0 && p.HangerLoad <= 1e4))
        {
            yield return new(
                nameof(p.HangerLoad),
                $"{PrintWords.Number(p.HangerLoad)} N",
                "0 to 10,000 N",
                "give the weight of the pipe between two hangers, full of water"
            );
        }

        if (!(p.Load.Temperature is >= 233 and <= 353))
        {
            yield return new(
                "Load.Temperature",
                PrintWords.Celsius(p.Load.Temperature),
                "-40 °C to 80 °C",
                "give the part's temperature on the warmest day"
            );
        }

        if (!StrokeLetters.Know(p.Number))
        {
            yield return new(
                nameof(p.Number),
                $"\"{p.Number}\"",
                "capitals other than Q, digits, spaces and . - +",
                "leave out other characters"
            );
        }

        foreach (PrintFault fault in OfSockets(kind, p))
        {
            yield return fault;
        }
    }

    private static IEnumerable<PrintFault> OfSockets(PrintedKind kind, PrintParameters p)
    {
        if (p.Sockets is not { } sockets)
        {
            yield break;
        }

        const string field = nameof(PrintParameters.Sockets);
        if (sockets.Count is 0 or > 6 || sockets.Any(s => !(s.Length is > 1e-6 and < 1e6)))
        {
            yield return new(
                field,
                $"{PrintWords.Number(sockets.Count)} directions",
                "one to six, each with a length",
                "see the joint"
            );
        }
        else if (SocketPattern.LeastAngle(sockets) is var angle && angle < JointMaker.LeastAngle - 1e-6)
        {
            yield return new(
                field,
                $"two tubes {PrintWords.Degrees(angle)} apart",
                $"{PrintWords.Degrees(JointMaker.LeastAngle)} or more",
                "fix a flatter brace with a clip beside the joint"
            );
        }
        else if (SocketPattern.KindOf(sockets) is var fits && fits != kind && kind != PrintedKind.Joint)
        {
            yield return new(field, $"directions of a {fits}", $"those of a {kind}", $"ask for a {fits}");
        }
    }
}
