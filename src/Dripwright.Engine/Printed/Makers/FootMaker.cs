using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>A wide foot under a leg, with a hole through which water leaves the socket.</summary>
internal static class FootMaker
{
    private const double Floor = StandLayout.FootFloor;
    private const double BasePlate = 0.004;
    private const double DrainHole = 0.005;
    private const double Groove = 0.002;
    private const double Spread = 1.5;

    public static PrintDesign Make(PrintParameters parameters)
    {
        var form = SocketForm.For(parameters, flat: false);
        var wide = Spread * form.Outer;
        var top = Floor + form.Depth;
        var sides = form.Round ? 8 : 4;
        // A sole, a slope of 45° and the socket; the slope ends below the mouth so that letters have their place.
        var shoulder = BasePlate + wide - form.Outer;
        var outer = new Lathe(
            new([
                new(0, 0),
                new(wide, 0),
                new(wide, BasePlate),
                new(form.Outer, shoulder),
                new(form.Outer, top),
                new(0, top),
            ]),
            sides
        );

        (var bore, var removed) = form.UprightBore(form.Depth);
        var hole = Loop.Around(24, DrainHole / 2);
        removed += hole.Area * (Floor - Groove);
        removed += 2 * wide * DrainHole * Groove;
        var drain = new Extrusion(hole, Floor + 0.001);
        var groove = new Extrusion(
            Loop.Rectangle(-wide - SocketForm.Past, -DrainHole / 2, wide + SocketForm.Past, DrainHole / 2),
            Groove + SocketForm.Past
        ).Shifted(0, 0, -SocketForm.Past);
        Solid body = new Difference(outer, [bore.Shifted(0, 0, Floor), drain, groove], removed);
        var room = top - shoulder - 0.002;
        body = RaisedText.On(
            body,
            parameters.Number,
            new(Vector3.Up, new(0, -1, 0), new(1, 0, 0), new(form.Outer, 0, shoulder + 0.001 + (room / 2))),
            room,
            form.Flat - 0.001,
            parameters.Printer
        );
        return new()
        {
            Kind = PrintedKind.Foot,
            Parameters = parameters,
            Shape = body,
            InUse = PrintPose.Stood((parameters.Sockets ?? SocketPattern.Usual(PrintedKind.Foot))[0], 0),
            Sockets = [new(new(0, 0, Floor), Vector3.Up, form.Depth, form.Half)],
            Wall = form.Wall,
            Strength = form.Strength,
            LongestBridge = DrainHole,
            Orientation = Phrase.Of("print.lay.foot"),
            Cautions = [Phrase.Of("print.caution.foot", Measured.Millimetres(Floor))],
        };
    }
}
