using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Lettering;

/// <summary>Letters that stand out of a flat face.</summary>
internal static class RaisedText
{
    /// <summary>[m] Letters larger than this help nobody.</summary>
    private const double Largest = 0.007;

    /// <summary>[m] How deep the letters' feet stand in the part, so that both are one solid.</summary>
    private const double Sunk = 0.0004;

    /// <summary>[m] How far letters stand out: two layers at least.</summary>
    public static double Raise(Printer printer) => Math.Max(0.0005, 2 * printer.Layer);

    /// <summary>[m] Smallest letters that a nozzle draws, with strokes of a line and a half.</summary>
    public static double Smallest(Printer printer) => StrokeLetters.Units * 1.5 * printer.Nozzle;

    /// <summary>[m] Height of a text in a space; 0 where it would be too small to print.</summary>
    public static double Height(string text, double width, double height, Printer printer)
    {
        var fit = Math.Min(Largest, height);
        var wide = StrokeLetters.Width(text, 1);
        fit = wide > 0 ? Math.Min(fit, width / wide) : fit;
        return fit >= Smallest(printer) ? fit : 0;
    }

    /// <summary>A body with a text on one of its faces.</summary>
    /// <param name="body">The body.</param>
    /// <param name="text">The text; empty gives the body as it is.</param>
    /// <param name="face">Frame of the face: x along the text, z out of the body, origin at the middle of the space.</param>
    /// <param name="width">[m] Width of the space.</param>
    /// <param name="height">[m] Height of the space.</param>
    /// <param name="printer">The printer.</param>
    /// <exception cref="PrintException">The text has no room.</exception>
    public static Solid On(Solid body, string text, Placement face, double width, double height, Printer printer)
    {
        if (text.Trim().Length == 0)
        {
            return body;
        }

        var size = Height(text, width, height, printer);
        if (size == 0)
        {
            throw new PrintException(
                new PrintFault(
                    nameof(PrintParameters.Number),
                    Phrase.Plain($"\"{text}\""),
                    Phrase.Of("print.limit.face", Measured.Millimetres(width), Measured.Millimetres(height)),
                    Phrase.Of("print.remedy.face")
                )
            );
        }

        var left = -StrokeLetters.Width(text, size) / 2;
        Loop[] loops = [.. StrokeLetters.Outlines(text, size).Select(loop => loop.Shifted(left, -size / 2))];
        var letters = new Extrusion(loops, Sunk + Raise(printer));
        return new Union(
            [body, letters.Placed(face with { Origin = face.Of(new(0, 0, -Sunk)) })],
            loops.Sum(loop => loop.Area) * Sunk
        );
    }
}
