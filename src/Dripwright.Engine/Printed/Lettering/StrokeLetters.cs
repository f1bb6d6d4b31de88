using System.Text.Json;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Lettering;

/// <summary>Plain stroke letters for raised marks: outlines six units high, strokes one unit wide.</summary>
/// <remarks>Digits, capitals without Q, and <c>. - +</c>; made by <c>make-letters.mjs</c> beside this file.</remarks>
public static class StrokeLetters
{
    /// <summary>Height in strokes' widths.</summary>
    public const int Units = 6;

    private const double Gap = 1;
    private const double Space = 2;

    private static readonly Dictionary<char, IReadOnlyList<Loop>> s_letters = Read();

    /// <summary>True where every character has a letter or is a space.</summary>
    /// <param name="text">The text.</param>
    public static bool Know(string text) => text.All(c => c == ' ' || s_letters.ContainsKey(c));

    /// <summary>[m] Width of a text.</summary>
    /// <param name="text">Known characters only.</param>
    /// <param name="height">[m] Height of the letters.</param>
    public static double Width(string text, double height) => Place(text).Width * height / Units;

    /// <summary>Outlines of a text, its lower left corner at the origin.</summary>
    /// <param name="text">Known characters only.</param>
    /// <param name="height">[m] Height of the letters, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A character is not known, or the height is not over 0.</exception>
    public static IReadOnlyList<Loop> Outlines(string text, double height)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        var unit = height / Units;
        return
        [
            .. Place(text)
                .Loops.Select(loop => new Loop([.. loop.Corners.Select(c => new Corner(c.X * unit, c.Y * unit))])),
        ];
    }

    private static (List<Loop> Loops, double Width) Place(string text)
    {
        List<Loop> loops = [];
        double x = 0;
        foreach (var c in text)
        {
            if (c == ' ')
            {
                x += Space;
                continue;
            }

            if (!s_letters.TryGetValue(c, out var letter))
            {
                throw new ArgumentOutOfRangeException(nameof(text), text, $"There is no letter for '{c}'.");
            }

            var left = letter.Min(loop => loop.Corners.Min(corner => corner.X));
            loops.AddRange(letter.Select(loop => loop.Shifted(x - left, 0)));
            x += letter.Max(loop => loop.Corners.Max(corner => corner.X)) - left + Gap;
        }

        return (loops, Math.Max(0, x - Gap));
    }

    private static Dictionary<char, IReadOnlyList<Loop>> Read()
    {
        using var stream = typeof(StrokeLetters).Assembly.GetManifestResourceStream(
            "Dripwright.Engine.Printed.Data.letters.json"
        )!;
        var all = JsonSerializer.Deserialize<Dictionary<string, double[][][]>>(stream)!;
        return all.ToDictionary(
            pair => pair.Key[0],
            pair =>
                (IReadOnlyList<Loop>)
                    [.. pair.Value.Select(loop => new Loop([.. loop.Select(p => new Corner(p[0], p[1]))]))]
        );
    }
}
