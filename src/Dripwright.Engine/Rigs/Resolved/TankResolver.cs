using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Lays the measures of a rig's reservoir over the catalogue's tank, and says what contradicts itself.</summary>
internal static class TankResolver
{
    /// <summary>The tank; null after saying why there is none.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="tank">The tank it names.</param>
    /// <param name="say">Told path, what was found and what is expected.</param>
    public static ResolvedTank? Resolve(Rig rig, TankType tank, Action<string, Phrase, Phrase> say)
    {
        var given = rig.Reservoir;
        var shape = given.Shape ?? tank.Shape;

        // In the file's own units, not the reader's: it is what to write there.
        string Length(double metres) => QuantityText.Format(Dimension.Length, metres, rig.Units);

        var (length, width, height) = (
            given.Length ?? tank.Length,
            given.Width ?? tank.Width,
            given.Height ?? tank.Height
        );
        if (shape is TankShape.Upright)
        {
            if (given is { Length: { } across, Width: { } also } && across != also)
            {
                say(
                    "reservoir.width",
                    Phrase.Plain(Length(also)),
                    Phrase.Of("fault.upright-width.expected", Length(across))
                );
                return null;
            }

            if (Diameter(given.Length ?? given.Width, tank.Length, tank.Width) is not { } diameter)
            {
                say(
                    "reservoir.shape",
                    Phrase.Of("fault.upright-shape.found", Length(tank.Length), Length(tank.Width)),
                    Phrase.Of("fault.tank-diameter", "reservoir.length")
                );
                return null;
            }

            (length, width) = (diameter, diameter);
        }
        else if (shape is TankShape.Lying)
        {
            if (given is { Height: { } tall, Width: { } wide } && tall != wide)
            {
                say(
                    "reservoir.height",
                    Phrase.Plain(Length(tall)),
                    Phrase.Of("fault.lying-height.expected", Length(wide))
                );
                return null;
            }

            if (Diameter(given.Width ?? given.Height, tank.Width, tank.Height) is not { } diameter)
            {
                say(
                    "reservoir.shape",
                    Phrase.Of("fault.lying-shape.found", Length(tank.Width), Length(tank.Height)),
                    Phrase.Of("fault.tank-diameter", "reservoir.width")
                );
                return null;
            }

            (width, height) = (diameter, diameter);
        }

        if (given.LowestLevel >= height)
        {
            say(
                "reservoir.lowestLevel",
                Phrase.Plain(Length(given.LowestLevel)),
                Phrase.Of("fault.lowest-level.expected", Length(height))
            );
            return null;
        }

        return new ResolvedTank
        {
            Type = tank,
            IsOwn = shape != tank.Shape || length != tank.Length || width != tank.Width || height != tank.Height,
            Shape = shape,
            Length = length,
            Width = width,
            Height = height,
            Measured = given.Volume,
        };
    }

    // A round tank has one diameter: the grower's, or the catalogue's where its two measures agree on one.
    private static double? Diameter(double? given, double one, double other) => given ?? (one == other ? one : null);
}
