using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>A hook over the pot's rim with an eye for the emitter's stake on the inside.</summary>
internal static class StakeHolderMaker
{
    private const double Grip = 0.018;
    private const double EyeHeight = 0.016;

    public static PrintDesign Make(PrintParameters parameters)
    {
        var wall = Math.Max(0.0024, 6 * parameters.Printer.Nozzle);
        var rim = parameters.RimThickness + (2 * Math.Max(0, parameters.Clearance));
        var stake = (parameters.StakeDiameter / 2) + Math.Max(0, parameters.Clearance);
        var lift = parameters.Printer.Layer;
        var wide = Math.Max(2 * ((Math.Sqrt(2) * stake) + wall), 0.012);
        var eye = 2 * (stake + wall);
        var inner = wall + rim;
        var right = inner + eye;
        var top = Grip + wall;

        // Hook lying on its side: outer leg, slot for the rim open at the bottom, inner block with the eye.
        var outline = new Loop([
            new(0, 0),
            new(wall, 0),
            new(wall, Grip),
            new(inner, Grip),
            new(inner, top - EyeHeight),
            new(right, top - EyeHeight),
            new(right, top),
            new(0, top),
        ]);
        var bore = Outlines.LyingBore(stake, lift);
        var cut = new Extrusion(bore, EyeHeight + (2 * SocketForm.Past)).Placed(
            new(
                new(-1, 0, 0),
                Vector3.Up,
                new(0, 1, 0),
                new(inner + (eye / 2), top - EyeHeight - SocketForm.Past, wide / 2)
            )
        );
        Solid body = new Difference(new Extrusion(outline, wide), [cut], bore.Area * EyeHeight);
        var face = new Placement(
            new(0, 1, 0),
            new(-1, 0, 0),
            Vector3.Up,
            new(inner + (eye / 2), top - (EyeHeight / 2), wide)
        );
        body = RaisedText.On(body, parameters.Number, face, EyeHeight - 0.001, eye - 0.001, parameters.Printer);
        return new()
        {
            Kind = PrintedKind.StakeHolder,
            Parameters = parameters,
            Shape = body,
            InUse = new(new(1, 0, 0), Vector3.Up, new(0, -1, 0), default),
            Wall = wall,
            LongestBridge = Outlines.Bridge(stake, lift),
            Orientation = Phrase.Of("print.lay.stake"),
        };
    }
}
