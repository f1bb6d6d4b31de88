using Dripwright.Terminal;
using Spectre.Console;

namespace Dripwright.Screen;

/// <summary>Consoles that write to a given place with or without colour.</summary>
internal static class Consoles
{
    /// <param name="writer">Where it writes.</param>
    /// <param name="colour">Whether it may colour.</param>
    /// <param name="width">Columns.</param>
    /// <param name="moves">Whether it may move the cursor, as a progress bar must.</param>
    public static IAnsiConsole For(TextWriter writer, bool colour, int width, bool moves = false)
    {
        var console = AnsiConsole.Create(
            new AnsiConsoleSettings
            {
                Ansi = colour || moves ? AnsiSupport.Yes : AnsiSupport.No,
                ColorSystem = colour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
                Interactive = moves ? InteractionSupport.Yes : InteractionSupport.No,
                Out = new AnsiConsoleOutput(writer),
                // Nothing in the environment may change what is written.
                Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
            }
        );
        console.Profile.Width = width;
        console.Profile.Capabilities.Unicode = true;
        console.Profile.Capabilities.Links = false;
        return console;
    }

    /// <summary>Draws, and writes the result without spaces at the ends of lines.</summary>
    public static void Draw(Surroundings around, bool colour, Action<IAnsiConsole> draw)
    {
        using var text = new StringWriter();
        draw(For(text, colour, around.Width));
        foreach (var line in text.ToString().ReplaceLineEndings("\n").TrimEnd('\n').Split('\n'))
        {
            around.Out.Write(line.TrimEnd());
            around.Out.Write('\n');
        }
    }
}
