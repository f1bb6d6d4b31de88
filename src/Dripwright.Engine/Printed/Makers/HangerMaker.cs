using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;
using static Dripwright.Engine.Printed.Makers.BlockMaker;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>An open ring for the drain pipe on a foot that two cable ties hold to a tube.</summary>
/// <remarks>
/// One outline drawn out along the pipe and printed with the pipe upright, so that ring and neck bend along their layers.
/// In the outline the tube lies below y = 0 and the pipe above; the ring opens towards +x: upwards on a leg, to the side
/// under a tube.
/// </remarks>
internal static class HangerMaker
{
    /// <summary>[m] Half the width of the neck between foot and ring.</summary>
    private const double HalfNeck = 0.008;

    /// <summary>[m] Least length along the pipe, where the tube runs along it.</summary>
    private const double LeastAlong = 0.030;

    private const double Past = SocketForm.Past;

    /// <summary>[rad] Half the opening of the ring; the pipe snaps past its lips.</summary>
    private const double HalfMouth = Math.PI / 3;

    public static PrintDesign Make(PrintParameters parameters)
    {
        var form = SocketForm.Bare(parameters);
        var along = parameters.HangerMount == HangerMount.Rail;
        var bed = 0.35 * form.Half;
        var rise = form.Half - bed;
        var web = bed + TieThick + (2 * form.Wall);
        var pipe = (parameters.PipeOutside / 2) + Math.Max(0, parameters.Clearance);
        var high = along ? LeastAlong : (2 * form.Half) + (2 * bed) + (2 * form.Wall);
        (var wall, var strength) = Ring(parameters, pipe, high);
        var outer = pipe + wall;
        var axis = Axis(parameters, rise, web, outer);

        // Two slots at the ends of the foot, room for the number between them.
        var half = form.Wall + TieWidth + Math.Max(0.0085, 21 * parameters.Printer.Nozzle);
        if (along)
        {
            // The groove runs the other way then, with a wall on both its sides.
            var groove = Outlines.Groove(form.Round, form.Half, bed, 0, lying: false);
            half = Math.Max(half, groove.Corners.Max(corner => Math.Abs(corner.Y)) + form.Wall);
        }

        var low = parameters.HangerMount == HangerMount.Leg ? parameters.HangerLow : 0;
        (var left, var right) = (-low - half, half - low);
        Solid body = new Extrusion(Outline(pipe, outer, axis, web, left, right, low > 0), high);
        (var cuts, var removed) = along
            ? Lengthwise(form, bed, high, left, right)
            : Crosswise(form, bed, high, left, right);
        body = new Difference(body, cuts, removed);
        var room = along ? 2 * (half - 0.001) : (2 * (half - form.Wall - TieWidth)) - 0.002;
        var face = Placement.Shifted(new(-low, along ? (bed + web) / 2 : web / 2, high));
        var tall = along ? web - bed - 0.001 : web - 0.002;
        body = RaisedText.On(body, parameters.Number, face, room, tall, parameters.Printer);
        return new()
        {
            Kind = PrintedKind.DrainHanger,
            Parameters = parameters,
            Shape = body,
            InUse = InUse(parameters.HangerMount).After(Placement.Shifted(new(low, rise, -high / 2))),
            Wall = wall,
            Hanger = strength,
            LongestBridge = TieThick,
            Orientation = Phrase.Of("print.lay.hanger"),
            Cautions = Cautions(parameters.HangerMount),
        };
    }

    private static IReadOnlyList<Phrase> Cautions(HangerMount mount) =>
        mount == HangerMount.Leg
            ? [Phrase.Of("print.caution.hanger.leg"), Phrase.Of("print.caution.hanger.screw")]
            : [Phrase.Of("print.caution.hanger.over")];

    // On a leg the ring opens upwards and the pipe lies to the front; under a tube it opens to the front.
    private static Placement InUse(HangerMount mount) =>
        mount == HangerMount.Leg
            ? new Placement(Vector3.Up, new(0, -1, 0), new(1, 0, 0), default)
            : new Placement(new(0, -1, 0), new(0, 0, -1), new(1, 0, 0), default);

    /// <summary>[m] From the foot's face to the pipe's axis.</summary>
    /// <exception cref="PrintException">The pipe lies too near to the tube.</exception>
    private static double Axis(PrintParameters parameters, double rise, double web, double outer)
    {
        var least = web + outer;
        if (parameters.HangerReach is not { } reach)
        {
            return least;
        }

        if (reach - rise >= least - 1e-9)
        {
            return Math.Max(reach - rise, least);
        }

        throw new PrintException(
            new(
                nameof(PrintParameters.HangerReach),
                Phrase.Of("print.found.reach", Measured.Millimetres(reach)),
                Phrase.Of("print.limit.reach", Measured.Millimetres(least + rise)),
                parameters.HangerMount == HangerMount.Leg
                    ? Phrase.Of("print.remedy.reach.leg")
                    : Phrase.Of("print.remedy.reach.over")
            )
        );
    }

