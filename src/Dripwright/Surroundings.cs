using System.Text;
using Dripwright.Screen;

namespace Dripwright;

/// <summary>Where the program reads and writes, so that tests can stand in for the terminal.</summary>
internal sealed record Surroundings
{
    /// <summary>Columns of text that goes into a file or another program.</summary>
    public const int PlainWidth = 80;

    public required Stream InBytes { get; init; }

    public required TextReader In { get; init; }

    public required TextWriter Out { get; init; }

    public required TextWriter Error { get; init; }

    public bool InIsTerminal { get; init; }

    public bool OutIsTerminal { get; init; }

    public bool ErrorIsTerminal { get; init; }

    public int Width { get; init; } = PlainWidth;

    public Func<string, string?> Variable { get; init; } = _ => null;

    /// <summary>Shows an address to the person at this machine; null where there is nobody to show it to.</summary>
    public Action<string>? Browse { get; init; }

    /// <summary>Reads a line of the terminal without showing it; an ordinary line where null.</summary>
    public Func<string?>? ReadUnseen { get; init; }

    /// <summary>The real console.</summary>
    public static Surroundings OfConsole()
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
            Width = Console.IsOutputRedirected ? PlainWidth : TerminalWidth(),
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
            return Console.WindowWidth is > 39 and var width ? Math.Min(width, 120) : PlainWidth;
        }
        catch (IOException)
        {
            return PlainWidth;
        }
    }
}
