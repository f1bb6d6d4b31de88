using Dripwright.Engine.Phrases;
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
            (var field, var value, var least, var most, var remedy) in new[]
            {
                (nameof(p.TubeOutside), p.TubeOutside, 0.010, 0.080, "tube"),
                (nameof(p.Clearance), p.Clearance, -0.0005, 0.0015, "clearance"),
                (nameof(p.PipeOutside), p.PipeOutside, 0.012, 0.170, "pipe"),
                (nameof(p.HangerReach), p.HangerReach ?? 0.05, 0.010, MostReach, "reach"),
                (nameof(p.HangerLow), p.HangerLow, 0, 0.150, "low"),
                (nameof(p.HoseOutside), p.HoseOutside, 0.006, 0.060, "hose"),
                (nameof(p.HolePitch), p.HolePitch, 0.040, 2.000, "pitch"),
                (nameof(p.PilotDrill), p.PilotDrill, 0.0015, 0.010, "drill"),
                (nameof(p.StakeDiameter), p.StakeDiameter, 0.002, 0.015, "stake"),
                (nameof(p.RimThickness), p.RimThickness, 0.0005, 0.010, "rim"),
                (nameof(p.RimRadius), p.RimRadius ?? 0.15, 0.030, 2.000, "radius"),
                ("Printer.Nozzle", p.Printer.Nozzle, 0.0002, 0.0010, "nozzle"),
                ("Printer.Layer", p.Printer.Layer, 0.00005, 0.8 * p.Printer.Nozzle, "layer"),
                ("Printer.BedWidth", p.Printer.BedWidth, 0.080, 1.000, "bed"),
                ("Printer.BedDepth", p.Printer.BedDepth, 0.080, 1.000, "bed"),
                ("Printer.Height", p.Printer.Height, 0.050, 1.000, "height"),
                ("Printer.Filament", p.Printer.Filament, 0.0015, 0.0035, "filament"),
            }
        )
        {
            // Also false for what is not a number.
            if (!(value >= least && value <= most))
            {
                yield return new(
                    field,
                    Phrase.Of(Measured.Millimetres(value)),
                    Phrase.Of("print.limit.range", Measured.Millimetres(least), Measured.Millimetres(most)),
                    Phrase.Of($"print.remedy.{remedy}")
                );
            }
        }

        if (p.SocketDepth is { } depth && !(depth >= 0.5 * p.TubeOutside && depth <= 4 * p.TubeOutside))
        {
            yield return new(
                nameof(p.SocketDepth),
                Phrase.Of(Measured.Millimetres(depth)),
                Phrase.Of("print.limit.depth"),
                Phrase.Of("print.remedy.depth")
            );
        }

        if (!(p.Load.Moment >= 0 && p.Load.Moment <= 1e4))
        {
            yield return new(
                "Load.Moment",
                Phrase.Of(Measured.NewtonMetres(p.Load.Moment)),
                Phrase.Of("print.limit.range", Measured.NewtonMetres(0), Measured.NewtonMetres(1e4)),
                Phrase.Of("print.remedy.moment")
            );
        }

        if (!(p.HangerLoad >= 0 && p.HangerLoad <= 1e4))
        {
            yield return new(
                nameof(p.HangerLoad),
                Phrase.Of(Measured.Newtons(p.HangerLoad)),
                Phrase.Of("print.limit.range", Measured.Newtons(0), Measured.Newtons(1e4)),
                Phrase.Of("print.remedy.hanger-load")
            );
        }

        if (!(p.Load.Temperature is >= 233 and <= 353))
        {
            yield return new(
                "Load.Temperature",
                Phrase.Of(Measured.Celsius(p.Load.Temperature)),
                Phrase.Of("print.limit.range", Measured.Celsius(233.15), Measured.Celsius(353.15)),
                Phrase.Of("print.remedy.temperature")
            );
        }

        if (!StrokeLetters.Know(p.Number))
        {
            yield return new(
                nameof(p.Number),
                Phrase.Plain($"\"{p.Number}\""),
                Phrase.Of("print.limit.letters"),
                Phrase.Of("print.remedy.letters")
            );
        }

        foreach (var fault in OfSockets(kind, p))
        {
            yield return fault;
        }
    }

    private static Phrase NameOf(PrintedKind kind) => Phrase.Of($"printed.{kind}");

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
                Phrase.Counted("print.found.directions", sockets.Count),
                Phrase.Of("print.limit.directions"),
                Phrase.Of("print.remedy.directions")
            );
        }
        else if (SocketPattern.LeastAngle(sockets) is var angle && angle < JointMaker.LeastAngle - 1e-6)
        {
            yield return new(
                field,
                Phrase.Of("print.found.angle", Measured.Degrees(angle)),
                Phrase.Of("print.limit.angle", Measured.Degrees(JointMaker.LeastAngle)),
                Phrase.Of("print.remedy.angle")
            );
        }
        else if (SocketPattern.KindOf(sockets) is var fits && fits != kind && kind != PrintedKind.Joint)
        {
            yield return new(
                field,
                Phrase.Of("print.found.kind", NameOf(fits)),
                Phrase.Of("print.limit.kind", NameOf(kind)),
                Phrase.Of("print.remedy.kind", NameOf(fits))
            );
        }
    }
}
