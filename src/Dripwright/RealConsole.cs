using System.Text;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright;

/// <summary>The console of the machine.</summary>
internal static class RealConsole
{
    /// <summary>Where the program reads and writes when nobody stands in for the terminal.</summary>
    public static Surroundings Open()
    {
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        return new Surroundings
        {
            InBytes = Console.OpenStandardInput(),
            In = Console.In,
            // Our own writers: the console's would take the terminal's code page, and plan.json is UTF-8 everywhere.
            Out = new StreamWriter(Console.OpenStandardOutput(), utf8) { AutoFlush = false },
            Error = new StreamWriter(Console.OpenStandardError(), utf8) { AutoFlush = true },
            InIsTerminal = !Console.IsInputRedirected,
            OutIsTerminal = !Console.IsOutputRedirected,
            ErrorIsTerminal = !Console.IsErrorRedirected,
            Width = Console.IsOutputRedirected ? Surroundings.PlainWidth : TerminalWidth(),
            Variable = Environment.GetEnvironmentVariable,
            ReadUnseen = Console.IsInputRedirected ? null : Secret.Unseen,
            // Output that goes into a file or another program is read later, or by nobody.
            Browse = Console.IsOutputRedirected
                ? null
                : address =>
                {
                    if (Browser.Start(address, Browser.Here, Environment.GetEnvironmentVariable) is { } start)
                    {
                        Browser.Show(start);
                    }
                },
        };
    }

    private static int TerminalWidth()
    {
        try
        {
            // A terminal that does not know its width says 0.
            return Console.WindowWidth is > 39 and var width ? Math.Min(width, 120) : Surroundings.PlainWidth;
        }
        catch (IOException)
        {
            return Surroundings.PlainWidth;
        }
    }
}