    /// <summary>The thinnest ring that carries the load.</summary>
    private static (double Wall, HangerStrength Strength) Ring(PrintParameters parameters, double pipe, double high)
    {
        var nozzle = parameters.Printer.Nozzle;
        var least = (int)Math.Ceiling((0.0024 / nozzle) - 1e-9);
        for (var lines = least; lines <= SocketForm.MostLines; lines++)
        {
            var strength = HangerStrength.Of(parameters, pipe, lines * nozzle, high);
            if (strength.Carries >= parameters.HangerLoad)
            {
                return (lines * nozzle, strength);
            }
        }

        var warm = parameters.Load.Temperature > parameters.Plastic.WarmestInUse;
        throw new PrintException(
            new(
                nameof(PrintParameters.HangerLoad),
                Phrase.Of(
                    "print.found.load",
                    Measured.Newtons(parameters.HangerLoad),
                    Measured.Celsius(parameters.Load.Temperature),
                    parameters.Plastic.Name
                ),
                warm
                    ? Phrase.Of(
                        "print.limit.heat",
                        Measured.Celsius(parameters.Plastic.WarmestInUse),
                        parameters.Plastic.Name
                    )
                    : Phrase.Of("print.limit.lines", SocketForm.MostLines),
                warm ? Phrase.Of("print.remedy.heat") : Phrase.Of("print.remedy.frames")
            )
        );
    }

    /// <summary>Foot, neck and ring, counter-clockwise.</summary>
    private static Loop Outline(
        double pipe,
        double outer,
        double axis,
        double web,
        double left,
        double right,
        bool strut
    )
    {
        var neckRight = Math.Min(HalfNeck, 0.98 * outer * Math.Cos(HalfMouth));
        var neckLeft = strut ? left : -Math.Min(HalfNeck, 0.9 * outer);
        List<Corner> corners = [new(left, 0), new(right, 0), new(right, web)];
        if (Math.Abs(neckRight - right) > 1e-6)
        {
            corners.Add(new(neckRight, web));
        }

        // Outside from the neck to one lip, inside from lip to lip, outside back to the neck.
        var end = neckLeft <= -outer ? -Math.PI : -Math.Acos(neckLeft / outer);
        var turn = Outlines.Facets;
        corners.AddRange(Arc(outer, -Math.Acos(neckRight / outer), -HalfMouth, turn / 8, axis));
        // Facets touch the pipe's bore from outside.
        var steps = turn * 5 / 6;
        var corner = pipe / Math.Cos((Math.PI - HalfMouth) / steps);
        corners.AddRange(Arc(corner, -HalfMouth, HalfMouth - (2 * Math.PI), steps, axis));
        corners.AddRange(Arc(outer, HalfMouth, (2 * Math.PI) + end, turn / 2, axis));
        if (Math.Abs(neckLeft - corners[^1].X) > 1e-6 || !strut)
        {
            corners.Add(new(neckLeft, web));
        }

        if (!strut)
        {
            corners.Add(new(left, web));
        }

        return new(corners);
    }

    /// <summary>Groove for a tube along the pipe, held by ties around it near both ends.</summary>
    private static (List<Solid> Cuts, double Removed) Lengthwise(
        SocketForm form,
        double bed,
        double high,
        double left,
        double right
    )
    {
        Loop Groove(double past) => Outlines.Groove(form.Round, form.Half, bed, past, lying: false);
        var tube = new Extrusion(Groove(Past), high + (2 * Past)).Placed(
            new(new(0, 1, 0), new(-1, 0, 0), Vector3.Up, new(0, 0, -Past))
        );
        var y = bed + form.Wall;
        Solid Slot(double z) => Box(left - Past, y, z, right - left + (2 * Past), TieThick, TieWidth);
        var removed = (Groove(0).Area * high) + (2 * TieWidth * TieThick * (right - left));
        return ([tube, Slot(form.Wall), Slot(high - form.Wall - TieWidth)], removed);
    }

    /// <summary>Groove for a tube across the pipe; its roof rises in 45° as it is printed.</summary>
    private static (List<Solid> Cuts, double Removed) Crosswise(
        SocketForm form,
        double bed,
        double high,
        double left,
        double right
    )
    {
        Loop Groove(double past) => Outlines.Groove(form.Round, form.Half, bed, past, lying: true);
        var tube = new Extrusion(Groove(Past), right - left + (2 * Past)).Placed(
            new(new(0, 1, 0), Vector3.Up, new(1, 0, 0), new(left - Past, 0, high / 2))
        );
        var y = bed + form.Wall;
        Solid Slot(double x) => Box(x, y, -Past, TieWidth, TieThick, high + (2 * Past));
        var removed = (Groove(0).Area * (right - left)) + (2 * TieWidth * TieThick * high);
        return ([tube, Slot(left + form.Wall), Slot(right - form.Wall - TieWidth)], removed);
    }

    private static IEnumerable<Corner> Arc(double radius, double from, double to, int steps, double axis) =>
        Enumerable
            .Range(0, steps + 1)
            .Select(i => from + ((to - from) * i / steps))
            .Select(a => new Corner(radius * Math.Cos(a), axis + (radius * Math.Sin(a))));
}
