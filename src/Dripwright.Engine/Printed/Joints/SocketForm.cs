using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Joints;

/// <summary>Measures of the sockets of a fitting: bore, walls, depth.</summary>
internal sealed record SocketForm
{
    /// <summary>[m] Flare at the mouth, at 45°: the tube finds its way and the first layer may be squashed.</summary>
    public const double Flare = 0.0008;

    /// <summary>[m] What cuts go past the face they leave by.</summary>
    public const double Past = 0.0005;

    private const int LeastLines = 4;

    /// <summary>Lines of a wall beyond which a part is not made stronger but refused.</summary>
    public const int MostLines = 20;

    private SocketForm(PrintParameters parameters, double wall, double depth)
    {
        Parameters = parameters;
        Wall = wall;
        Depth = depth;
        Strength = SocketStrength.Of(parameters, Half, wall, depth);
    }

    public PrintParameters Parameters { get; }

    public double Wall { get; }

    public double Depth { get; }

    public SocketStrength Strength { get; }

    /// <summary>True where the wall had to grow over the least for the load.</summary>
    public bool LoadRules { get; private init; }

    public bool Round => Parameters.TubeShape == TubeShape.Round;

    /// <summary>[m] Radius or half side of the bore.</summary>
    public double Half => (Parameters.TubeOutside / 2) + Parameters.Clearance;

    /// <summary>[m] Half the width of a socket.</summary>
    public double Outer => Half + Wall;

    /// <summary>[m] What is cut off a socket's edges: an octagon around a round bore, a small bevel around a square one.</summary>
    public double Bevel => Round ? (2 - Math.Sqrt(2)) * Outer : Wall / 2;

    /// <summary>Outline of a socket.</summary>
    public Loop Outline => Outlines.CutSquare(Outer, Bevel);

    /// <summary>[m] Width of a socket's flats.</summary>
    public double Flat => 2 * (Outer - Bevel);

    /// <summary>[m] Room over a lying tube for the sag of the roof.</summary>
    public double Lift => Parameters.Printer.Layer;

    /// <summary>[m] Longest bridge in a lying bore.</summary>
    public double Bridge => Round ? Outlines.Bridge(Half, Lift) : 2 * Half;

    /// <summary>Facets of an upright bore.</summary>
    public int Sides => Round ? Outlines.Facets : 4;

    /// <summary>Least form that carries the load.</summary>
    /// <exception cref="PrintException">No wall that we print carries it.</exception>
    public static SocketForm For(PrintParameters parameters, bool upright = true, bool flat = true)
    {
        var nozzle = parameters.Printer.Nozzle;
        var depth = parameters.SocketDepth ?? (1.5 * parameters.TubeOutside);
        var least = LeastLinesOf(parameters);
        var needed = parameters.Load.Moment;
        for (var lines = least; lines <= MostLines; lines++)
        {
            var form = new SocketForm(parameters, lines * nozzle, depth) { LoadRules = lines > least };
            var strength = form.Strength;
            if (
                (!upright || strength.UprightMoment >= needed)
                && (!flat || strength.FlatMoment >= needed)
                && strength.BearingMoment >= needed
            )
            {
                return form;
            }
        }

        throw new PrintException(TooWeak(parameters, depth));
    }

    /// <summary>The least form, for parts that carry no tube's moment.</summary>
    public static SocketForm Bare(PrintParameters parameters) =>
        new(
            parameters,
            LeastLinesOf(parameters) * parameters.Printer.Nozzle,
            parameters.SocketDepth ?? (1.5 * parameters.TubeOutside)
        );

    /// <summary>A bore that stands upright, its floor at z = 0 and its mouth at z = <paramref name="depth"/>.</summary>
    public (Solid Cut, double Removed) UprightBore(double depth)
    {
        Loop Profile(double top) =>
            new([
                new(0, 0),
                new(Half, 0),
                new(Half, depth - Flare),
                new(Half + Flare + (top - depth), top),
                new(0, top),
            ]);
        return (new Lathe(Profile(depth + Past), Sides), new Lathe(Profile(depth), Sides).Volume!.Value);
    }

    /// <summary>A bore that lies on its side, along z from its floor at z = 0, up being +y.</summary>
    public (Solid Cut, double Removed) LyingBore(double depth)
    {
        var bore = Round ? Outlines.LyingBore(Half, Lift) : Loop.Rectangle(-Half, -Half, Half, Half + Lift);
        var flare = new Taper(bore, Scale(Flare + Past), Flare + Past).Shifted(0, 0, depth - Flare);
        var removed = (bore.Area * (depth - Flare)) + new Taper(bore, Scale(Flare), Flare).Volume!.Value;
        return (new Union([new Extrusion(bore, depth), flare]), removed);
    }

    /// <summary>Four lines, or a twelfth of the tube: thinner walls split when the tube is driven in. Common practice.</summary>
    private static int LeastLinesOf(PrintParameters parameters) =>
        Math.Max(LeastLines, (int)Math.Ceiling(parameters.TubeOutside / 12 / parameters.Printer.Nozzle));

    private double Scale(double flare) => 1 + (flare / Half);

    private static PrintFault TooWeak(PrintParameters parameters, double depth)
    {
        var plastic = parameters.Plastic;
        var warm = parameters.Load.Temperature > plastic.WarmestInUse;
        var bearing = SocketStrength.Of(parameters, parameters.TubeOutside / 2, 1e-3, depth).BearingMoment;
        return new(
            nameof(PrintParameters.Load),
            Phrase.Of(
                "print.found.load",
                Measured.NewtonMetres(parameters.Load.Moment),
                Measured.Celsius(parameters.Load.Temperature),
                plastic.Name
            ),
            warm
                ? Phrase.Of("print.limit.heat", Measured.Celsius(plastic.WarmestInUse), plastic.Name)
                : Phrase.Of("print.limit.lines", MostLines),
            warm ? Phrase.Of("print.remedy.heat")
                : bearing < parameters.Load.Moment ? Phrase.Of("print.remedy.deeper")
                : Phrase.Of("print.remedy.larger")
        );
    }
}
