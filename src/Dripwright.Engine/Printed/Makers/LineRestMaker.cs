using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>A hook over the pot's rim with a seat on top for the line that crosses it, held by a cable tie.</summary>
internal static class LineRestMaker
{
    private const double Grip = 0.018;
    private const double Past = SocketForm.Past;

    /// <summary>[m] Along the line.</summary>
    public static double Along(PrintParameters parameters) =>
        Math.Max((2 * Wall(parameters)) + Slot(parameters), BlockMaker.TieWidth + (2 * Wall(parameters)));

    public static PrintDesign Make(PrintParameters parameters)
    {
        var wall = Wall(parameters);
        var slot = Slot(parameters);
        var hose = parameters.HoseOutside / 2;
        var bed = Bed(parameters);
        var wide = Wide(parameters);
        var along = Along(parameters);
        var hook = (2 * wall) + slot;
        var middle = hook / 2;
        var over = Math.Max(0, (along - hook) / 2);
        (var left, var right) = (-over, hook + over);
        var tieAt = Grip + wall;
        var top = tieAt + BlockMaker.TieThick + wall + bed;

        // The hook lies on its side: legs, slot for the rim open at the bottom, block with the seat at the top.
        Corner[] outline =
        [
            new(0, 0),
            new(wall, 0),
            new(wall, Grip),
            new(wall + slot, Grip),
            new(wall + slot, 0),
            new(hook, 0),
            new(hook, Grip),
            new(right, Grip),
            new(right, top),
            new(left, top),
            new(left, Grip),
            new(0, Grip),
        ];
        Loop seat(double past) => Outlines.Groove(round: true, hose, bed, past, lying: true);
        var groove = new Extrusion(seat(Past), along + (2 * Past)).Placed(
            new(new(0, -1, 0), Vector3.Up, new(-1, 0, 0), new(right + Past, top, wide / 2))
        );
        var tie = BlockMaker.Box(
            middle - (BlockMaker.TieWidth / 2),
            tieAt,
            -Past,
            BlockMaker.TieWidth,
            BlockMaker.TieThick,
            wide + (2 * Past)
        );
        var removed = (seat(0).Area * along) + (BlockMaker.TieWidth * BlockMaker.TieThick * wide);
        Solid body = new Difference(
            new Extrusion(
                new Loop([.. outline.Where((corner, i) => corner != outline[(i + 1) % outline.Length])]),
                wide
            ),
            [groove, tie],
            removed
        );
        // On the outer leg, upright when it hangs on the rim.
        var face = new Placement(Vector3.Up, new(0, 1, 0), new(-1, 0, 0), new(0, Grip / 2, wide / 2));
        body = RaisedText.On(body, parameters.Number, face, wide - 0.002, Grip - 0.002, parameters.Printer);
        return new()
        {
            Kind = PrintedKind.LineRest,
            Parameters = parameters,
            Shape = body,
            InUse = new(new(1, 0, 0), Vector3.Up, new(0, -1, 0), default),
            Wall = wall,
            Orientation = Phrase.Of("print.lay.line-rest"),
            Cautions = [Phrase.Of("print.caution.line-rest")],
        };
    }

    private static double Wall(PrintParameters parameters) => Math.Max(0.0024, 6 * parameters.Printer.Nozzle);

    private static double Bed(PrintParameters parameters) => 0.4 * parameters.HoseOutside / 2;

    // The lying seat's roof rises in 45°; the block must reach over it.
    private static double Wide(PrintParameters parameters) =>
        parameters.HoseOutside + (2 * Bed(parameters)) + (2 * Wall(parameters));

    /// <summary>[m] Room for the rim: its thickness, the gap on each side, and what a round rim bends away within the hook.</summary>
    private static double Slot(PrintParameters parameters)
    {
        var wide = Wide(parameters);
        var bend = parameters.RimRadius is { } radius ? wide * wide / (8 * radius) : 0;
        return parameters.RimThickness + (2 * Math.Max(0, parameters.Clearance)) + bend;
    }
}
