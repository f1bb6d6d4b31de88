using Dripwright.Engine.Fittings.Joints;
using Dripwright.Engine.Fittings.Lettering;
using Dripwright.Engine.Fittings.Shapes;

namespace Dripwright.Engine.Fittings.Makers;

/// <summary>Two springy arms around a tube, two around a hose that runs beside it.</summary>
internal static class HoseClipMaker
{
    private const double Height = 0.012;

    /// <summary>[m] Between tube and hose, where the number stands.</summary>
    private const double Bar = 0.008;

    private static readonly double HalfMouth = Math.PI / 3;

    public static Fitting Make(FittingParameters parameters)
    {
        SocketForm form = SocketForm.Bare(parameters);
        double wall = Math.Max(0.0024, 6 * parameters.Printer.Nozzle);
        double tube = form.Half;
        double hose = (parameters.HoseOutside / 2) + Math.Max(0, parameters.Clearance);
        double hoseAt = tube + Bar + hose;
        double bar = Math.Max(0.6 * Math.Min(tube, hose), 0.004);

        List<Solid> parts =
        [
            new Extrusion(Loop.Around(Outlines.Facets, hose + wall).Shifted(0, hoseAt), Height),
            new Extrusion(Loop.Rectangle(-bar, tube, bar, tube + Bar), Height),
        ];
        List<Solid> cuts =
        [
            Through(Loop.Around(Outlines.Facets, hose).Shifted(0, hoseAt)),
            Through(Mouth(hose + (2 * wall), hoseAt, 1)),
        ];
        if (form.Round)
        {
            parts.Add(new Extrusion(Loop.Around(Outlines.Facets, tube + wall), Height));
            cuts.Add(Through(Loop.Around(Outlines.Facets, tube)));
            cuts.Add(Through(Mouth(tube + (2 * wall), 0, -1)));
        }
        else
        {
            // Around a square tube: a trough whose lips snap behind the lower corners.
            double lip = Math.Max(0.0008, 2 * parameters.Printer.Nozzle);
            parts.Add(new Extrusion(Loop.Rectangle(-tube - wall, -tube - wall, tube + wall, tube + wall), Height));
            cuts.Add(Through(Loop.Rectangle(-tube, -tube, tube, tube)));
            cuts.Add(
                Through(
                    new([
                        new(-tube - (0.3 * wall), -tube - (1.5 * wall)),
                        new(tube + (0.3 * wall), -tube - (1.5 * wall)),
                        new(tube - lip, -tube + 0.0001),
                        new(-tube + lip, -tube + 0.0001),
                    ])
                )
            );
        }

        Solid body = new Difference(new Union(parts), cuts);
        var face = Placement.Shifted(new(0, tube + (Bar / 2), Height));
        body = RaisedText.On(body, parameters.Number, face, 2 * bar, Bar - 0.001, parameters.Printer);
        return new()
        {
            Kind = PrintedKind.HoseClip,
            Parameters = parameters,
            Shape = body,
            Wall = wall,
            Orientation = "Flat on the bed: the arms then spring along the layers and do not split.",
            Cautions = ["Warm the clip in the hand before it is pushed on in a cold room: plastics snap when cold."],
        };
    }

    private static Solid Through(Loop loop) =>
        new Extrusion(loop, Height + (2 * SocketForm.Past)).Shifted(0, 0, -SocketForm.Past);

    /// <summary>The wedge left open for snapping on, a third of the way round.</summary>
    private static Loop Mouth(double reach, double axis, int way)
    {
        double side = reach * Math.Tan(HalfMouth);
        Corner[] corners =
        [
            new(0, axis),
            new(side * -way, axis + (reach * way)),
            new(side * way, axis + (reach * way)),
        ];
        return new([corners[0], corners[2], corners[1]]);
    }
}
