using SkiaSharp;

namespace Dripwright.Sheets.Model;

/// <summary>The shipped font: its files, and the width of each character. See Fonts/README.md.</summary>
public static class Typeface
{
    /// <summary>Name of the family.</summary>
    public const string Family = "Dripwright Sans";

    /// <summary>What a browser takes, best first.</summary>
    public const string Stack = "'Dripwright Sans','Source Sans 3','Noto Sans','Segoe UI',sans-serif";

    private static readonly SKTypeface s_regular = Load(Weight.Regular);
    private static readonly SKTypeface s_bold = Load(Weight.Bold);

    /// <summary>The TrueType file of a weight.</summary>
    /// <exception cref="InvalidOperationException">The assembly was built without its fonts.</exception>
    public static byte[] File(Weight weight)
    {
        var name = $"Dripwright.Sheets.Fonts.DripwrightSans-{weight}.ttf";
        using var stream =
            typeof(Typeface).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is missing from the assembly.");
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }

    internal static SKTypeface Of(Weight weight) => weight == Weight.Bold ? s_bold : s_regular;

    private static SKTypeface Load(Weight weight)
    {
        using var data = SKData.CreateCopy(File(weight));
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException($"The font {weight} cannot be read.");
    }
}
