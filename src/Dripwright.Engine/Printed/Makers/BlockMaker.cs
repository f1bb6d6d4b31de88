using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>Blocks with grooves, held by cable ties or screws: tube clip, clamp block.</summary>
internal static class BlockMaker
{
    /// <summary>[m] Slot for a cable tie of 5 mm.</summary>
    public const double TieWidth = 0.006;
    public const double TieThick = 0.0025;
    private const double Screw = 0.0045;
    private const double Past = SocketForm.Past;

    /// <summary>Two grooves on opposite faces, square to each other: one along z, one along x.</summary>
    public static PrintDesign TubeClip(PrintParameters parameters)
    {
        var form = SocketForm.Bare(parameters);
        var bed = 0.4 * form.Half;
        var wide = 2 * (form.Half + form.Wall);
        // The lying groove's roof rises in 45°; the block must reach over it.
        var high = (2 * form.Half) + (2 * bed) + (2 * form.Wall);
        var slots = (2 * TieThick) + (3 * form.Wall);
        var deep = (2 * bed) + slots;

        // In the plane of the lying groove: x is depth into the block from its front, y is up.
        Loop Groove(double past, bool lies) => Outlines.Groove(form.Round, form.Half, bed, past, lies);
        var middle = high / 2;
        var front = new Extrusion(Groove(Past, true), wide + (2 * Past)).Placed(
            new(new(0, 1, 0), Vector3.Up, new(1, 0, 0), new(-(wide / 2) - Past, 0, middle))
        );
        var back = new Extrusion(Groove(Past, false), high + (2 * Past)).Placed(
            new(new(0, -1, 0), new(1, 0, 0), Vector3.Up, new(0, deep, -Past))
        );
        var y1 = bed + form.Wall;
        var y2 = y1 + TieThick + form.Wall;
        // A tie around the front tube runs upright, one around the back tube lies.
        var upright = new Extrusion(
            Loop.Rectangle(-TieWidth / 2, y1, TieWidth / 2, y1 + TieThick),
            high + (2 * Past)
        ).Shifted(0, 0, -Past);
        var lying = Box(-(wide / 2) - Past, y2, middle - (TieWidth / 2), wide + (2 * Past), TieThick, TieWidth);
        var removed =
            (Groove(0, true).Area * wide) + (Groove(0, false).Area * high) + (TieWidth * TieThick * (high + wide));
        Solid body = new Difference(Box(-wide / 2, 0, 0, wide, deep, high), [front, back, upright, lying], removed);
        var room = (wide / 2) - (TieWidth / 2) - 0.001;
        // On top, beside the slot, reading from front to back.
        var face = new Placement(
            new(0, 1, 0),
            new(-1, 0, 0),
            Vector3.Up,
            new(-(TieWidth / 2) - (room / 2), y1 + ((deep - y1 - bed) / 2), high)
        );
        body = RaisedText.On(body, parameters.Number, face, deep - y1 - bed - 0.001, room, parameters.Printer);
        return new()
        {
            Kind = PrintedKind.TubeClip,
            Parameters = parameters,
            Shape = body,
            Wall = form.Wall,
            LongestBridge = TieThick,
            Orientation = Phrase.Of("print.lay.tube-clip"),
            Cautions = [Phrase.Of("print.caution.tube-clip")],
        };
    }

    /// <summary>Half of a clamp: two of them around a hose, two screws.</summary>
    public static PrintDesign ClampBlock(PrintParameters parameters)
    {
        var wall = Math.Max(0.0024, 6 * parameters.Printer.Nozzle);
        var hose = parameters.HoseOutside / 2;
        // Closed, the two halves pinch the hose by a sixteenth of its width.
        var depth = 0.9375 * hose;
        var high = depth + Math.Max(0.006, 2 * wall);
        var screwAt = hose + wall + (Screw / 2);
        var half = screwAt + (Screw / 2) + wall;
        var along = Math.Max(0.020, 1.25 * hose);
        Loop Channel(double past) => Outlines.Groove(round: true, hose, depth, past, lying: false);
        // The groove's depth, its outline's +x, points down.
        var channel = new Extrusion(Channel(Past), along + (2 * Past)).Placed(
            new(new(0, 0, -1), new(0, 1, 0), new(1, 0, 0), new(-(along / 2) - Past, 0, high))
        );
        var hole = Loop.Around(32, Screw / 2);
        var left = new Extrusion(hole, high + (2 * Past)).Shifted(0, -screwAt, -Past);
        var right = new Extrusion(hole, high + (2 * Past)).Shifted(0, screwAt, -Past);
        var removed = (Channel(0).Area * along) + (2 * hole.Area * high);
        Solid body = new Difference(Box(-along / 2, -half, 0, along, 2 * half, high), [channel, left, right], removed);
        var face = new Placement(new(1, 0, 0), Vector3.Up, new(0, -1, 0), new(0, -half, high / 2));
        body = RaisedText.On(body, parameters.Number, face, along - 0.002, high - 0.002, parameters.Printer);
        return new()
        {
            Kind = PrintedKind.ClampBlock,
            Parameters = parameters,
            Shape = body,
            Wall = wall,
            Pieces = 2,
            Orientation = Phrase.Of("print.lay.clamp-block"),
            Cautions = [Phrase.Of("print.caution.clamp-block")],
        };
    }

    /// <summary>A box from its least corner.</summary>
    public static Solid Box(double x, double y, double z, double wide, double deep, double high) =>
        new Extrusion(Loop.Rectangle(x, y, x + wide, y + deep), high).Shifted(0, 0, z);
}
