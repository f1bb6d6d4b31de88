using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>A row of shallow sockets, each with another clearance, and the clearance written beside it in mm.</summary>
internal static class CouponMaker
{
    private const double Height = 0.008;
    private const double Strip = 0.009;
    private const double StripHeight = 0.0012;
    private const double Bite = 0.001;
    private const double Rim = 0.0024;

    /// <summary>[m] Gaps tried, on each side. Published: press 0.05-0.15 mm, slide 0.2-0.3 mm, loose 0.3-0.5 mm.</summary>
    private static readonly double[] s_gaps = [0.0001, 0.0002, 0.0003, 0.0004, 0.0005];

    public static PrintDesign Make(PrintParameters parameters)
    {
        var gaps = s_gaps;
        var rim = Math.Max(Rim, 4 * parameters.Printer.Nozzle);
        var cell = parameters.TubeOutside + (2 * gaps[^1]) + rim;
        var wide = gaps.Length * cell;
        var deep = cell + rim;
        Solid slab = new Extrusion(Loop.Rectangle(-rim, 0, wide, deep), Height);
        Solid strip = new Extrusion(Loop.Rectangle(-rim, -Strip, wide, Bite), StripHeight);
        var shared = (wide + rim) * Bite * StripHeight;

        List<Solid> cuts = [];
        List<Socket> sockets = [];
        double removed = 0;
        for (var i = 0; i < gaps.Length; i++)
        {
            var form = SocketForm.Bare(parameters with { Clearance = gaps[i] });
            (var cut, var volume) = form.UprightBore(Height);
            // From the bed through to the top.
            var through = new Lathe(
                new([new(0, -SocketForm.Past), new(form.Half, -SocketForm.Past), new(form.Half, 0.001), new(0, 0.001)]),
                form.Sides
            );
            var x = ((i + 0.5) * cell) - (rim / 2);
            var place = Placement.Shifted(new(x, deep / 2, 0));
            cuts.Add(new Union([cut, through]).Placed(place));
            removed += volume;
            sockets.Add(new(new(x, deep / 2, 0), Vector3.Up, Height, form.Half));
        }

        Solid body = new Difference(new Union([slab, strip], shared), cuts, removed);
        for (var i = 0; i < gaps.Length; i++)
        {
            var face = Placement.Shifted(new(sockets[i].Floor.X, -Strip / 2, StripHeight));
            body = RaisedText.On(body, Label(gaps[i]), face, cell - 0.002, Strip - 0.002, parameters.Printer);
        }

        // On the back, upright.
        var back = new Placement(new(-1, 0, 0), Vector3.Up, new(0, 1, 0), new((wide - rim) / 2, deep, Height / 2));
        body = RaisedText.On(body, parameters.Number, back, wide - 0.004, Height - 0.001, parameters.Printer);
        return new()
        {
            Kind = PrintedKind.Coupon,
            Parameters = parameters,
            Shape = body,
            Sockets = sockets,
            Wall = rim,
            Orientation = Phrase.Of("print.lay.coupon"),
            Cautions = [Phrase.Of("print.caution.coupon")],
        };
    }

    private static string Label(double gap) => PrintWords.Number(gap * 1000);
}
