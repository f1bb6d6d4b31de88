using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>Two springy arms around a tube, two around a hose that runs beside it.</summary>
internal static class HoseClipMaker
{
    private const double Height = 0.012;

    /// <summary>[m] Between tube and hose, where the number stands.</summary>
    private const double Bar = 0.008;

    private static readonly double s_halfMouth = Math.PI / 3;

    public static PrintDesign Make(PrintParameters parameters)
    {
        var form = SocketForm.Bare(parameters);
        var wall = Math.Max(0.0024, 6 * parameters.Printer.Nozzle);
        var tube = form.Half;
        var hose = (parameters.HoseOutside / 2) + Math.Max(0, parameters.Clearance);
        var hoseAt = tube + Bar + hose;
        var bar = Math.Max(0.6 * Math.Min(tube, hose), 0.004);

        var around = form.Round ? Arms(tube, wall, 0, -1) : Trough(tube, wall, parameters.Printer.Nozzle);
        Solid body = new Union([
            new Extrusion(around, Height),
            new Extrusion(Loop.Rectangle(-bar, tube, bar, tube + Bar), Height),
            new Extrusion(Arms(hose, wall, hoseAt, 1), Height),
        ]);
        var face = Placement.Shifted(new(0, tube + (Bar / 2), Height));
        body = RaisedText.On(body, parameters.Number, face, 2 * bar, Bar - 0.001, parameters.Printer);
        return new()
        {
            Kind = PrintedKind.HoseClip,
            Parameters = parameters,
            Shape = body,
            Wall = wall,
            Orientation = Phrase.Of("print.lay.hose-clip"),
            Cautions = [Phrase.Of("print.caution.hose-clip")],
        };
    }

    /// <summary>A ring that is open for a third of its round, towards +y or -y.</summary>
    private static Loop Arms(double inside, double wall, double axis, int way)
    {
        const int steps = Outlines.Facets;
        var middle = way * Math.PI / 2;
        // Facets touch the bore from outside.
        var half = Math.PI - s_halfMouth;
        var corner = inside / Math.Cos(half / steps);
        Corner At(double radius, double angle) => new(radius * Math.Cos(angle), axis + (radius * Math.Sin(angle)));
        var angles = Enumerable.Range(0, steps + 1).Select(i => middle + s_halfMouth + (2 * half * i / steps));
        return new([
            .. angles.Select(angle => At(inside + wall, angle)),
            .. angles.Reverse().Select(angle => At(corner, angle)),
        ]);
    }

    /// <summary>Around a square tube: a trough whose lips snap behind the lower corners.</summary>
    private static Loop Trough(double inside, double wall, double nozzle)
    {
        var outside = inside + wall;
        var neck = inside - Math.Max(0.0008, 2 * nozzle);
        var funnel = Math.Min(inside, neck + wall);
        return new([
            new(-outside, -outside),
            new(-funnel, -outside),
            new(-neck, -inside),
            new(-inside, -inside),
            new(-inside, inside),
            new(inside, inside),
            new(inside, -inside),
            new(neck, -inside),
            new(funnel, -outside),
            new(outside, -outside),
            new(outside, outside),
            new(-outside, outside),
        ]);
    }
}
