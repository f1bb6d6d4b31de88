using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>A straight sleeve with a narrow throat in the middle, at which both tubes stop.</summary>
internal static class CouplerMaker
{
    public static PrintDesign Make(PrintParameters parameters)
    {
        var form = SocketForm.For(parameters, flat: false);
        var rim = Math.Clamp(0.15 * form.Half, 0.001, 0.0025);
        var web = form.Wall;
        (var h, var d, var f) = (form.Half, form.Depth, SocketForm.Flare);
        var top = (2 * d) + rim + web;

        // One outline from below to above: under the throat the bore narrows in 45°, so that nothing hangs in the air.
        Loop Bore(double past) =>
            new([
                new(0, -past),
                new(h + f + past, -past),
                new(h, f),
                new(h, d),
                new(h - rim, d + rim),
                new(h - rim, d + rim + web),
                new(h, d + rim + web),
                new(h, top - f),
                new(h + f + past, top + past),
                new(0, top + past),
            ]);

        var outer = new Extrusion(form.Outline, top);
        var removed = new Lathe(Bore(0), form.Sides).Volume!.Value;
        Solid body = new Difference(outer, [new Lathe(Bore(SocketForm.Past), form.Sides)], removed);
        body = RaisedText.On(
            body,
            parameters.Number,
            // Upwards along a flat, read from the right.
            new(Vector3.Up, new(0, -1, 0), new(1, 0, 0), new(form.Outer, 0, top / 2)),
            top - 0.002,
            form.Flat - 0.001,
            parameters.Printer
        );
        return new()
        {
            Kind = PrintedKind.Coupler,
            Parameters = parameters,
            Shape = body,
            InUse = PrintPose.Stood((parameters.Sockets ?? SocketPattern.Usual(PrintedKind.Coupler))[0], top / 2),
            Sockets = [new(new(0, 0, d), -Vector3.Up, d, h), new(new(0, 0, d + rim + web), Vector3.Up, d, h)],
            Wall = form.Wall,
            Strength = form.Strength,
            Orientation = Phrase.Of("print.lay.coupler"),
        };
    }
}
