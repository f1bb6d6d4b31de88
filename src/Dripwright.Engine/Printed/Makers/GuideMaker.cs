using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>Sets the pitch of holes: lies on the pipe with a pin in the last hole and guides the drill for the next.</summary>
internal static class GuideMaker
{
    private const double Bush = 0.006;
    private const double End = 0.012;
    private const double Edge = 0.0016;

    /// <summary>[m] Room of the drill in its bush, on the diameter.</summary>
    private const double DrillRoom = 0.0003;

    public static PrintDesign Make(PrintParameters parameters)
    {
        var bar = Bar(parameters);
        return bar.Bed.Fits ? bar : Blocks(parameters);
    }

    /// <summary>One bar with two holes.</summary>
    private static PrintDesign Bar(PrintParameters parameters)
    {
        var pitch = parameters.HolePitch;
        var along = pitch + (2 * End);
        (var profile, var half) = Profile(parameters, Bush);
        var hole = Hole(parameters);
        Solid body = new Difference(
            Lying(profile, along).Shifted(-along / 2, 0, 0),
            [Drill(hole, Bush).Shifted(-pitch / 2, 0, 0), Drill(hole, Bush).Shifted(pitch / 2, 0, 0)],
            2 * hole.Area * Bush
        );
        var high = profile.Corners.Max(c => c.Y);
        var text = $"{parameters.Number} {PrintWords.Number(pitch * 1000)}".Trim();
        body = RaisedText.On(body, text, Front(half, high / 2), along - 0.004, high - 0.002, parameters.Printer);
        return Of(parameters, body, 1, Phrase.Of("print.lay.guide"), []);
    }

    /// <summary>Where the bar is too long for the bed: a block for each end of a spare stand tube.</summary>
    private static PrintDesign Blocks(PrintParameters parameters)
    {
        var form = SocketForm.Bare(parameters);
        var depth = 0.030;
        var floor = (2 * End) + form.Wall;
        var along = floor + depth;
        var high = 2 * form.Outer;
        (var profile, var least) = Profile(parameters, high, form.Outer);
        var hole = Hole(parameters);
        (var bore, var bored) = form.LyingBore(depth);
        var x = new Vector3(1, 0, 0);
        Solid body = new Difference(
            Lying(profile, along),
            [
                Drill(hole, high).Shifted(End, 0, 0),
                bore.Placed(Placement.Along(x, Vector3.Up.Cross(x), new(floor, 0, form.Outer))),
            ],
            (hole.Area * high) + bored
        );
        body = RaisedText.On(
            body,
            parameters.Number,
            Front(least, high / 2) with
            {
                Origin = new(along / 2, -least, high / 2),
            },
            along - 0.004,
            high - 0.002,
            parameters.Printer
        );
        var tube = parameters.HolePitch - (2 * (floor - End));
        return Of(
            parameters,
            body,
            2,
            Phrase.Of("print.lay.guide.block"),
            [Phrase.Of("print.caution.guide.block", Measured.Millimetres(tube))]
        ) with
        {
            Sockets = [new(new(floor, 0, form.Outer), x, depth, form.Half)],
            LongestBridge = form.Bridge,
        };
    }

    private static PrintDesign Of(PrintParameters p, Solid body, int pieces, Phrase orientation, Phrase[] cautions) =>
        new()
        {
            Kind = PrintedKind.DrillGuide,
            Parameters = p,
            Shape = body,
            Wall = Edge,
            Pieces = pieces,
            Orientation = orientation,
            Cautions = [Phrase.Of("print.caution.guide"), .. cautions],
        };

    /// <summary>A bar with a groove on top, whose edges straddle the pipe.</summary>
    private static (Loop Profile, double Half) Profile(PrintParameters parameters, double bush, double least = 0)
    {
        var flat = (parameters.PilotDrill / 2) + Edge;
        var half = Math.Max(Math.Max(Math.Min(0.013, 0.6 * parameters.PipeOutside / 2), flat + Edge + 0.002), least);
        var deep = Math.Min(half - Edge - flat, 0.008);
        var inner = flat + deep;
        var top = bush + deep;
        return (
            new([
                new(-half, 0),
                new(half, 0),
                new(half, top),
                new(inner, top),
                new(flat, bush),
                new(-flat, bush),
                new(-inner, top),
                new(-half, top),
            ]),
            half
        );
    }

    private static Loop Hole(PrintParameters parameters) => Loop.Around(32, (parameters.PilotDrill + DrillRoom) / 2);

    private static Solid Drill(Loop hole, double bush) =>
        new Extrusion(hole, bush + (2 * SocketForm.Past)).Shifted(0, 0, -SocketForm.Past);

    private static Solid Lying(Loop profile, double along) =>
        new Extrusion(profile, along).Placed(new(new(0, 1, 0), Vector3.Up, new(1, 0, 0), default));

    private static Placement Front(double half, double middle) =>
        new(new(1, 0, 0), Vector3.Up, new(0, -1, 0), new(0, -half, middle));
}
